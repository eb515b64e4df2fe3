import type { Maker } from '../question.ts'
import { mainCardRows } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

/** In which pass is a row knitted? */
export const knittedAsked: Maker = (kit) => {
  const rows = mainCardRows(kit.library).length
  const row = kit.random.whole(2, rows - 2)
  const loop = kit.random.whole(0, 2)
  const pass = row + loop * rows
  const setup = { pass: pass + 1 }
  return numberQuestion(kit, {
    prompt: `Pass ${pass} reads card row ${row}. In which pass is that row knitted?`,
    setup: { pass },
    value: pass + 1,
    slips: [
      [pass, `Pass ${pass} only sets its needles out; while it does, it knits the row before.`],
      [pass - 1, `Pass ${pass - 1} came before the pins had felt row ${row}.`],
      [row + 1, 'That is the number of a card row; the passes count on when the card begins again.'],
      [pass + 2, `By then row ${row} is in the fabric already.`],
    ],
    how: 'a pass knits what the pass before it has set out.',
    because: `pass ${pass} sets the needles out, and the next one knits them.`,
    show: setup,
  })
}
