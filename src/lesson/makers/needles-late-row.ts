import { needleName } from '../../mechanism/bed.ts'
import { firstValid } from '../seeded-random.ts'
import type { Maker } from '../question.ts'
import { rangeNames, someRange } from '../needle-range.ts'
import { broken, mainCardRows, rowPicture } from '../setup.ts'
import { needlesQuestion } from './needles-question.ts'

const count = 16

/** Which needles come forward after a turn short of the mark? */
export const lateRow: Maker = (kit) =>
  firstValid(() => {
    const rows = mainCardRows(kit.library)
    const pass = kit.random.whole(4, 16)
    const short = kit.random.whole(2, pass)
    const range = someRange(kit, count)
    const setup = { pass, faults: [broken('turn.short', [short])] }
    const question = needlesQuestion(kit, {
      prompt: `Before pass ${short} the carriage turned short of the mark. Everything else is sound. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} come forward in pass ${pass}?`,
      setup,
      start: { faults: setup.faults },
      range,
      goal: 'selected',
      pictures: [pass - 1, pass, pass + 1].map((row) => rowPicture(rows, row)),
      slips: [
        {
          setup: { pass },
          reason: `That is card row ${pass}, but the short turn did not step the card, so pass ${pass} is one row late.`,
        },
        {
          setup: { pass: pass + 1 },
          reason: `That is card row ${pass + 1}: a short turn does not step the card twice, it does not step it at all.`,
        },
      ],
      because: `pass ${pass} reads card row ${pass - 1}, one late, because the turn before pass ${short} did not step the card.`,
    })
    return question.slips.length === 2 ? question : null
  })
