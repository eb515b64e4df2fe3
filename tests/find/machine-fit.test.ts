import { describe, expect, test } from 'vitest'
import { fitOfMachine } from '@/find/machine-fit.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { type Cause, faultOfCause } from '@/find/place.ts'
import type { Query } from '@/find/query.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import { type Fault, faultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'

const card = [0xffffff, 0, 0xf000f0]

/** What a machine with these faults shows in passes 1, 2 and 3, fast. */
const queryOf = (
  faults: readonly Fault[],
  change: (needles: string) => string = (needles) => needles,
): Query => {
  const run = startRun({ ...soundScenario(card), faults, speed: 900 })
  return {
    ...usualPlace,
    card,
    passes: [1, 2, 3].map((pass) => ({
      card,
      row: pass,
      way: wayOfPass(pass),
      speed: 900,
      pass,
      needles: change(lettersOf(run.passOf(pass))),
    })),
    slip: 0.005,
    checks: [],
  }
}

const ids = (...list: string[]): Fault[] => list.map(faultOf)

describe('how a machine meets the notes', () => {
  test.each<[Fault[], Cause[][]]>([
    [ids('strip.3.seized'), [['strip.3.seized']]],
    [ids('strip.3.slow=150', 'strip.5.slow=600'), [['strip.3.slow'], ['strip.5.slow']]],
    [ids('strip.3.slow=600', 'pin.4.low'), [['strip.3.slow'], ['pin.4.low']]],
    [ids('pin.4.low', 'needle.R7.gone'), [['pin.4.low', 'rocker.4.dead'], ['needle.R7.gone']]],
    [ids('card.reversed'), [['card.reversed']]],
  ])('is whole where it is that machine: %j', (faults, ways) => {
    const fit = fitOfMachine(queryOf(faults), ways)
    expect(fit).toMatchObject({ looked: 600, byChance: 0, contrary: 0 })
    expect(fit.departures).toBeGreaterThan(0)
    expect(fit.explained).toBe(fit.departures)
  })

  test('counts what is left unexplained, and what came out as asked but should not have', () => {
    const query = queryOf(ids('strip.3.seized', 'needle.R1.bent'))
    const { explained } = fitOfMachine(queryOf(ids('strip.3.seized')), [['strip.3.seized']])
    const { departures: contrary } = fitOfMachine(queryOf(ids('strip.4.seized')), [])
    const departures = explained + 2
    expect(explained).toBeGreaterThan(25)
    expect(fitOfMachine(query, [['strip.3.seized']])).toMatchObject({ departures, explained, contrary: 0 })
    expect(fitOfMachine(query, [['strip.4.seized']])).toMatchObject({ departures, explained: 0, contrary })
    expect(fitOfMachine(query, [])).toMatchObject({ departures, explained: 0, contrary: 0 })
  })

  test.each<[string, Cause]>([
    ['pin.4.sticky=0.95', 'pin.4.sticky=0.5'],
    ['pivots.loose=0.6', 'pivots.loose=0.6'],
    ['retainer.worn=12', 'retainer.worn=12'],
  ])('takes what chance decides as explained: %s', (id, cause) => {
    const fit = fitOfMachine(queryOf(ids(id)), [[cause]])
    expect(fit.departures).toBeGreaterThan(0)
    expect(fit).toMatchObject({ explained: fit.departures, byChance: fit.departures, contrary: 0 })
  })

  test('leaves out needles not looked at, and is nothing without a pass', () => {
    const query = queryOf(ids('strip.3.seized'), (needles) => needles.slice(0, 100).padEnd(200, '?'))
    expect(fitOfMachine(query, [['strip.3.seized']]).looked).toBe(300)
    expect(fitOfMachine({ ...query, passes: [] }, [['strip.3.seized']]).looked).toBe(0)
  })

  test('has no card where it is out', () => {
    const none = queryOf([], () => 's'.repeat(200))
    const fit = fitOfMachine(none, [['card.out']])
    expect(fit).toMatchObject({ contrary: 0 })
    expect(fit.explained).toBe(fit.departures)
    expect(fit.departures).toBeGreaterThan(200)
  })
})

test.each<[Cause, string | null]>([
  ['strip.3.slow', 'strip.3.slow'],
  ['strip.3.slow=150', 'strip.3.slow=150'],
  ['retainer.worn=8', 'retainer.worn=8'],
  ['pin.3.sticky', null],
  ['belt.timing=8', 'belt.timing=8'],
  ['other', null],
  ['card.out', null],
])('the cause %s is the fault %s', (cause, id) => {
  const fault = faultOfCause(cause)
  expect(fault && faultId(fault)).toBe(id)
})
