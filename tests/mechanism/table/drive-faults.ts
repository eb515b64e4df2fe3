import { normalDraw, uniformDraw } from '@/mechanism/random.ts'
import { columnAt, stripAt } from '../trade.ts'
import type { Asked, Rule } from './rule.ts'

const none = (): boolean => false
const asCard = ({ own }: Asked): boolean => own

/** The hole that a belt out by this many needles shows to a needle: that of the needle so far to its right. */
const shifted =
  (needles: number) =>
  ({ hole, due, needle }: Asked): boolean =>
    hole(due, columnAt(needle + needles))

/** Whether the sweep has been past the pin of `column` on its way here from the turn mark, 12 needles outside. */
const hasMet = ({ way, needle }: Asked, column: number): boolean => {
  for (let place = way === 1 ? -12 : 211; place * way <= needle * way; place += way)
    if (columnAt(place) === column) return true
  return false
}

/** Whether the needle eight before this one in the direction of travel had a hole. */
const eightBefore = ({ hole, due, needle, way }: Asked): boolean => hole(due, columnAt(needle - 8 * way))

const pin = { stage: 'pin', part: 'pin.5' } as const
const sweep = { stage: 'sweep', part: 'sweep' } as const
const belt = { stage: 'sweep', part: 'belt' } as const
const rocker = { stage: 'rocker', part: 'rocker.5' } as const
const strip = { stage: 'strip', part: 'strip.3' } as const

const moved = [8, -8, 16, -16, 24, -48, 8.5, -15.5].map((needles) => ({
  id: `belt.timing=${needles}`,
  shows: `moves the pattern by ${-Math.round(needles / 8) * 8} needles`,
  comes: shifted(Math.round(needles / 8) * 8),
  ...belt,
}))

const lost = [3, -4, 12].map((needles) => ({
  id: `belt.timing=${needles}`,
  shows: 'selects nothing: it is no multiple of 8',
  comes: none,
  ...belt,
}))

/** The rows of the fault table from the pins to the strips. */
export const driveFaults: readonly Rule[] = [
  {
    id: 'pin.5.low',
    shows: 'leaves out every 24th needle',
    comes: ({ own, column }) => own && column !== 5,
    ...pin,
  },
  {
    id: 'pin.5.high',
    shows: 'selects every 24th needle',
    comes: ({ own, column }) => own || column === 5,
    ...pin,
  },
  {
    id: 'pin.5.over',
    shows: 'selects every eighth needle from the pin’s first push in a pass',
    comes: (asked) =>
      asked.own || (asked.strip === stripAt(104) && asked.hole(asked.due, 5) && hasMet(asked, 5)),
    ...pin,
  },
  { id: 'sweep.worn=0.8', shows: 'selects nothing', comes: none, ...sweep },
  { id: 'sweep.worn=0.7', shows: 'does nothing while the bite is enough', comes: asCard, ...sweep },
  ...moved,
  { id: 'belt.timing=0.7', shows: 'does nothing within the window', comes: asCard, ...belt },
  ...lost,
  {
    id: 'belt.timing=0.8',
    shows: 'selects nothing to the left, where it makes the sweep late',
    comes: ({ own, way }) => own && way === 1,
    ...belt,
  },
  {
    id: 'belt.timing=1.2',
    shows: 'selects nothing: to the right it lets go too early, to the left it comes too late',
    comes: none,
    stage: ({ way }) => (way === 1 ? 'hold' : 'sweep'),
    part: 'belt',
  },
  {
    id: 'belt.timing=-1',
    shows: 'selects nothing to the right, where it makes the sweep late',
    comes: ({ own, way }) => own && way === -1,
    ...belt,
  },
  {
    id: 'belt.off',
    shows: 'selects nothing, and the first row stays',
    comes: none,
    stage: ({ hole, column }) => (hole(1, column) ? 'sweep' : 'card'),
    part: 'belt',
  },
  {
    id: 'pin.5.sticky=0.5',
    shows: 'leaves out every 24th needle in the rows for which its draw keeps the pin down',
    comes: ({ own, column, pass }) => own && !(column === 5 && uniformDraw(1, 'sticky', 4, pass) < 0.5),
    ...pin,
  },
  {
    id: 'pivots.loose=0.4',
    shows: 'leaves out a needle where its push loses more than it has to spare',
    comes: ({ own, needle, pass }) =>
      own && 1.8 - 0.4 * Math.max(0, normalDraw(1, 'pivots', needle + 24, pass)) >= 1.2,
    stage: 'rocker',
    part: 'pivots',
  },
  { id: 'belt.slack=2', shows: 'selects nothing', comes: none, ...belt },
  {
    id: 'belt.slack=1.4',
    shows: 'does nothing while its half is within the window',
    comes: asCard,
    ...belt,
  },
  { id: 'belt.slack=1.5', shows: 'selects nothing once its half is past the window', comes: none, ...belt },
  {
    id: 'belt.slack=16',
    shows: 'brings the pattern eight needles late, whichever way',
    comes: (asked) => shifted(-8 * asked.way)(asked),
    ...belt,
  },
  {
    id: 'rocker.5.dead',
    shows: 'leaves out every 24th needle',
    comes: ({ own, column }) => own && column !== 5,
    ...rocker,
  },
  {
    id: 'rocker.5.worn=0.8',
    shows: 'leaves out every 24th needle',
    comes: ({ own, column }) => own && column !== 5,
    ...rocker,
  },
  { id: 'rocker.5.worn=0.55', shows: 'does nothing while the reach is met', comes: asCard, ...rocker },
  {
    id: 'strip.3.seized',
    shows: 'leaves out every eighth needle',
    comes: ({ own, strip: its }) => own && its !== 3,
    ...strip,
  },
  {
    id: 'strip.3.over',
    shows: 'selects every eighth needle',
    comes: ({ own, strip: its }) => own || its === 3,
    ...strip,
  },
  {
    id: 'strip.3.slow',
    shows: 'selects the needle eight further on too, when fast',
    comes: (asked) => asked.own || (asked.strip === 3 && eightBefore(asked)),
    speed: 500,
    ...strip,
  },
  { id: 'strip.3.slow', shows: 'does nothing when slow', comes: asCard, speed: 310, ...strip },
  { id: 'strip.3.slow=200', shows: 'does nothing in thinner oil', comes: asCard, speed: 465, ...strip },
]
