import { describe, expect, test } from 'vitest'
import { kinds } from './arbitraries.ts'
import { namedCards } from './cards.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { count, everyNeedle, machine } from './make.ts'
import { cardFaults } from './table/card-faults.ts'
import { driveFaults } from './table/drive-faults.ts'
import { needleFaults } from './table/needle-faults.ts'
import { askedOf, outcome } from './table/rule.ts'
import { columnAt } from './trade.ts'

const ordinarySpeed = 500
const rules = [...cardFaults, ...driveFaults, ...needleFaults].map((rule) => ({
  speed: ordinarySpeed,
  ...rule,
}))
const passes = count(1, 9)

describe.each(rules)('$id at $speed mm/s $shows', ({ id, comes, speed, stage, part }) => {
  test.each(namedCards)('on %s, in nine passes, and says where each needle left', (_, card) => {
    const run = machine(card, [id], { speed })
    for (const number of passes) {
      const pass = run.passOf(number)
      const asked = everyNeedle.map((needle) => askedOf(card, number, needle))
      const wanted = asked.map(({ own }) => outcome(own))
      const coming = asked.map((needle) => outcome(comes(needle)))
      expect(pass.asked).toEqual(wanted)
      expect(pass.came).toEqual(coming)
      expect(pass.departures).toEqual(
        everyNeedle
          .filter((needle) => wanted[needle] !== coming[needle])
          .map((needle) => ({
            needle,
            column: columnAt(needle),
            asked: wanted[needle],
            came: coming[needle],
            stage: typeof stage === 'function' ? stage(asked[needle]!) : stage,
            part,
          })),
      )
    }
  })
})

test('every kind of fault has its line in the table', () => {
  expect(new Set(rules.map(({ id }) => faultOf(id).kind))).toEqual(new Set(kinds))
})

test.each(cardFaults)('without a card $id changes nothing, as every pin rises', ({ id }) => {
  const run = machine(null, [id])
  for (const number of passes) {
    const pass = run.passOf(number)
    expect(new Set(pass.came)).toEqual(new Set(['selected']))
    expect(pass.departures).toEqual([])
  }
})
