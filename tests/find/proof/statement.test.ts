import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { isKindByChance } from '@/find/kinds-by-chance.ts'
import { statementOf } from '@/find/statement.ts'
import { readCardFile } from '@/link/card-text.ts'
import { type CardPlace, usualPlace } from '@/mechanism/bed.ts'
import { type Card, everyHole } from '@/mechanism/card.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { randomCard } from '../make.ts'
import { notedQuery } from '../noted.ts'
import { hiddenByForce, passesFor, unshownOf } from '../proven.ts'

const fleet = readCardFile(readFileSync('content/cards/home-fleet.txt', 'utf8')).rows

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
    const { faults, shown, unshown, wrong } = statementOf(query)
    expect(wrong).toEqual([])
    expect(shown + unshown.length).toBe(faults)
    const byChance = unshown.filter(({ fault }) => isKindByChance(fault.kind))
    expect(byChance).toEqual([])
    expect(unshownOf(query)).toEqual(hiddenByForce(query))
  })
})
