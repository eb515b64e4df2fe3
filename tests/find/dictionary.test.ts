import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { classesOf, dictionaryOf, type Entry, isShown, signatureOf } from '@/find/dictionary.ts'
import { everyView, machineFaults } from '@/find/exhaustive-views.ts'
import { changedCode, changedSlot, codes } from '@/find/packed-change.ts'
import { lateChance } from '@/find/shown.ts'
import { scenarioIn, type View, viewsOf } from '@/find/view.ts'
import { faultId } from '@/mechanism/fault.ts'
import { readFault } from '@/mechanism/read-fault.ts'
import { faultKinds } from '@/mechanism/fault-kinds.ts'
import { startRun } from '@/mechanism/pass.ts'
import { firstPasses, numbers, randomCard } from './make.ts'

const card = randomCard(8, 11)

/** Passes of the card in turn, at three speeds, one out of turn, one with the card one row on, and two without it. */
const views: View[] = [
  ...viewsOf(
    card,
    [
      ...firstPasses(8, 4, 500),
      ...firstPasses(8, 3, 1500),
      ...firstPasses(8, 2, 90),
      { row: 6, way: -1, speed: 2000 },
      { row: 5, way: -1, speed: 700 },
    ],
    usualPlace,
  ),
  { card: null, pass: 1, speed: 500, shift: null, ...usualPlace },
  { card: randomCard(3, 12), pass: 5, speed: 1400, shift: null, ...usualPlace },
]
const dictionary = dictionaryOf(views)

const bedIn = (view: View, faults: Parameters<typeof scenarioIn>[1]): number[] =>
  startRun(scenarioIn(view, faults))
    .passOf(view.pass)
    .came.map((outcome) => codes[outcome])

/** The bed that an entry's patch makes of the sound one. */
const patched = (entry: Entry, n: number): number[] => {
  const bed = [...dictionary.settings[n]!.sound.codes]
  for (const change of entry.shown[n]!.changed) bed[changedSlot(change)] = changedCode(change)
  return bed
}

describe('the dictionary', () => {
  test('has every number of every part, each fault once, and a readable id for it', () => {
    const ids = dictionary.entries.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const { id, fault } of dictionary.entries)
      expect(readFault(id)).toEqual({ kind: 'fault', fault, remark: null })
    const of = (kind: string) => dictionary.entries.filter(({ fault }) => fault.kind === kind).length
    // What comes and goes from pass to pass is in no list of what a machine shows.
    expect(Object.keys(faultKinds).filter((kind) => of(kind) === 0)).toEqual(['pin.sticky', 'pivots.loose'])
    expect(
      ['pin.low', 'pin.over', 'rocker.dead', 'strip.seized', 'catch.broken', 'needle.bent'].map(of),
    ).toEqual([24, 24, 24, 8, 200, 200])
    // Rows 1 to 6 were looked at: each place of the card can fail in one way.
    expect(of('card.torn') + of('card.blocked')).toBe(6 * 24)
    expect(ids.length).toBeGreaterThan(1000)
    expect(ids.length).toBeLessThan(1500)
  })

  test('shows for the sound machine what the model does', () => {
    for (const [n, view] of views.entries())
      expect([...dictionary.settings[n]!.sound.codes]).toEqual(bedIn(view, []))
  })

  test(
    'shows for every entry, in every view, the very bed that the whole model gives',
    { timeout: 60_000 },
    () => {
      let checked = 0
      for (const entry of dictionary.entries) {
        if (entry.reach.of === 'chance') continue
        for (const [n, view] of views.entries()) {
          const bed = bedIn(view, [entry.fault])
          if (patched(entry, n).join('') !== bed.join(''))
            expect.fail(`${entry.id} in view ${n}: ${patched(entry, n).join('')} is not ${bed.join('')}`)
          checked++
        }
      }
      const chances = dictionary.entries.filter(({ reach }) => reach.of === 'chance')
      expect(chances.map(({ fault }) => fault.amount)).toEqual([6, 8, 12, 25])
      expect(checked).toBe((dictionary.entries.length - chances.length) * views.length)
    },
  )

  test('gives a worn retainer bar the chance with which the model draws late butts', () => {
    const seeds = 60
    for (const entry of dictionary.entries.filter(({ reach }) => reach.of === 'chance'))
      for (const [n, view] of views.entries()) {
        const sound = dictionary.settings[n]!.sound
        let late = 0
        let free = 0
        for (let seed = 1; seed <= seeds; seed++) {
          const pass = startRun({ ...scenarioIn(view, [entry.fault]), seed }).passOf(view.pass)
          for (const [index, outcome] of pass.came.entries())
            if (sound.held[index] === 1) expect(outcome).toBe('selected')
            else {
              free++
              if (outcome === 'selected') late++
            }
        }
        const { chance, changed } = entry.shown[n]!
        expect(changed).toHaveLength(0)
        const deviation = Math.sqrt(free * chance * (1 - chance))
        expect(Math.abs(late - free * chance), `${entry.id} in view ${n}`).toBeLessThanOrEqual(
          5 * deviation + 1,
        )
      }
  })

  test('has half of the butts late at the speed at which the median is too slow', () => {
    const time = 12 * Math.log(1.5 / 0.45)
    expect(lateChance(12, (1000 * 1.6 * 4.5) / time)).toBeCloseTo(0.5, 12)
  })
})

describe('classes', () => {
  test('hold the entries with the very same predictions, all of them once', () => {
    const classes = classesOf(dictionary)
    expect(classes.flat()).toHaveLength(dictionary.entries.length)
    const beds = classes.map((members) => {
      const own = members.map((entry) => views.map((_, n) => patched(entry, n).join('')).join(' '))
      if (members.every(({ reach }) => reach.of !== 'chance')) expect(new Set(own).size).toBe(1)
      return own[0]! + members[0]!.shown.map(({ chance }) => chance).join()
    })
    expect(new Set(beds).size).toBe(classes.length)
    const silent = classes.find(([first]) => !isShown(first!))!
    expect(silent.every((entry) => !isShown(entry))).toBe(true)
  })
})

describe('over every card, way and speed', () => {
  const whole = dictionaryOf(everyView, machineFaults())
  const classes = classesOf(whole)

  test('every fault shows, and those that stay together are these', () => {
    expect(whole.entries.filter((entry) => !isShown(entry)).map(({ id }) => id)).toEqual([])
    const kindsTogether = new Set(
      classes
        .filter((members) => members.length > 1)
        .map((members) => [...new Set(members.map(({ fault }) => fault.kind))].sort().join(' ')),
    )
    expect([...kindsTogether].sort()).toEqual([
      'belt.off belt.slack belt.timing carriage.plain gate.1.low sweep.worn',
      'belt.timing presser.left.worn',
      'belt.timing presser.right.worn',
      'card.side',
      'catch.broken needle.bent',
      'pawl.right turn.twice',
      'pin.low rocker.dead rocker.worn',
    ])
  })

  test(
    'no card, way or speed that chance comes upon parts what the battery leaves together',
    { timeout: 60_000 },
    () => {
      const next = numbers(5)
      const tried: View[] = Array.from({ length: 150 }, (_, seed) => {
        const rows = 1 + Math.floor(next() * 12)
        const pass = 1 + Math.floor(next() * 40)
        return { card: randomCard(rows, seed), pass, speed: 50 + next() * 1950, shift: null, ...usualPlace }
      })
      const together = classes.filter((members) => members.length > 1)
      for (const members of together) {
        const { entries } = dictionaryOf(
          members.length > 6 ? tried : tried.slice(0, 20 + members.length),
          members.map(({ fault }) => fault),
        )
        const keys = new Set(entries.map(({ shown }) => signatureOf(shown)))
        expect(keys.size, members.map(({ fault }) => faultId(fault)).join(' ')).toBe(1)
      }
    },
  )
})
