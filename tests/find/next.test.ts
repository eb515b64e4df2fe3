import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { infer, inferWhole } from '@/find/infer.ts'
import { checks, opensMachine, partChecks } from '@/find/checks.ts'
import { dictionaryOf } from '@/find/dictionary.ts'
import { nextLooks } from '@/find/next.ts'
import { bedsOf } from '@/find/kinds-found.ts'
import { slips } from '@/find/chances.ts'
import type { Query } from '@/find/query.ts'
import { viewsOf } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { everyHole } from '@/mechanism/card.ts'
import { faultKinds } from '@/mechanism/fault-kinds.ts'
import { checkWords } from '@/words/checks.ts'
import { firstPasses, randomCard } from './make.ts'

/** How much slower than alone this runs beside other tests. */
const slowdown = 4

const card = randomCard(8, 31)

/** A query in which the first passes of a card were seen, of a machine with these faults. */
const queryOf = (ids: readonly string[], passes = 4, rows = card): Query => {
  const noted = firstPasses(rows.length, passes, 500)
  const beds = bedsOf(dictionaryOf(viewsOf(rows, noted, usualPlace), []), ids.map(faultOf), 1)
  return {
    card: rows,
    passes: noted.map((one, n) => ({ ...one, card: rows, needles: beds[n]! })),
    slip: slips.rough,
    checks: [],
    ...usualPlace,
  }
}

const nextAfter = (query: Query) => nextLooks(query, inferWhole(query))
const nextOf = (...ids: string[]) => nextAfter(queryOf(ids))

describe('the table of checks', { timeout: 180_000 }, () => {
  test('has words and cautions for each, and shows every kind of fault by hand or eye', () => {
    const cautions = readdirSync('content/cautions').map((name) => name.replace('.md', ''))
    for (const { id, cautions: own, minutes, risk } of checks) {
      expect(checkWords[id]).toMatch(/^[A-Z].*\.$/)
      for (const caution of own) expect(cautions, id).toContain(caution)
      expect(minutes).toBeGreaterThan(0)
      expect(risk).toBeGreaterThanOrEqual(1)
    }
    const shown = new Set(partChecks.flatMap(({ shows }) => shows))
    // How the carriage is turned is no part: one sees it by the mark, not by a look at the machine.
    const kinds = Object.keys(faultKinds).filter((kind) => kind !== 'turn.short')
    expect([...shown].sort()).toEqual([...kinds, 'card.out'].sort())
  })

  test('opens only for a cover or the reader, and more than one cover is the riskiest', () => {
    const opening = checks.filter(({ opened }) => opened !== 'nothing')
    expect(opening.map(({ id, opened }) => [id, opened])).toEqual([
      ['strips', 'one-cover'],
      ['cover', 'covers'],
      ['reader', 'reader'],
    ])
    expect(checks.filter(opensMachine)).toEqual(opening)
    const wide = opening.filter(({ opened }) => opened !== 'one-cover')
    const least = Math.min(...wide.map(({ risk }) => risk))
    for (const check of checks) if (!wide.includes(check)) expect(check.risk).toBeLessThan(least)
  })
})

/** Machines that differ widely, with the passes that were noted of each. */
const machines: readonly (readonly [readonly FaultId[], number])[] = [
  [[], 1],
  [['pin.5.low'], 3],
  [['catch.R3.broken'], 4],
  [['sweep.worn=0.8'], 2],
  [['strip.3.seized'], 4],
  [['carriage.plain'], 2],
  [['pawl.right'], 3],
  [['retainer.worn=8'], 3],
  [['strip.1.slow=300', 'strip.2.seized', 'strip.4.slow=600', 'strip.6.seized'], 3],
  [['pivots.loose=0.5'], 3],
]

describe('the next check', { timeout: 180_000 }, () => {
  test.each(machines)('of a machine with %j keeps the rules of the bench', (ids, passes) => {
    const query = queryOf(ids, passes)
    const { finding } = inferWhole(query)
    const found = nextAfter(query)
    expect(found.length).toBeGreaterThan(0)
    // What opens comes after what does not, as long as that settles anything; the reader comes last of all.
    const closed = found.filter((look) => !opensMachine(look))
    if (closed.some(({ bits }) => bits >= 0.02))
      expect(found.map(opensMachine)).toEqual(found.map(opensMachine).sort())
    const reader = found.findIndex(({ check }) => check === 'reader')
    expect([-1, found.length - 1]).toContain(reader)
    // No pass was slow yet.
    for (const { pass } of found) expect(pass?.speed ?? 0).toBeLessThanOrEqual(500)
    // Each check once, and none that settles nothing but shows nothing either.
    expect(new Set(found.map(({ check }) => check)).size).toBe(found.length)
    for (const { bits, check } of found)
      if (bits < 0.005) expect([check, finding.places[0]!.wrong > 0.5]).toEqual([check, true])
  })

  test('may be a fast pass once a slow one has run freely', () => {
    const query = queryOf(['strip.3.slow=150'], 4)
    const slow = { ...query.passes[0]!, speed: 90 }
    const found = nextAfter({ ...query, passes: [...query.passes, slow] })
    expect(found.filter(({ pass }) => pass?.speed === 900).length).toBeGreaterThan(0)
  })

  test('is to change the needle where a catch and a butt can’t be told apart', () => {
    expect(nextAfter(queryOf(['catch.R3.broken'], 8))[0]!.check).toBe('swap-needle')
  })

  test('is to look at the pins where a pin and its rocker can’t be told apart', () => {
    expect(nextOf('pin.5.low')[0]!.check).toBe('pins')
  })

  test('is half a minute’s look at the settings where nothing is selected', () => {
    for (const id of ['carriage.plain', 'belt.off', 'card.side=1.2'])
      expect(nextOf(id)[0]!.check).toBe('settings')
  })

  test('is to draw the bar and look where the bar is nearly sure, and that only once', () => {
    const query = queryOf(['retainer.worn=8'])
    expect(nextAfter(query)[0]!.check).toBe('retainer')
    const seen = { ...query, checks: [{ check: 'retainer' as const, found: faultOf('retainer.worn=8') }] }
    expect(nextAfter(seen).map(({ check }) => check)).not.toContain('retainer')
  })

  test('is to rule the lever out and then to watch the turn, where the card does not move on as it should', () => {
    const query = queryOf(['pawl.right'])
    expect(nextAfter(query)[0]!.check).toBe('settings')
    const ruledOut = { ...query, checks: [{ check: 'settings' as const, found: null }] }
    expect(nextAfter(ruledOut)[0]!.check).toBe('stepping')
  })

  test('is the same row again where what it does comes and goes, and shows nothing where it does not', () => {
    const again = (...ids: string[]): number =>
      nextOf(...ids).find(({ check }) => check === 'row-again')?.bits ?? 0
    expect(again('pivots.loose=0.5')).toBeGreaterThan(0.2)
    expect(again('strip.3.seized')).toBeLessThan(0.1)
  })

  test('is another card or row where one row could not part a pin from a hole', () => {
    const query = queryOf(['pin.5.low'], 1, [everyHole, 0x0fff00, everyHole])
    expect(infer(query).places[0]!.place).toBe('column.5')
    const check = nextAfter(query).find((one) => one.check === 'holes-left')!
    expect(check.bits).toBeGreaterThan(0.5)
  })

  test('has the cover after the fingertip on the strips’ ends', () => {
    const found = nextOf('strip.3.seized').map(({ check }) => check)
    expect(found).toContain('strips')
    expect(found.indexOf('strips')).toBeLessThan(found.indexOf('cover'))
  })

  test('is the same for the same notes, and takes no longer than it may', () => {
    const query = queryOf(['strip.3.seized', 'strip.4.slow=300'])
    const inference = inferWhole(query)
    const first = nextLooks(query, inference)
    const start = performance.now()
    expect(nextLooks(query, inference)).toEqual(first)
    expect(performance.now() - start).toBeLessThan(300 * slowdown)
  })
})
