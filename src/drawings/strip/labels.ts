import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { needleName } from '../../mechanism/bed.ts'
import { measureOfColumn, measureOfStrip, toNeedle } from '../../mechanism/indices.ts'
import { holePresented } from '../../mechanism/pin.ts'
import { allWords, leftOver, stripFault } from '../../words/figures/strip.ts'
import { millimetres, withUnit } from '../../words/lists.ts'
import type { Balloon } from '../shared/balloons.ts'
import type { Label } from '../shared/labels.ts'
import { bedX, lift, stripTop } from './layout.ts'
import { ringsOf } from './panels.ts'
import { cardY, columnX, rodsOf } from './rods.ts'
import type { StripView } from './view.ts'

/** Where the words of the carriage are: under it, but inside the picture. */
const carriageX = ({ layout, frame }: StripView): number => {
  const half = layout.shape === 'wide' ? 92 : 62
  return Math.min(layout.width - half, Math.max(half, bedX(layout, frame.x)))
}

/** How far to each side of the carriage its words reach. */
const clearance = ({ layout }: StripView): number => (layout.shape === 'wide' ? 100 : 66)

/** Middle of the longer piece of bed beside the carriage. */
const besideX = (view: StripView): number => {
  const { layout } = view
  const x = carriageX(view)
  const [first, last] = [bedX(layout, view.whole.first), bedX(layout, view.whole.last)]
  return x - first > last - x ? (first + x - clearance(view)) / 2 : (last + x + clearance(view)) / 2
}

const rodLabels = (view: StripView): Label[] => {
  const { frame, layout } = view
  const { row } = frame.pass
  const isWide = layout.shape === 'wide'
  return rodsOf(view).flatMap(({ column, x, pushes, stuck }) => {
    const hole = holePresented(frame.condition, row, column)
    const state = row === null ? 'no card' : hole ? 'hole' : 'no hole'
    const out = measureOfColumn(frame.rockerOuts, column)
    const isVain = pushes && stuck > 0.05 && view.isBroken
    const isDead = view.broken.has(`rocker.${column}`) && measureOfColumn(frame.pinLeans, column) > 0
    const words = isDead ? ['no push'] : isVain ? [millimetres(out), 'in vain'].slice(isWide ? 0 : 1) : []
    return [
      { look: `middle${pushes ? ' strong' : ''}`, x, y: isWide ? 15 : 12, text: `column ${column}` },
      { look: 'middle', x, y: isWide ? 32 : 25, text: state },
      ...words.map((text, line) => ({
        look: 'wrong',
        x: x + (isWide ? 20 : 11),
        y: (isWide ? 172 : 46) + line * 16,
        text,
      })),
    ]
  })
}

const endLabels = (view: StripView): Label[] => {
  const { layout, shift, run, strip } = view
  const left = leftOver(view.frame, strip)
  const fault = stripFault(run, strip)
  const time = Math.round(measureOfStrip(view.frame.condition.stripReturn, strip))
  const isLeft = fault === 'slow' && left > 0
  const y = stripTop(layout) - 18
  return [
    {
      look: isLeft || fault === 'stuck shifted' ? 'wrong' : shift > 0 ? 'selected' : '',
      x: 46,
      y: layout.rest - 9,
      text: shift > 0 ? `${isLeft ? 'left over' : 'shift'} ${millimetres(shift)}` : 'no shift',
    },
    {
      look: 'end',
      x: layout.width - 8,
      y,
      text: `preload ${millimetres(view.frame.condition.dimensions.preload)}`,
    },
    { look: 'end', x: layout.width - 8, y: y - 17, text: 'return spring' },
    {
      look: fault === 'slow' ? 'end wrong' : 'end',
      x: layout.width - 8,
      y: y - 34,
      text: fault === 'slow' ? `thick oil: time constant ${withUnit(time, 'ms')}` : '',
    },
    { look: 'end', x: layout.left - 14, y: (stripTop(layout) + layout.foot) / 2 + 30, text: 'stop' },
    { look: '', x: 8, y: 18, text: `strip and butts drawn ${layout.enlarged} times` },
    { look: '', x: 8, y: 34, text: `as large as the bed, heights ${lift * layout.enlarged} times` },
    { look: '', x: columnX(view, 2) + 82, y: cardY(view) + 4.5, text: 'card' },
    { look: '', x: layout.width - 60, y: layout.names, text: 'needles' },
    { look: 'end', x: columnX(view, 0) - 76, y: layout.datum - 6, text: 'feeler pins' },
    { look: 'end', x: columnX(view, 0) - 76, y: layout.pivot + 5, text: 'rockers' },
    { look: 'end', x: columnX(view, 0) - 76, y: layout.plate + 5, text: 'plate, a slot for each rod' },
  ]
}

const nameLabels = (view: StripView): Label[] => {
  const { layout, needles, under } = view
  const isWide = layout.shape === 'wide'
  const named = isWide ? needles : [entryAt(needles, 0), lastOf(needles)]
  return named.map((index) => ({
    look: `middle${index === under ? ' strong' : ''}`,
    x: bedX(layout, index),
    y: layout.names,
    text: needleName(toNeedle(index)),
  }))
}

/** How much larger than the bed the parts are drawn, where there is little room. */
const scaleLabels = ({ layout }: StripView): Label[] => [
  { look: '', x: 2, y: 12, text: `parts × ${layout.enlarged}` },
  { look: '', x: 2, y: 26, text: `heights × ${layout.enlarged * lift}` },
]

/** Every label but those of the details. */
export const labelsOf = (view: StripView): Label[] => {
  const { layout, strip, run, frame, under } = view
  const isWide = layout.shape === 'wide'
  const fault = stripFault(run, strip)
  const arrow = (text: string): string => (frame.pass.way === 1 ? `${text} →` : `← ${text}`)
  const x = carriageX(view)
  const y = layout.bracket + (isWide ? 21 : 15)
  const mark = view.isBroken ? 'wrong' : view.pushed ? 'pushed' : ''
  const rings = ringsOf(view).map(({ letter, index }) => ({
    look: 'strong over middle',
    x: bedX(layout, index) - 6,
    y: layout.foot + 24,
    text: letter,
  }))
  return [
    ...rodLabels(view),
    ...nameLabels(view),
    {
      look: `on-bar ${isWide ? '' : 'over '}${mark}`,
      x: layout.left + (isWide ? 12 : 2),
      y: isWide ? layout.foot - 3 : layout.bedFoot - 5,
      text: fault === '' ? `strip ${strip}` : `strip ${strip}, ${fault}`,
    },
    {
      look: 'middle strong',
      x,
      y,
      text: arrow(under === null ? 'carriage' : `presser over ${needleName(toNeedle(under))}`),
    },
    {
      look: 'middle',
      x: isWide ? besideX(view) : layout.width / 2,
      y: isWide ? y : y + 14,
      text: allWords(frame, strip),
    },
    ...(isWide ? [...endLabels(view), ...rings] : scaleLabels(view)),
  ]
}

/** The balloons: card, pins, rockers, the strip, the presser, the needles. */
export const balloonsOf = (view: StripView): Balloon[] => {
  const { layout } = view
  if (layout.shape === 'narrow') return []
  const x = columnX(view, 0) - 60
  return [
    {
      number: 1,
      x: columnX(view, 2) + 66,
      y: cardY(view),
      to: [columnX(view, 2) + 36, cardY(view)],
    },
    { number: 2, x, y: layout.datum - 10 },
    { number: 4, x, y: layout.pivot + 1 },
    { number: 5, x: 24, y: (stripTop(layout) + layout.foot) / 2 },
    { number: 6, x: carriageX(view) - (view.under === null ? 48 : 84), y: layout.bracket + 16.5 },
    { number: 9, x: layout.width - 73, y: layout.names - 4.5 },
  ]
}
