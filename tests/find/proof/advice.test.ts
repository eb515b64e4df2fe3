import { describe, expect, test } from 'vitest'
import { machinesOf } from '@/commands/bench/machine.ts'
import { isCheckId, partChecks } from '@/find/checks.ts'
import type { CheckOutcome } from '@/find/check-outcomes.ts'
import { inferWhole } from '@/find/infer.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { type NextLook, nextLooks } from '@/find/next.ts'
import { placeOfFault } from '@/find/place.ts'
import { type CheckMade, type NotedPass, type Query, viewsOfQuery } from '@/find/query.ts'
import { entropy } from '@/find/shared-bits.ts'
import { scenarioIn } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { randomCard } from '../make.ts'

const card = randomCard(8, 31)

interface Truth {
  readonly faults: readonly Fault[]
  readonly wear: number
  readonly seed: number
}

/** A pass that was asked for, made on a machine and noted without a slip. */
const noted = (query: Query, pass: NotedPass, { faults, wear, seed }: Truth): NotedPass => {
  const passes = [...query.passes, pass]
  const view = viewsOfQuery({ ...query, passes }).at(-1)!
  const needles = lettersOf(startRun({ ...scenarioIn(view, faults), wear, seed }).passOf(view.pass))
  return { ...pass, needles }
}

const cards = { same: card, none: null, 'all-holes': [0xffffff], blank: [0] }

/** The query after a look was made on a machine. */
const after = (query: Query, look: NextLook, truth: Truth): Query => {
  if (look.pass) {
    const { card: asked, row, way, speed } = look.pass
    const pass = noted(query, { card: cards[asked], row, way, speed, needles: '' }, truth)
    return { ...query, passes: [...query.passes, pass] }
  }
  const check = partChecks.find(({ id }) => id === look.check)!
  const seen = truth.faults.filter(({ kind }) => check.shows.includes(kind))
  const made: CheckMade[] = (seen.length > 0 ? seen : [null]).map((found) => ({ check: check.id, found }))
  return { ...query, checks: [...query.checks, ...made] }
}

const doubt = (query: Query): number =>
  inferWhole(query).finding.places.reduce((sum, { wrong }) => sum + entropy([wrong, 1 - wrong]), 0)

const start = (truth: Truth): Query => {
  const query: Query = { card, passes: [], slip: 0.005, checks: [], ...usualPlace }
  return {
    ...query,
    passes: [noted(query, { card, row: 1, way: 1, speed: 500, needles: '' }, truth)],
  }
}

/** Looks until the place of a fault is all but sure; Infinity where that takes more than `most`. */
const looksUntil = (
  fault: Fault,
  choose: (looks: readonly NextLook[]) => NextLook | undefined,
  most: number,
  sure = 0.95,
): number => {
  const truth = { faults: [fault], wear: 0, seed: 1 }
  const place = placeOfFault(fault)
  let query = start(truth)
  for (let count = 0; count <= most; count++) {
    const inference = inferWhole(query)
    if ((inference.finding.places.find((one) => one.place === place)?.wrong ?? 0) > sure) return count
    const look = choose(nextLooks(query, inference))
    if (!look) return Infinity
    query = after(query, look, truth)
  }
  return Infinity
}

const single = [
  'strip.3.seized',
  'strip.5.slow=400',
  'strip.6.over',
  'pin.5.low',
  'pin.7.high',
  'needle.R3.bent',
  'catch.L40.broken',
  'retainer.worn=9',
  'carriage.plain',
  'card.locked',
  'pawl.left',
  'belt.off',
  'presser.right.worn=0.8',
  'gate.1.high=0.5',
] as const

describe('the advice', { timeout: 600_000 }, () => {
  test('leads from one pass to the place of each fault in few looks', () => {
    const counts = single.map((id) => looksUntil(faultOf(id), ([first]) => first, 8))
    for (const [n, id] of single.entries()) expect(counts[n], id).toBeLessThanOrEqual(6)
    // What a hand alone finds is as sure as a hand is.
    expect(looksUntil(faultOf('belt.timing=3'), ([first]) => first, 8, 0.75)).toBeLessThanOrEqual(6)
    expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThan(3)
  })

  test('settles more with its first look than its last one would, on machines as they come to a bench', () => {
    const machines = machinesOf(41, 12).map(({ faults, wear, seed }) => ({ faults, wear, seed }))
    let [before, first, last] = [0, 0, 0]
    for (const truth of machines) {
      const query = start(truth)
      const looks = nextLooks(query, inferWhole(query)).filter(({ pass }) => pass !== null)
      if (looks.length < 2) continue
      before += doubt(query)
      first += doubt(after(query, looks[0]!, truth))
      last += doubt(after(query, looks.at(-1)!, truth))
    }
    expect(first).toBeLessThan(0.9 * before)
    expect(first).toBeLessThan(last)
  })

  test('offers outcomes that it can take', () => {
    const query = start({ faults: [faultOf('strip.3.seized')], wear: 0, seed: 1 })
    for (const { check, outcomes } of nextLooks(query, inferWhole(query))) {
      expect(isCheckId(check)).toBe(true)
      const [sound] = outcomes
      const isSound = (one: CheckOutcome | undefined): boolean =>
        one?.kind === 'part' ? one.found === null : one?.prediction.changed.length === 0
      expect(isSound(sound)).toBe(true)
    }
  })
})
