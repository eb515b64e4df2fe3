import { listed } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { broken, cardRowOf, mainCardRows, passOf } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

/** Which row does a pass read, later than the card is long? */
export const rowAsked: Maker = (kit) => {
  const rows = mainCardRows(kit.library).length
  const pass = rows * kit.random.whole(1, 3) + kit.random.whole(2, rows - 2)
  const setup = { pass }
  const row = cardRowOf(passOf(kit, setup))
  return numberQuestion(kit, {
    prompt: `This card is a loop of ${rows} rows, and pass 1 read row 1. Which row does pass ${pass} read?`,
    setup: {},
    value: row,
    slips: [
      [pass, `There is no row ${pass}: after row ${rows} comes row 1 again.`],
      [row + 1, 'That is the row after it: pass 1 reads row 1, not row 2.'],
      [row - 1, 'That is the row before it, which the needles show when the pass begins.'],
    ],
    how: `every ${rows} passes the card has gone round once, so take away ${rows} until a row is left.`,
    because: `${pass} passes take the card round ${Math.floor((pass - 1) / rows)} times, and on to row ${row}.`,
    show: setup,
  })
}

/** Which row does a pass read after short turns? */
export const shortRowAsked: Maker = (kit) => {
  const { random } = kit
  const pass = random.whole(8, 20)
  const shorts = random.some(
    Array.from({ length: pass - 3 }, (_, n) => n + 2),
    random.whole(1, 2),
  )
  const setup = { pass, faults: shorts.map((short) => broken('turn.short', [short])) }
  const row = cardRowOf(passOf(kit, setup))
  return numberQuestion(kit, {
    prompt: `The carriage turned short of the mark before ${shorts.length === 1 ? 'pass' : 'passes'} ${listed(shorts.map(String))}. Pass 1 read row 1. Which row does pass ${pass} read?`,
    setup: { faults: setup.faults },
    value: row,
    slips: [
      [pass, 'That is the row due; each short turn left the card where it was.'],
      [pass + shorts.length, 'A short turn does not step the card twice, it does not step it at all.'],
      [pass - 1, 'That leaves out one of the short turns, and each of them puts the card one row back.'],
    ],
    how: 'count the turns that went past the mark, and start from row 1.',
    because: `${shorts.length === 1 ? 'one turn' : 'two turns'} did not step the card, so pass ${pass} reads row ${row}.`,
    show: setup,
  })
}
