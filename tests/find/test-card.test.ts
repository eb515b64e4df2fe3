import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { classesOf, dictionaryOf, isShown } from '@/find/dictionary.ts'
import { everyView, machineFaults } from '@/find/exhaustive-views.ts'
import { computeTestCard, testCard } from '@/find/test-card.ts'
import type { View } from '@/find/view.ts'
import { hasHole } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { randomCard } from './make.ts'

const found = testCard()
const { card, runs, dictionary, classes } = found

describe('the test card', () => {
  test('shows every fault that there is', () => {
    expect(dictionary.entries.length).toBeGreaterThan(1200)
    expect(found.hidden).toEqual([])
    expect(dictionary.entries.filter((entry) => !isShown(entry))).toEqual([])
  })

  test('parts all that any card, way and speed part: only those stay together that always do', () => {
    const always = classesOf(dictionaryOf(everyView, machineFaults()))
    // A turn short of the mark and one that the pawl missed look the same, whatever the card.
    const turnOf = (id: string): string => id.replace('pawl.skips', 'turn.short')
    const classOf = new Map(always.flatMap((members, n) => members.map(({ id }) => [id, n])))
    for (const members of classes.filter(({ length }) => length > 1))
      expect(new Set(members.map(({ id }) => classOf.get(id) ?? turnOf(id))).size, members[0]!.id).toBe(1)
    expect(classes).toHaveLength(found.most)
    const passes = card.length * runs.length
    expect(found.most).toBe(always.length + 24 * card.length + 2 * (passes - 1))
  })

  test('shows each fault on four needles at least, so that a slip or two does not hide it', () => {
    for (const { id, shown, reach } of dictionary.entries)
      if (reach.of !== 'chance')
        expect(
          shown.reduce((sum, { changed }) => sum + changed.length, 0),
          id,
        ).toBeGreaterThanOrEqual(4)
  })

  test('is proved the shortest: each column has two blanks and a hole, which takes three rows', () => {
    expect(card).toHaveLength(3)
    expect(found.fewest).toBe(3)
    for (let column = 1; column <= 24; column++) {
      const holes = card.filter((row) => hasHole(row, toColumn(column))).length
      expect(holes).toBeGreaterThanOrEqual(1)
      expect(card.length - holes).toBeGreaterThanOrEqual(2)
    }
  })

  test('no card of two rows does as much, whatever its holes', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const two = randomCard(2, seed)
      const views = runs.flatMap((speed, run) =>
        two.map((_, n): View => ({ card: two, pass: 2 * run + n + 1, speed, shift: 0, ...usualPlace })),
      )
      const short = dictionaryOf([...views, { card: null, pass: 1, speed: 500, shift: null, ...usualPlace }])
      const hidden = short.entries.filter((entry) => !isShown(entry)).length
      const most = found.most - 24 * (card.length - 2) - 2 * (card.length - 2) * runs.length
      expect(classesOf(short).length - hidden).toBeLessThan(most)
    }
  })

  test('is the same for the same seed, another for another, and says how far it has come', () => {
    const search = computeTestCard(3)
    const first = search.next()
    expect(first.done).toBe(false)
    expect(first.value).toMatchObject({ tried: 1, rows: 3 })
    let step = search.next()
    while (!step.done) step = search.next()
    expect(step.value.card).toEqual(testCard(3).card)
    expect(step.value.card).not.toEqual(card)
    expect(step.value.classes.length).toBe(step.value.most)
  })

  test('is shown beside the fewest rows that codes take', () => {
    expect([found.forCodes, found.toSeparate]).toEqual([5, 7])
  })
})
