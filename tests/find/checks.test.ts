import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import {
  type CautionId,
  type CheckId,
  checkOf,
  checks,
  isCheckId,
  partChecks,
  type PassCheckId,
} from '@/find/checks.ts'
import type { CardAndPasses, NotedPass } from '@/find/query.ts'
import { passesMinutes, passMinutes } from '@/find/pass-time.ts'
import { possiblePasses } from '@/find/possible-looks.ts'
import type { View } from '@/find/view.ts'
import type { FaultKindName } from '@/mechanism/fault-kinds.ts'

const shows = (kind: FaultKindName): CheckId[] =>
  partChecks.filter((one) => one.shows.includes(kind)).map(({ id }) => id)

const needles = '?'.repeat(200)
const card = [1, 2, 3, 4]
const known: CardAndPasses = {
  card,
  passes: [
    { card, row: 1, way: 1, speed: 500, needles },
    { card, row: 2, way: -1, speed: 700, needles },
  ],
  ...usualPlace,
}
const nothing: CardAndPasses = { card, passes: [], ...usualPlace }
const noCard: CardAndPasses = {
  card: null,
  passes: [{ card: null, row: null, way: 1, speed: 500, needles }],
  ...usualPlace,
}

const viewsFor = (id: PassCheckId, query = known): View[] =>
  possiblePasses(query).flatMap(({ check, view }) => (check === id ? [view] : []))

const minutesFor = (id: PassCheckId, query = known): number[] => [
  ...new Set(possiblePasses(query).flatMap(({ check, minutes }) => (check === id ? [minutes] : []))),
]

const last = { ...usualPlace, card, shift: 0 }
const plain = { ...usualPlace, shift: null }

describe('a look at one more pass', () => {
  test.each<[PassCheckId, View]>([
    ['next-row', { ...last, pass: 3, speed: 500 }],
    ['row-again', { ...last, pass: 2, speed: 700 }],
    ['row-fast', { ...last, pass: 2, speed: 900 }],
    ['row-slow', { ...last, pass: 2, speed: 90 }],
    ['other-row', { ...last, pass: 1, speed: 500 }],
    ['holes-right', { ...plain, card: [0xffffff], pass: 1, speed: 500 }],
    ['holes-left', { ...plain, card: [0xffffff], pass: 2, speed: 500 }],
    ['blank-right', { ...plain, card: [0], pass: 1, speed: 500 }],
    ['blank-left', { ...plain, card: [0], pass: 2, speed: 500 }],
    ['no-card', { ...plain, card: null, pass: 1, speed: 500 }],
  ])('%s after rows 1 and 2 is this view first', (id, view) => {
    expect(viewsFor(id)[0]).toEqual(view)
  })

  test('is any other row of the card, at every speed; no two rows with the same holes', () => {
    expect(viewsFor('other-row').map(({ pass, speed }) => [pass, speed])).toEqual(
      [1, 4].flatMap((pass) => [500, 90, 900].map((speed) => [pass, speed])),
    )
    const same = { ...known, card: [1, 2, 3, 1, 3, 2, 1] }
    const passes = same.passes.map((pass) => ({ ...pass, card: same.card }))
    expect(viewsFor('other-row', { ...same, passes }).map(({ pass }) => pass)).toEqual([
      1, 1, 1, 5, 5, 5, 6, 6, 6,
    ])
  })

  test('is slower or faster than the last only where the last was not', () => {
    const at = (speed: number) => ({ ...known, passes: known.passes.map((pass) => ({ ...pass, speed })) })
    expect([viewsFor('row-slow', at(90)), viewsFor('row-fast', at(900))]).toEqual([[], []])
    expect(viewsFor('row-fast', at(90))).toHaveLength(1)
  })

  test.each<PassCheckId>(['next-row', 'row-again', 'row-fast', 'row-slow'])(
    '%s needs a card and a pass before it',
    (id) => {
      expect(viewsFor(id, nothing)).toEqual([])
      expect(viewsFor(id, noCard)).toEqual([])
    },
  )

  test('takes a minute more for each card that must be put in, and none for one that is in', () => {
    const holes: NotedPass = { card: [0xffffff], row: 1, way: 1, speed: 500, needles }
    const after = { ...known, passes: [...known.passes, holes] }
    expect([minutesFor('next-row'), minutesFor('holes-left'), minutesFor('blank-left')]).toEqual([
      [0.5],
      [2],
      [2],
    ])
    expect([minutesFor('next-row', after), minutesFor('holes-left', after)]).toEqual([[1.5], [1]])
    expect([minutesFor('blank-left', after), minutesFor('no-card', after)]).toEqual([[2], [1]])
  })

  test('opens nothing, can break nothing, and is made with fingers clear of the carriage', () => {
    const looks = checks.filter(({ kind }) => kind === 'pass')
    expect(looks).toHaveLength(10)
    for (const { opened, risk, cautions } of looks) {
      expect([opened, risk]).toEqual(['nothing', 1])
      expect(cautions).toEqual(['fingers'])
    }
  })

  test('takes least where nothing is changed, and most where the card is', () => {
    const minutes = (...ids: CheckId[]) => ids.map((id) => checkOf(id).minutes)
    expect(minutes('next-row')).toEqual([0.5])
    expect(minutes('row-again', 'row-fast', 'row-slow', 'other-row', 'no-card')).toEqual([1, 1, 1, 1, 1])
    expect(minutes('holes-right', 'holes-left', 'blank-right', 'blank-left')).toEqual([2, 2, 2, 2])
  })
})

describe('a look at the parts', () => {
  test.each<[FaultKindName, CheckId[]]>([
    ['card.torn', ['card']],
    ['card.blocked', ['card']],
    ['card.side', ['card']],
    ['card.skew', ['card']],
    ['card.reversed', ['card']],
    ['carriage.plain', ['settings']],
    ['belt.off', ['settings', 'belt', 'cover']],
    ['turn.twice', ['settings', 'stepping']],
    ['card.locked', ['settings', 'stepping']],
    ['pawl.right', ['stepping', 'cover', 'reader']],
    ['pawl.left', ['stepping', 'cover', 'reader']],
    ['pawl.double', ['stepping', 'cover', 'reader']],
    ['pawl.skips', ['stepping']],
    ['pawl.jumps', ['stepping']],
    ['pin.sticky', ['pins', 'reader']],
    ['pivots.loose', ['reader']],
    ['turn.short', []],
    ['pin.low', ['pins', 'reader']],
    ['pin.high', ['pins', 'reader']],
    ['pin.over', ['pins', 'reader']],
    ['sweep.worn', ['cover', 'reader']],
    ['belt.timing', ['belt', 'cover']],
    ['belt.slack', ['belt', 'cover']],
    ['rocker.dead', ['reader']],
    ['rocker.worn', ['reader']],
    ['strip.seized', ['strips', 'cover']],
    ['strip.over', ['strips', 'cover']],
    ['strip.slow', ['strips', 'cover']],
    ['catch.broken', ['cover']],
    ['needle.bent', ['swap-needle']],
    ['needle.gone', ['broken-piece', 'needle', 'swap-needle']],
    ['needle.stiff', ['needle', 'swap-needle']],
    ['presser.right.worn', ['carriage']],
    ['presser.left.worn', ['carriage']],
    ['retainer.worn', ['retainer']],
    ['gate.1.low', ['carriage']],
    ['gate.1.high', ['carriage']],
  ])('finds %s by %j', (kind, ids) => {
    expect(shows(kind)).toEqual(ids)
  })

  test.each<[CautionId, CheckId[]]>([
    ['unplug', ['belt', 'strips', 'carriage', 'cover', 'reader']],
    ['springs', ['cover', 'reader']],
    ['old-plastic', ['cover', 'reader']],
    ['notes', ['belt', 'cover', 'reader']],
    ['reader', ['reader']],
    ['force', ['stepping', 'broken-piece', 'pins', 'strips']],
    ['hooks', ['retainer', 'broken-piece', 'needle', 'swap-needle', 'strips', 'carriage']],
    ['dust', ['retainer', 'swap-needle']],
    ['lifting', ['carriage']],
    ['fingers', ['stepping', 'retainer', 'needle', 'pins', 'belt', 'cover']],
  ])('warns of “%s” at %j', (caution, ids) => {
    expect(partChecks.filter(({ cautions }) => cautions.includes(caution)).map(({ id }) => id)).toEqual(ids)
  })

  test('opens the machine for strips, which one cover hides, the covers and the card reader only', () => {
    const opening = checks.filter(({ opened }) => opened !== 'nothing')
    expect(opening.map(({ id, opened }) => [id, opened])).toEqual([
      ['strips', 'one-cover'],
      ['cover', 'covers'],
      ['reader', 'reader'],
    ])
  })

  test('is the dearer and the riskier the further it goes in', () => {
    const minutes = (['card', 'pins', 'strips', 'carriage', 'cover', 'reader'] as const).map(
      (id) => checkOf(id).minutes,
    )
    expect(minutes).toEqual([...new Set(minutes)].sort((one, other) => one - other))
    expect(checkOf('retainer').minutes).toBe(3)
    expect(checkOf('reader')).toMatchObject({ minutes: 90, mostMinutes: 120 })
    expect(checkOf('card')).toMatchObject({ risk: 1, cautions: [] })
  })
})

describe('the id of a check', () => {
  test('is known from any other text', () => {
    for (const { id } of checks) expect(isCheckId(id)).toBe(true)
    for (const text of ['', 'reading', 'toString']) expect(isCheckId(text)).toBe(false)
    expect(() => checkOf('toString' as CheckId)).toThrow(RangeError)
  })
})

describe('the time that passes take', () => {
  test.each([
    [{ card: null, speed: 500 }, 1],
    [{ card: null, speed: 1500 }, 1],
    [{ card: [0], speed: 500 }, 2],
    [{ card, speed: 500 }, 0.5],
    [{ card: [...card], speed: 1500 }, 1],
  ])('%j: %d minutes', (pass, minutes) => {
    expect(passMinutes(pass, card)).toBe(minutes)
  })

  test('adds up', () => {
    const own: NotedPass = { card, row: 1, way: 1, speed: 500, needles }
    expect(passesMinutes({ card, passes: [own, own, { ...own, card: null }] })).toBe(2)
    expect(passesMinutes({ card, passes: [] })).toBe(0)
  })
})
