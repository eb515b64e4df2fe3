import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { infer } from '@/find/infer.ts'
import { checkOf, checks, opensMachine, partChecks } from '@/find/checks.ts'
import { dictionaryOf } from '@/find/dictionary.ts'
import { bitsOf, nextLooks } from '@/find/next.ts'
import { bedsOf } from '@/find/proof.ts'
import { slips } from '@/find/chances.ts'
import type { Query } from '@/find/query.ts'
import { viewsOf } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { faultOf } from '@/mechanism/fault.ts'
import { everyHole } from '@/mechanism/card.ts'
import { faultKinds } from '@/mechanism/fault-kinds.ts'
import { checkWords } from '@/words/checks.ts'
import { firstPasses, numbers, randomCard } from './make.ts'

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

const nextAfter = (query: Query) => nextLooks(query, infer(query))
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
    expect([...shown].sort()).toEqual(kinds.sort())
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

describe('bits', { timeout: 180_000 }, () => {
  test('are what the answer tells on average about the fault: prior less expected later uncertainty', () => {
    const next = numbers(6)
    for (let trial = 0; trial < 50; trial++) {
      const raw = Array.from({ length: 2 + Math.floor(next() * 30) }, () => next())
      const whole = raw.reduce((sum, share) => sum + share, 0)
      const hypotheses = raw.map((share) => ({ faults: [], hasCard: true, probability: share / whole }))
      const answers = raw.map(() => String(Math.floor(next() * 4)))
      const uncertainty = (shares: number[]): number =>
        shares.reduce((bits, share) => (share > 0 ? bits - share * Math.log2(share) : bits), 0)
      let after = 0
      for (const answer of new Set(answers)) {
        const left = hypotheses.filter((_, n) => answers[n] === answer).map(({ probability }) => probability)
        const chance = left.reduce((sum, share) => sum + share, 0)
        after += chance * uncertainty(left.map((share) => share / chance))
      }
      const before = uncertainty(hypotheses.map(({ probability }) => probability))
      expect(bitsOf(hypotheses, answers)).toBeCloseTo(before - after, 10)
    }
  })
})

describe('the next check', { timeout: 180_000 }, () => {
  test('puts last whatever opens the machine, the reader after the cover, however much it tells', () => {
    for (const ids of [['pin.5.low'], ['catch.R3.broken'], ['sweep.worn=0.8'], []]) {
      const found = nextOf(...ids)
      const opens = found.map(opensMachine)
      expect(opens).toEqual([...opens].sort())
      const risks = found.filter(opensMachine).map(({ check }) => checkOf(check).risk)
      expect(risks).toEqual([...risks].sort((one, other) => one - other))
    }
  })

  test('is by bits for the minutes and the risk among those that leave it closed', () => {
    const risks = new Map(checks.map(({ id, risk }) => [id, risk]))
    const worth = nextOf('retainer.worn=8')
      .filter((look) => !opensMachine(look) && look.check !== 'row-slow' && look.check !== 'retainer')
      .map(({ check, bits, minutes }) => bits / minutes / risks.get(check)!)
    expect(worth.length).toBeGreaterThan(2)
    expect(worth).toEqual([...worth].sort((a, b) => b - a))
  })

  test('is to change the needle where a catch and a butt can’t be told apart', () => {
    expect(nextAfter(queryOf(['catch.R3.broken'], 8))[0]!.check).toBe('swap-needle')
  })

  test('is to look at the pins where a pin and its rocker can’t be told apart', () => {
    expect(nextOf('pin.5.low')[0]!.check).toBe('pins')
  })

  test('is half a minute’s look at the settings where nothing is selected', () => {
    expect(nextOf('card.side=1.2')[0]!.check).toBe('settings')
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
})
