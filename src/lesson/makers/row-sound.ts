import { needleName, wayOfPass } from '../../mechanism/bed.ts'
import type { Kit, Maker } from '../question.ts'
import {
  mainRows,
  passOf,
  rowPicture,
  indexesOf,
  namesOf,
  someStretch,
  wayWord,
  type Scene,
} from '../scene.ts'
import { predict, goalOf } from './predict.ts'

const count = 16

/** Needles of a stretch that `pass` leaves plain. */
const plainIn = (kit: Kit, scene: Scene, stretch: Parameters<typeof goalOf>[1]): number[] => {
  const selected = goalOf(passOf(kit.library, scene), stretch, 'selected')
  return indexesOf(stretch).filter((index) => !selected.includes(index))
}

/** Which needles does a sound machine bring forward for a row? */
export const soundRow: Maker = (kit) => {
  const rows = mainRows(kit.library)
  const pass = kit.draw.whole(1, rows.length - 1)
  const stretch = someStretch(kit.draw, count)
  const scene = { pass }
  return predict(kit, {
    prompt: `The machine is sound. Pass ${pass} goes to the ${wayWord(wayOfPass(pass))} and reads card row ${pass}. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} come forward?`,
    scene,
    stretch,
    goal: 'selected',
    pictures: [rowPicture(rows, pass)],
    slips: [
      {
        chosen: plainIn(kit, scene, stretch),
        reason:
          'These are the needles without a hole: a hole lets the pin through, and only a pin that stands high starts the push.',
      },
      {
        chosen: goalOf(passOf(kit.library, scene), stretch, 'selected')
          .map((index) => 2 * stretch.first + stretch.count - 1 - index)
          .reverse(),
        reason:
          'This is the row from its other end: column 1 stays at the left, whichever way the carriage goes.',
      },
    ],
    because: 'each of them has a hole in its column, and on a sound machine every hole reaches its needle.',
  })
}
