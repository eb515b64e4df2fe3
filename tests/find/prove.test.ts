import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { CardAndPasses } from '@/find/query.ts'
import { statementOf } from '@/find/statement.ts'
import { readCardFile } from '@/link/card-text.ts'
import { needleIndex, usualPlace } from '@/mechanism/bed.ts'
import { everyHole } from '@/mechanism/card.ts'
import { type FaultId, faultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { randomCard } from './make.ts'
import { notedQuery, type Unnoted } from './noted.ts'
import { hiddenByForce, passesFor, proofOf, shows, unshownOf } from './proven.ts'

const fleet = readCardFile(readFileSync('content/cards/home-fleet.txt', 'utf8')).rows

/** Looks at some needles only. */
const lookingAt = (query: CardAndPasses, isLookedAt: (needle: number) => boolean): CardAndPasses => ({
  ...query,
  passes: query.passes.map((pass) => ({
    ...pass,
    needles: [...pass.needles].map((letter, needle) => (isLookedAt(needle) ? letter : '?')).join(''),
  })),
})

const fleetPasses = passesFor(fleet)

describe('the passes that prove a machine', { timeout: 240_000 }, () => {
  test('with a card of two rows, elsewhere along the bed, show every single fault but those that the statement has', () => {
    const card = randomCard(2, 9)
    const place = { columnOne: toNeedle(109) }
    const query = notedQuery(card, passesFor(card, [], place), [], place)
    const { faults, shown, unshown, wrong } = statementOf(query)
    expect(wrong).toEqual([])
    expect(shown + unshown.length).toBe(faults)
    expect(unshownOf(query)).toEqual(hiddenByForce(query))
  })

  test('with a patterned card, show every single fault there is', () => {
    const { passes, atLeast, hidden } = proofOf(fleet)
    expect(hidden).toEqual([])
    expect(passes).toHaveLength(atLeast)
    const statement = statementOf(notedQuery(fleet, fleetPasses))
    expect(statement.unshown).toEqual([])
    expect(statement.shown).toBe(statement.faults)
    expect(statement.faults).toBeGreaterThan(1191)
  })

  test('are so few that without any of them some fault would not show', () => {
    for (const left of fleetPasses) {
      const query = notedQuery(
        fleet,
        fleetPasses.filter((pass) => pass !== left),
      )
      expect(statementOf(query).unshown.length).toBeGreaterThan(0)
    }
  })

  test('are never fast before one has run at the ordinary speed', () => {
    for (const card of [fleet, randomCard(3, 5), randomCard(12, 6), null]) {
      const [first, ...others] = proofOf(card).passes
      // A run begins with its first row, at the ordinary speed, though it need not be looked at.
      expect(first!.speed === 500 || (first!.pass ?? 1) > 1).toBe(true)
      expect([first!, ...others].every(({ speed }) => speed === 500 || speed === 900)).toBe(true)
      const run = [first!, ...others].flatMap(({ pass }) => pass ?? [])
      expect(new Set(run).size).toBe(run.length)
      const numbers = others.flatMap(({ pass }) => pass ?? [])
      expect(numbers).toEqual([...numbers].sort((one, other) => one - other))
    }
  })

  test('name what none of them can show: without a card nothing shows its turns', () => {
    const ids = proofOf(null).hidden.map(faultId)
    expect(ids).toEqual(expect.arrayContaining(['card.locked', 'pawl.right', 'pawl.left', 'turn.twice']))
    expect(ids).not.toContain('strip.3.seized')
  })

  test('show a strip that was worked on at every amount', () => {
    const slow = (ms: number): FaultId => `strip.3.slow=${ms}`
    const query = notedQuery(fleet, passesFor(fleet, ['strip.3']))
    for (const ms of [120, 150, 200, 400, 600, 1000])
      expect(shows(query, faultOf(slow(ms))), slow(ms)).toBe(true)
  })
})

describe('the statement', { timeout: 120_000 }, () => {
  const passes: Unnoted[] = [
    { row: 1, way: 1, speed: 500, pass: 1 },
    { row: 2, way: -1, speed: 500, pass: 2 },
    { card: [everyHole], row: 1, way: 1, speed: 500 },
  ]

  test('counts the needles that were looked at only', () => {
    const query = lookingAt(notedQuery(fleet, passes), (needle) => needle >= 60 && needle < 140)
    expect(unshownOf(query).filter((id) => !/sticky|loose|retainer/.test(id))).toEqual(hiddenByForce(query))
    const ids = unshownOf(query)
    expect(ids).toContain('needle.L100.gone')
    expect(ids).not.toContain('needle.R1.gone')
  })

  test('of nothing looked at proves nothing', () => {
    const blind = statementOf(lookingAt(notedQuery(fleet, passes), () => false))
    expect(blind).toMatchObject({ shown: 0, wrong: [] })
    expect(blind.unshown).toHaveLength(blind.faults)
    const none = statementOf({ card: fleet, passes: [], ...usualPlace })
    expect(none).toMatchObject({ shown: 0, wrong: [] })
  })

  test('says what would have shown with other passes', () => {
    const { unshown } = statementOf(notedQuery(fleet, passes))
    const slow = unshown.find(({ fault }) => faultId(fault) === 'needle.R1.stiff=10')
    expect(slow).toMatchObject({ why: 'in-these', chance: 0 })
    const sticky = unshown.find(({ fault }) => faultId(fault) === 'pin.1.sticky=0.5')
    expect(sticky!.why).toBe('in-these')
    expect(sticky!.chance).toBeGreaterThan(0)
    expect(sticky!.chance).toBeLessThan(0.95)
  })

  test('names the needles that came out otherwise, and what was due', () => {
    const [seized] = [notedQuery(fleet, passes, ['needle.R5.gone'])]
    const gone = needleIndex('R5')!
    expect(statementOf(seized).wrong.map(({ pass, needle }) => [pass, needle])).toEqual([
      [0, gone],
      [1, gone],
      [2, gone],
    ])
    expect(statementOf(seized).wrong[2]!.due).toBe('selected')
    expect(statementOf(lookingAt(seized, (needle) => needle !== gone)).wrong).toEqual([])
  })
})
