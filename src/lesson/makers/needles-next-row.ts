import { needleName, wayOfPass, sideOfWay } from '../../mechanism/bed.ts'
import { firstValid } from '../seeded-random.ts'
import type { Maker } from '../question.ts'
import { rangeNames, someRange } from '../needle-range.ts'
import { mainCardRows, rowPicture } from '../setup.ts'
import { needlesQuestion } from './needles-question.ts'

const count = 16

/** Which needles stand forward between two passes? */
export const nextRow: Maker = (kit) =>
  firstValid(() => {
    const rows = mainCardRows(kit.library)
    const pass = kit.random.whole(2, rows.length - 2)
    const range = someRange(kit, count)
    const side = sideOfWay(wayOfPass(pass))
    const question = needlesQuestion(kit, {
      prompt: `Pass ${pass} is done and the carriage has just gone past the turn mark on the ${side}, so the card has stepped on to row ${pass + 1}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} stand forward now?`,
      setup: { pass },
      range,
      goal: 'selected',
      pictures: [pass - 1, pass, pass + 1].map((row) => rowPicture(rows, row)),
      slips: [
        {
          setup: { pass: pass + 1 },
          reason: `That is row ${pass + 1}, which the pins feel now: it is set out only by the coming pass.`,
        },
        {
          setup: { pass: pass - 1 },
          reason: `That is row ${pass - 1}: pass ${pass} has knitted it already and has set out the next one.`,
        },
      ],
      because: `they were set out by pass ${pass} from card row ${pass}, and pass ${pass + 1} will knit them.`,
    })
    return question.slips.length === 2 ? question : null
  })
