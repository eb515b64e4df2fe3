import { columnBit, type CardRow, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { listed } from '../../words/lists.ts'
import { firstGood } from '../draw.ts'
import type { Maker } from '../question.ts'
import { broken, everyColumn, mainRows, ownRow, passOf, rowPicture } from '../scene.ts'
import { number } from './number.ts'

const { columns, needles } = dimensions

/** Which row does a pass read, later than the card is long? */
export const rowAsked: Maker = (kit) => {
  const rows = mainRows(kit.library).length
  const pass = rows * kit.draw.whole(1, 3) + kit.draw.whole(2, rows - 2)
  const scene = { pass }
  const row = passOf(kit.library, scene).row ?? 0
  return number(kit, {
    prompt: `This card is a loop of ${rows} rows, and pass 1 read row 1. Which row does pass ${pass} read?`,
    scene: {},
    value: row,
    slips: [
      [pass, `There is no row ${pass}: after row ${rows} comes row 1 again.`],
      [row + 1, 'That is the row after it: pass 1 reads row 1, not row 2.'],
      [row - 1, 'That is the row before it, which the needles show when the pass begins.'],
    ],
    how: `every ${rows} passes the card has gone round once, so take away ${rows} until a row is left.`,
    because: `${pass} passes take the card round ${Math.floor((pass - 1) / rows)} times, and on to row ${row}.`,
    show: scene,
  })
}

/** Which row does a pass read after short turns? */
export const shortRowAsked: Maker = (kit) => {
  const { draw } = kit
  const pass = draw.whole(8, 20)
  const shorts = draw.some(
    Array.from({ length: pass - 3 }, (_, n) => n + 2),
    draw.whole(1, 2),
  )
  const scene = { pass, faults: shorts.map((short) => broken('turn.short', [short])) }
  const row = passOf(kit.library, scene).row ?? 0
  return number(kit, {
    prompt: `The carriage turned short of the mark before ${shorts.length === 1 ? 'pass' : 'passes'} ${listed(shorts.map(String))}. Pass 1 read row 1. Which row does pass ${pass} read?`,
    scene: { faults: scene.faults },
    value: row,
    slips: [
      [pass, 'That is the row due; each short turn left the card where it was.'],
      [pass + shorts.length, 'A short turn does not step the card twice, it does not step it at all.'],
      [pass - 1, 'That leaves out one of the short turns, and each of them puts the card one row back.'],
    ],
    how: 'count the turns that went past the mark, and start from row 1.',
    because: `${shorts.length === 1 ? 'one turn' : 'two turns'} did not step the card, so pass ${pass} reads row ${row}.`,
    show: scene,
  })
}

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

/** The longest run of columns with or without a hole: along one card's width, or round into the next repeat. */
const longestRun = (row: CardRow, hole: boolean, round: boolean): number => {
  let longest = 0
  let run = 0
  for (let n = 0; n < columns * (round ? 2 : 1); n++) {
    run = hasHole(row, (n % columns) + 1) === hole ? run + 1 : 0
    longest = Math.max(longest, run)
  }
  return Math.min(columns, longest)
}

/** How long is the longest float of a row? */
export const floatAsked: Maker = (kit) =>
  firstGood(() => {
    const { draw } = kit
    const row = everyColumn.reduce(
      (bits, column) => bits | (draw.whole(0, 2) === 0 ? columnBit(column) : 0),
      0,
    )
    const value = longestRun(row, false, true)
    if (value < 4 || value > 12) return null
    const scene = { card: ownRow(row) }
    return number(kit, {
      prompt: `The carriage is set for two yarns: the second yarn knits at the selected needles and floats behind the plain ones. The row repeats all along the bed. How many plain needles does its longest float pass?`,
      scene,
      value,
      pictures: [rowPicture([row], 1)],
      slips: [
        [
          longestRun(row, false, false),
          `After column ${columns} comes column 1 again, so a float may run on from one repeat into the next.`,
        ],
        [
          longestRun(row, true, true),
          'That is the longest run of holes, behind which the first yarn floats.',
        ],
        [value + 1, 'Count the plain needles between the two stitches, not the steps from stitch to stitch.'],
      ],
      how: `look for the longest run of columns without a hole, also from column ${columns} on to column 1.`,
      because: 'so many columns in a row have no hole, and the second yarn has nothing to knit there.',
      show: { ...scene, at: needles / 2 + columns },
    })
  })
