import type { Maker } from '../question.ts'
import { mainCardRows } from '../setup.ts'
import { orderQuestion, stepsOf } from './order-question.ts'

/** From a card row to a row of fabric. */
export const fabricOrder: Maker = (kit) => {
  const row = kit.random.whole(1, mainCardRows(kit.library).length - 2)
  const next = { pass: row + 1 }
  return orderQuestion(kit, {
    prompt: `Put in order how card row ${row} becomes a row of fabric.`,
    setup: { pass: row },
    steps: stepsOf(kit, next, [
      ['feel', `The pins feel card row ${row}`, 'a pass only sets out what the pins have felt'],
      ['set', `Pass ${row} sets out the needles`, 'needles are knitted as they were set out before'],
      ['step', `The card steps on to row ${row + 1}`, 'it steps at the turn, between the two passes'],
      ['knit', `Pass ${row + 1} knits row ${row}`, 'a row is in the fabric only when it has been knitted'],
      ['seen', `Row ${row} is seen below the needles`, ''],
    ]),
    because: `Pass ${row} sets row ${row} out and pass ${row + 1} knits it, so the needles are always one row ahead of the fabric.`,
    show: next,
  })
}
