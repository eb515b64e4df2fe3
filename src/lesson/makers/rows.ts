import { needleName, wayOfPass } from '../../mechanism/bed.ts'
import {
  broken,
  indexesOf,
  mainRows,
  namesOf,
  passOf,
  rowPicture,
  type Scene,
  someStretch,
  wayWord,
} from '../scene.ts'
import type { Kit, Maker } from '../question.ts'
import { firstGood } from '../draw.ts'
import { goalOf, predict } from './predict.ts'

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

/** Which needles come forward after a turn short of the mark? */
export const lateRow: Maker = (kit) =>
  firstGood(() => {
    const rows = mainRows(kit.library)
    const pass = kit.draw.whole(4, 16)
    const short = kit.draw.whole(2, pass)
    const stretch = someStretch(kit.draw, count)
    const scene = { pass, faults: [broken('turn.short', [short])] }
    const question = predict(kit, {
      prompt: `Before pass ${short} the carriage turned short of the mark. Everything else is sound. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} come forward in pass ${pass}?`,
      scene,
      start: { faults: scene.faults },
      stretch,
      goal: 'selected',
      pictures: [pass - 1, pass, pass + 1].map((row) => rowPicture(rows, row)),
      slips: [
        {
          scene: { pass },
          reason: `That is card row ${pass}, but the short turn did not step the card, so pass ${pass} is one row late.`,
        },
        {
          scene: { pass: pass + 1 },
          reason: `That is card row ${pass + 1}: a short turn does not step the card twice, it does not step it at all.`,
        },
      ],
      because: `pass ${pass} reads card row ${pass - 1}, one late, because the turn before pass ${short} did not step the card.`,
    })
    return question.slips.length === 2 ? question : null
  })

/** Which needles stand forward between two passes? */
export const nextRow: Maker = (kit) =>
  firstGood(() => {
    const rows = mainRows(kit.library)
    const pass = kit.draw.whole(2, rows.length - 2)
    const stretch = someStretch(kit.draw, count)
    const side = wayWord(wayOfPass(pass))
    const question = predict(kit, {
      prompt: `Pass ${pass} is done and the carriage has just gone past the turn mark on the ${side}, so the card has stepped on to row ${pass + 1}. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} stand forward now?`,
      scene: { pass },
      stretch,
      goal: 'selected',
      pictures: [pass - 1, pass, pass + 1].map((row) => rowPicture(rows, row)),
      slips: [
        {
          scene: { pass: pass + 1 },
          reason: `That is row ${pass + 1}, which the pins feel now: it is set out only by the coming pass.`,
        },
        {
          scene: { pass: pass - 1 },
          reason: `That is row ${pass - 1}: pass ${pass} has knitted it already and has set out the next one.`,
        },
      ],
      because: `they were set out by pass ${pass} from card row ${pass}, and pass ${pass + 1} will knit them.`,
    })
    return question.slips.length === 2 ? question : null
  })
