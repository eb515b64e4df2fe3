import { needleName } from '../../mechanism/bed.ts'
import { firstGood } from '../draw.ts'
import type { Maker } from '../question.ts'
import { broken, mainRows, rowPicture, namesOf, someStretch } from '../scene.ts'
import { predict } from './predict.ts'

const count = 16

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
