import { carriage } from './carriage.ts'
import { allColumns } from '../../../mechanism/indices.ts'
import { card, cardRows, feed } from './card.ts'
import { frame, pullBar } from './frame.ts'
import type { MachinePiece } from './part.ts'
import { pins } from './pins.ts'
import { bed } from './bed.ts'
import { needles, retainer } from './needles.ts'
import { cardLies, holeAt, type Pose } from './pose.ts'
import { createMemory } from './remember.ts'
import { rockers } from './rockers.ts'
import { strips } from './strips.ts'
import { sweepAndBelt } from './sweep.ts'

/** All pieces of the drawn machine in a pose: always as many, in the same order. */
export const machine = (pose: Pose): MachinePiece[] => [
  ...remember('card', cardKey(pose), () => card(pose)),
  ...remember('feed', `${pose.frame.cardRoll ?? 0} ${brokenKey(pose)}`, () => feed(pose)),
  ...sweepAndBelt(pose),
  ...pins(pose),
  ...rockers(pose),
  ...remember('frame', brokenKey(pose), () => frame(pose)),
  ...pullBar(pose),
  ...strips(pose),
  ...needles(pose),
  ...remember('retainer', brokenKey(pose), () => retainer(pose)),
  ...remember('bed', '', bed),
  ...carriage(pose),
]

const remember = createMemory<MachinePiece[]>()

const brokenKey = ({ broken }: Pose): string => [...broken].join(' ')

/** All that the card's pieces depend on: its holes, how it lies, and whether it is broken. */
const cardKey = (pose: Pose): string => {
  const { aside, askew } = cardLies(pose)
  const { row } = pose.frame.pass
  const holes =
    row === null
      ? ''
      : cardRows.map((later) =>
          allColumns.map((column) => holeAt(pose, later, column)?.charAt(0) ?? '.').join(''),
        )
  return [row, pose.frame.cardRoll ?? 0, aside, askew, holes, brokenKey(pose)].join(' ')
}
