import { needleName, wayOfPass } from '../../mechanism/bed.ts'
import { firstGood } from '../draw.ts'
import type { Maker } from '../question.ts'
import { mainRows, rowPicture, namesOf, someStretch, wayWord } from '../scene.ts'
import { predict } from './predict.ts'

const count = 16

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
