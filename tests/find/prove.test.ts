import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Place } from '@/find/place.ts'
import { proofPasses } from '@/find/prove.ts'
import { statementOf } from '@/find/statement.ts'
import { type CardAndPasses, viewsOfQuery } from '@/find/query.ts'
import { isKindByChance } from '@/find/kinds-by-chance.ts'
import { singleFaults } from '@/find/telling.ts'
import { scenarioIn } from '@/find/view.ts'
import { type CardPlace, needleIndex, usualPlace } from '@/mechanism/bed.ts'
import { type Card, everyHole } from '@/mechanism/card.ts'
import { type Fault, type FaultId, faultId, faultOf } from '@/mechanism/fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { readCardFile } from '@/link/card-text.ts'
import { lettersOf } from '@/find/letters.ts'
import { startRun } from '@/mechanism/pass.ts'
import { randomCard } from './make.ts'
import { notedQuery, type Unnoted } from './noted.ts'

const fleet = readCardFile(readFileSync('content/cards/home-fleet.txt', 'utf8')).rows

const cardOf = { none: null, 'all-holes': [everyHole], blank: [0] } as const

/** The passes that prove a machine with this card in hand. */
const passesFor = (
  card: Card | null,
  worked: readonly Place[] = [],
  place: CardPlace = usualPlace,
): Unnoted[] =>
  proofPasses({ card, worked, ...place }).passes.map(({ card: asked, ...pass }) => ({
    ...pass,
    ...(asked === 'same' ? {} : { card: cardOf[asked] }),
  }))

/** Whether the needles looked at come out otherwise than noted on a sound machine, by running the whole model. */
const shows = (query: CardAndPasses, fault: Fault): boolean =>
  viewsOfQuery(query).some((view, n) => {
    const bed = lettersOf(startRun(scenarioIn(view, [fault])).passOf(view.pass))
    const { needles } = query.passes[n]!
    return [...bed].some((letter, needle) => needles[needle] !== '?' && needles[needle] !== letter)
  })

const untoldOf = (query: CardAndPasses): string[] =>
  statementOf(query)
    .untold.map(({ fault }) => faultId(fault))
    .sort()

/** Every single fault that goes by no chance and that the model does not show, each run through all the passes. */
const hiddenByForce = (query: CardAndPasses): string[] =>
  singleFaults(viewsOfQuery(query))
    .filter((fault) => !isKindByChance(fault.kind) && !shows(query, fault))
    .map(faultId)
    .sort()

/** Looks at some needles only. */
const lookingAt = (query: CardAndPasses, isLookedAt: (needle: number) => boolean): CardAndPasses => ({
  ...query,
  passes: query.passes.map((pass) => ({
    ...pass,
    needles: [...pass.needles].map((letter, needle) => (isLookedAt(needle) ? letter : '?')).join(''),
  })),
})

const pair = (fill: number): Card =>
  Array.from({ length: 6 }, (_, n) => (n % 4 < 2 ? fill : everyHole - fill))

describe('the passes that prove a machine', { timeout: 240_000 }, () => {
  test.each<[string, Card | null, CardPlace]>([
    ['a patterned card', fleet, usualPlace],
    ['a card of an odd number of rows', randomCard(5, 3), usualPlace],
    ['a card of two rows, elsewhere along the bed', randomCard(2, 9), { columnOne: toNeedle(109) }],
    ['rows in pairs', pair(0x0f0f0f), usualPlace],
    ['no card', null, usualPlace],
  ])('with %s, show every single fault but those that the statement has', (_, card, place) => {
    const query = notedQuery(card, passesFor(card, [], place), [], place)
    const { faults, told, untold, wrong } = statementOf(query)
    expect(wrong).toEqual([])
    expect(told + untold.length).toBe(faults)
    const byChance = untold.filter(({ fault }) => isKindByChance(fault.kind))
    expect(byChance).toEqual([])
    expect(untoldOf(query)).toEqual(hiddenByForce(query))
  })

  test('with a patterned card, show every single fault there is', () => {
    const { passes, atLeast, hidden } = proofPasses({ card: fleet, worked: [], ...usualPlace })
    expect(hidden).toEqual([])
    expect(passes).toHaveLength(atLeast)
    const statement = statementOf(notedQuery(fleet, passesFor(fleet)))
    expect(statement.untold).toEqual([])
    expect(statement.told).toBe(statement.faults)
    expect(statement.faults).toBeGreaterThan(1191)
  })

  test('are so few that without any of them some fault would not show', () => {
    const passes = passesFor(fleet)
    for (const left of passes) {
      const query = notedQuery(
        fleet,
        passes.filter((pass) => pass !== left),
      )
      expect(statementOf(query).untold.length).toBeGreaterThan(0)
    }
  })

  test('are never fast before one has run at the ordinary speed', () => {
    for (const card of [fleet, randomCard(3, 5), randomCard(12, 6), null]) {
      const [first, ...others] = proofPasses({ card, worked: [], ...usualPlace }).passes
      // A run begins with its first row, at the ordinary speed, though it need not be looked at.
      expect(first!.speed === 500 || (first!.pass ?? 1) > 1).toBe(true)
      expect([first!, ...others].every(({ speed }) => speed === 500 || speed === 900)).toBe(true)
      const numbers = others.flatMap(({ pass }) => pass ?? [])
      expect(numbers).toEqual([...numbers].sort((one, other) => one - other))
    }
  })

  test('name what none of them can show: without a card nothing tells of its turns', () => {
    const ids = proofPasses({ card: null, worked: [], ...usualPlace }).hidden.map(faultId)
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
    expect(untoldOf(query).filter((id) => !/sticky|loose|retainer/.test(id))).toEqual(hiddenByForce(query))
    const ids = untoldOf(query)
    expect(ids).toContain('needle.L100.gone')
    expect(ids).not.toContain('needle.R1.gone')
  })

  test('of nothing looked at tells nothing', () => {
    const blind = statementOf(lookingAt(notedQuery(fleet, passes), () => false))
    expect(blind).toMatchObject({ told: 0, wrong: [] })
    expect(blind.untold).toHaveLength(blind.faults)
    const none = statementOf({ card: fleet, passes: [], ...usualPlace })
    expect(none).toMatchObject({ told: 0, wrong: [] })
  })

  test('says what would have shown with other passes', () => {
    const { untold } = statementOf(notedQuery(fleet, passes))
    const slow = untold.find(({ fault }) => faultId(fault) === 'needle.R1.stiff=10')
    expect(slow).toMatchObject({ why: 'in-these', chance: 0 })
    const sticky = untold.find(({ fault }) => faultId(fault) === 'pin.1.sticky=0.5')
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
