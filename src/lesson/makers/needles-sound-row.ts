import { needleName, wayOfPass, sideOfWay } from '../../mechanism/bed.ts'
import type { Kit, Maker } from '../question.ts'
import { needlesIn, rangeNames, someRange } from '../needle-range.ts'
import { mainCardRows, passOf, rowPicture, type Setup } from '../setup.ts'
import { needlesQuestion, goalOf } from './needles-question.ts'

const count = 16

/** Needles of a range that `pass` leaves plain. */
const plainIn = (kit: Kit, setup: Setup, range: Parameters<typeof goalOf>[1]): number[] => {
  const selected = goalOf(passOf(kit, setup), range, 'selected')
  return needlesIn(range).filter((index) => !selected.includes(index))
}

/** Which needles does a sound machine bring forward for a row? */
export const soundRow: Maker = (kit) => {
  const rows = mainCardRows(kit.library)
  const pass = kit.random.whole(1, rows.length - 1)
  const range = someRange(kit, count)
  const setup = { pass }
  return needlesQuestion(kit, {
    prompt: `The machine is sound. Pass ${pass} goes to the ${sideOfWay(wayOfPass(pass))} and reads card row ${pass}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} come forward?`,
    setup,
    range,
    goal: 'selected',
    pictures: [rowPicture(rows, pass)],
    slips: [
      {
        chosen: plainIn(kit, setup, range),
        reason:
          'These are the needles without a hole: a hole lets the pin through, and only a pin that stands high starts the push.',
      },
      {
        chosen: goalOf(passOf(kit, setup), range, 'selected')
          .map((index) => 2 * range.first + range.count - 1 - index)
          .reverse(),
        reason:
          'This is the row from its other end: column 1 stays at the left, whichever way the carriage goes.',
      },
    ],
    because: 'each of them has a hole in its column, and on a sound machine every hole reaches its needle.',
  })
}
