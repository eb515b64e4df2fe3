import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { dictionaryOf, signatureOf } from '@/find/dictionary.ts'
import { entriesFor, type Reach, reachOf } from '@/find/entries.ts'
import { everyView, machineFaults } from '@/find/exhaustive-views.ts'
import { lateChance } from '@/find/shown.ts'
import { bitsDue, type SoundBed, soundBeds, soundIn } from '@/find/sound.ts'
import { scenarioIn, type View, viewsOf } from '@/find/view.ts'
import { hasHole } from '@/mechanism/card.ts'
import { faultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import type { FaultKindName } from '@/mechanism/fault-kinds.ts'
import { toColumn, toNeedle, toStrip } from '@/mechanism/indices.ts'

const view: View = { card: [0xf00000, 0, 0xffffff], pass: 2, speed: 500, shift: 0, ...usualPlace }

describe('how far a fault reaches', () => {
  test.each<[string, Reach]>([
    ['card.locked', { of: 'row' }],
    ['pawl.right', { of: 'row' }],
    ['pawl.left', { of: 'row' }],
    ['pawl.double', { of: 'row' }],
    ['turn.short.3', { of: 'row' }],
    ['retainer.worn=12', { of: 'chance' }],
    ['needle.R3.bent', { of: 'needle', needle: toNeedle(102), strip: toStrip(3) }],
    ['catch.L1.broken', { of: 'needle', needle: toNeedle(99), strip: toStrip(8) }],
    ['strip.5.over', { of: 'strip', strip: toStrip(5) }],
    ['pin.11.low', { of: 'strip', strip: toStrip(3) }],
    ['rocker.24.dead', { of: 'strip', strip: toStrip(8) }],
    ['card.torn.7.9', { of: 'strip', strip: toStrip(1) }],
    ['card.blocked.1.24', { of: 'strip', strip: toStrip(8) }],
    ['card.side=1', { of: 'bed' }],
    ['belt.timing=3', { of: 'bed' }],
    ['gate.1.low=0.5', { of: 'bed' }],
    ['presser.left.worn=0.8', { of: 'bed' }],
  ])('%s: %j', (id, reach) => {
    expect(reachOf(faultOf(id), usualPlace)).toEqual(reach)
  })
})

describe('the single faults considered', () => {
  const idsOf = (views: readonly View[], kind: FaultKindName): string[] =>
    entriesFor(views)
      .filter((one) => one.kind === kind)
      .map(faultId)

  test.each<[FaultKindName, string]>([
    ['card.side', 'card.side=1.2 card.side=-1.2'],
    ['card.skew', 'card.skew=0.09 card.skew=0.12 card.skew=0.2 card.skew=0.4'],
    [
      'belt.timing',
      'belt.timing=0.9 belt.timing=-0.9 belt.timing=3 belt.timing=-3 belt.timing=8 belt.timing=-8',
    ],
    ['belt.slack', 'belt.slack=2 belt.slack=16'],
    ['retainer.worn', 'retainer.worn=6 retainer.worn=8 retainer.worn=12 retainer.worn=25'],
    ['gate.1.high', 'gate.1.high=0.5'],
    ['gate.1.low', 'gate.1.low=0.5'],
    ['sweep.worn', 'sweep.worn=0.8'],
    ['card.locked', 'card.locked'],
    ['strip.seized', Array.from({ length: 8 }, (_, n) => `strip.${n + 1}.seized`).join(' ')],
    ['pin.over', Array.from({ length: 24 }, (_, n) => `pin.${n + 1}.over`).join(' ')],
  ])('of %s are %s', (kind, ids) => {
    expect(idsOf([view], kind).join(' ')).toBe(ids)
  })

  test('of a slow strip and a stiff needle are several amounts for each', () => {
    expect(idsOf([view], 'strip.slow').filter((id) => id.startsWith('strip.2'))).toEqual([
      'strip.2.slow=150',
      'strip.2.slow',
      'strip.2.slow=1000',
    ])
    expect(idsOf([view], 'needle.stiff').slice(0, 2)).toEqual(['needle.L100.stiff=10', 'needle.L100.stiff'])
    expect(idsOf([view], 'needle.stiff').at(-1)).toBe('needle.R100.stiff')
  })

  test('of turns are those before the passes looked at', () => {
    expect(idsOf([view], 'turn.short')).toEqual(['turn.short.2'])
    expect(idsOf([{ ...view, pass: 4 }, view], 'turn.short')).toEqual([
      'turn.short.2',
      'turn.short.3',
      'turn.short.4',
    ])
    expect(idsOf([{ ...view, pass: 1 }], 'turn.short')).toEqual([])
    expect(idsOf([], 'turn.short')).toEqual([])
  })

  test('of the card are its own rows looked at, holes that can be blocked and card that can be torn', () => {
    const ids = entriesFor([view, { ...view, pass: 4 }])
      .filter(({ kind }) => kind === 'card.torn' || kind === 'card.blocked')
      .map(faultId)
    expect(ids).toHaveLength(48)
    for (const id of ids) {
      const [, , row, column] = id.split('.')
      expect(hasHole(view.card![Number(row) - 1]!, toColumn(Number(column)))).toBe(
        id.startsWith('card.blocked'),
      )
    }
    expect(new Set(ids.map((id) => id.split('.')[2]))).toEqual(new Set(['1', '2']))
    expect(
      entriesFor([{ ...view, shift: null, ...usualPlace }]).some(({ kind }) => kind === 'card.torn'),
    ).toBe(false)
    expect(entriesFor([{ ...view, card: null }]).some(({ kind }) => kind === 'card.torn')).toBe(false)
  })

  test('of the machine are all but a card’s holes and a turn', () => {
    const kinds = new Set(machineFaults().map(({ kind }) => kind))
    expect(kinds.has('turn.short') || kinds.has('card.torn') || kinds.has('card.blocked')).toBe(false)
    expect(kinds.has('pawl.skips') || kinds.has('pawl.jumps')).toBe(false)
    expect(kinds.size).toBe(30)
  })
})

describe('a view', () => {
  test('gives a card’s own fault to its row wherever the card lies, and to no other card', () => {
    const torn = faultOf('card.torn.2.9')
    const at = (shift: number | null): readonly (readonly number[])[] =>
      scenarioIn({ ...view, shift }, [torn]).faults.map((one) => one.at)
    expect([at(0), at(1), at(2)]).toEqual([[[2, 9]], [[1, 9]], [[3, 9]]])
    expect(at(null)).toEqual([])
    expect(scenarioIn({ ...view, card: null }, [torn]).faults).toEqual([])
    expect(scenarioIn({ ...view, shift: null, ...usualPlace }, [faultOf('card.locked')]).faults).toHaveLength(
      1,
    )
    expect(scenarioIn({ ...view, shift: null, ...usualPlace }, [faultOf('card.blocked.1.1')]).faults).toEqual(
      [],
    )
  })

  test('is of a machine as new, with all its needles, at the speed noted', () => {
    expect(scenarioIn({ ...view, speed: 321 }, [])).toEqual({
      card: view.card,
      faults: [],
      speed: 321,
      wear: 0,
      seed: 1,
      bed: { first: 0, last: 199 },
      columnOne: 100,
      own: {},
    })
    expect(scenarioIn({ ...view, columnOne: toNeedle(112) }, []).columnOne).toBe(112)
  })

  test('that does not follow the one before begins again from sound', () => {
    const passes = (...noted: readonly [number | null, 1 | -1][]): (number | null)[][] =>
      viewsOf(
        [1, 2, 3, 4],
        noted.map(([row, way]) => ({ row, way, speed: 500 })),
        usualPlace,
      ).map((one) => [one.pass, one.shift])
    expect(passes([1, 1], [2, -1], [3, 1])).toEqual([
      [1, 0],
      [2, 0],
      [3, 0],
    ])
    expect(passes([1, 1], [2, 1])).toEqual([
      [1, 0],
      [1, 1],
    ])
    expect(passes([1, 1], [1, 1])).toEqual([
      [1, 0],
      [1, 0],
    ])
    expect(passes([1, 1], [4, -1])).toEqual([
      [1, 0],
      [4, 0],
    ])
    expect(passes([4, -1], [1, 1])).toEqual([
      [4, 0],
      [5, 0],
    ])
    expect(passes([null, 1], [null, -1])).toEqual([
      [1, null],
      [2, null],
    ])
    expect(passes([null, -1], [1, 1])).toEqual([
      [2, null],
      [1, 0],
    ])
  })

  test('keeps the speed of its own pass', () => {
    const noted = [
      { row: 1, way: 1 as const, speed: 500 },
      { row: 2, way: -1 as const, speed: 900 },
    ]
    expect(viewsOf([1, 2], noted, usualPlace).map(({ speed }) => speed)).toEqual([500, 900])
  })

  test('of a card laid in further on reads the row that was noted first', () => {
    const [only] = viewsOf([1, 2, 3, 4], [{ row: 2, way: 1, speed: 500 }], usualPlace)
    expect(only).toMatchObject({ card: [2, 3, 4, 1], pass: 1, shift: 1, ...usualPlace })
  })
})

describe('a sound bed', () => {
  test('is computed once for a row, a way, a speed and a place of column 1', () => {
    const all = soundBeds()
    const beds = (row: number | null, way: 1 | -1, speed: number, place = usualPlace): SoundBed =>
      all(row, way, speed, place)
    expect(beds(5, 1, 500)).toBe(beds(5, 1, 500))
    expect(beds(5, 1, 500)).not.toBe(beds(5, -1, 500))
    expect(beds(5, 1, 500)).not.toBe(beds(5, 1, 501))
    expect(beds(5, 1, 500)).not.toBe(beds(6, 1, 500))
    expect(beds(null, 1, 500)).not.toBe(beds(0, 1, 500))
    expect(beds(5, 1, 500)).not.toBe(beds(5, 1, 500, { columnOne: toNeedle(101) }))
  })

  test('is that of the row which the pass reads, all selected without a card', () => {
    const beds = soundBeds()
    expect([1, 2, 3, 4].map((pass) => bitsDue({ ...view, pass }))).toEqual([0xf00000, 0, 0xffffff, 0xf00000])
    expect(bitsDue({ ...view, card: null })).toBeNull()
    const sum = (one: View): number => soundIn(beds, one).codes.reduce((all, code) => all + code, 0)
    expect(sum({ ...view, card: null })).toBe(0)
    expect(sum({ ...view, pass: 3 })).toBe(0)
    expect(sum({ ...view, pass: 2 })).toBe(200)
    expect(soundIn(beds, { ...view, pass: 3 }).held.every((held) => held === 1)).toBe(true)
    expect(soundIn(beds, view).held.some((held) => held === 1)).toBe(false)
  })
})

describe('what a fault shows', () => {
  const keysOf = (...ids: string[]): string[] =>
    dictionaryOf([view, { ...view, pass: 3 }], ids.map(faultOf)).entries.map(({ key }) => key)

  test('has one key where it is the same, and another where it differs', () => {
    const [low, dead, other, none] = keysOf('pin.5.low', 'rocker.5.dead', 'pin.6.low', 'belt.slack=0.2')
    expect(low).toBe(dead)
    expect(new Set([low, other, none]).size).toBe(3)
  })

  test('is told apart by its needles, how they come and with what chance', () => {
    const one = { changed: Uint16Array.of(4, 9), chance: 0 }
    const keys = [
      [one, one],
      [one],
      [{ ...one, chance: 0.5 }],
      [{ changed: new Uint16Array(0), chance: 0.5 }],
      [{ changed: new Uint16Array(0), chance: 0 }],
      [{ changed: Uint16Array.of(49), chance: 0 }],
    ].map(signatureOf)
    expect(new Set(keys).size).toBe(6)
    expect(keys[0]).toBe('4,9 4,9')
    expect(keys[4]).toBe('')
  })

  test('by a worn retainer bar is more at more speed, half where the median is just too slow', () => {
    const chances = [100, 500, 1000, 2000].map((speed) => lateChance(6, speed))
    expect(chances).toEqual([...chances].sort((a, b) => a - b))
    expect(lateChance(20, 500)).toBeGreaterThan(lateChance(10, 500))
    // 1.6 needles of 4.5 mm at 500 mm/s are 14.4 ms; a butt of 11.96 ms comes to the gate's edge in that time.
    expect(lateChance(14.4 / Math.log(1.5 / 0.45), 500)).toBeCloseTo(0.5, 12)
    expect(lateChance((14.4 / Math.log(1.5 / 0.45)) * Math.exp(0.5), 500)).toBeCloseTo(0.841344746, 8)
  })
})

describe('the views that part all that can be parted', () => {
  test('run a card of an odd number of rows through twice, begin it slowly and fast, and leave it out', () => {
    const [first] = everyView
    const rows = first!.card!.length
    expect(rows % 2).toBe(1)
    const count = (speed: number, isCard = true): number =>
      everyView.filter((one) => one.speed === speed && (one.card !== null) === isCard).length
    expect([count(500), count(300), count(900), count(500, false)]).toEqual([2 * rows, 9, 9, 2])
    expect(everyView.filter(({ card }) => card === null).map(({ pass }) => pass)).toEqual([1, 2])
    const upTo = (last: number): number[] => Array.from({ length: last }, (_, n) => n + 1)
    expect(everyView.map(({ pass }) => pass)).toEqual([2 * rows, 9, 9, 2].flatMap(upTo))
  })

  test('begin with half of the columns', () => {
    expect(everyView[0]!.card![0]).toBe(0x000fff)
  })

  test('hold all eight ways of holes in the columns of each strip, and each column alone', () => {
    const card = everyView[0]!.card!
    for (let strip = 1; strip <= 8; strip++) {
      const ways = card.map((row) =>
        [0, 8, 16].map((on) => (hasHole(row, toColumn(strip + on)) ? 'o' : '.')).join(''),
      )
      expect(new Set(ways.slice(1, 9)).size).toBe(8)
    }
    expect(card.slice(1, 9)[0]).toBe(0)
    expect(card.slice(9)).toEqual(Array.from({ length: 24 }, (_, n) => 2 ** (23 - n)))
  })
})
