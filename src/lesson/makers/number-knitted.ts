import type { Maker } from '../question.ts'
import { mainRows } from '../scene.ts'
import { number } from './number.ts'

/** In which pass is a row knitted? */
export const knittedAsked: Maker = (kit) => {
  const rows = mainRows(kit.library).length
  const row = kit.draw.whole(2, rows - 2)
  const loop = kit.draw.whole(0, 2)
  const pass = row + loop * rows
  const scene = { pass: pass + 1 }
  return number(kit, {
    prompt: `Pass ${pass} reads card row ${row}. In which pass is that row knitted?`,
    scene: { pass },
    value: pass + 1,
    slips: [
      [pass, `Pass ${pass} only sets its needles out; while it does, it knits the row before.`],
      [pass - 1, `Pass ${pass - 1} came before the pins had felt row ${row}.`],
      [row + 1, 'That is the number of a card row; the passes count on when the card begins again.'],
      [pass + 2, `By then row ${row} is in the fabric already.`],
    ],
    how: 'a pass knits what the pass before it has set out.',
    because: `pass ${pass} sets the needles out, and the next one knits them.`,
    show: scene,
  })
}
