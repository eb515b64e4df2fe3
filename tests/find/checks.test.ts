import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { viewOfCheck } from '@/find/check-views.ts'
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

describe('a look at one more pass', () => {
  test.each<[PassCheckId, View]>([
    ['next-row', { card, pass: 3, speed: 700, shift: 0, ...usualPlace }],
    ['row-fast', { card, pass: 2, speed: 900, shift: 0, ...usualPlace }],
    ['row-slow', { card, pass: 2, speed: 100, shift: 0, ...usualPlace }],
    ['holes-right', { card: [0xffffff], pass: 1, speed: 500, shift: null, ...usualPlace }],
    ['holes-left', { card: [0xffffff], pass: 2, speed: 500, shift: null, ...usualPlace }],
    ['blank-right', { card: [0], pass: 1, speed: 500, shift: null, ...usualPlace }],
    ['blank-fast', { card: [0], pass: 1, speed: 900, shift: null, ...usualPlace }],
    ['no-card', { card: null, pass: 1, speed: 500, shift: null, ...usualPlace }],
  ])('%s after rows 1 and 2 is this view', (id, view) => {
    expect(viewOfCheck(id, known)).toEqual(view)
  })

  test.each<PassCheckId>(['next-row', 'row-fast', 'row-slow'])(
    '%s needs a card and a pass before it',
    (id) => {
      expect(viewOfCheck(id, nothing)).toBeNull()
      expect(viewOfCheck(id, noCard)).toBeNull()
    },
  )

  test('opens nothing, can break nothing, and is made with fingers clear of the carriage', () => {
    const looks = checks.filter(({ kind }) => kind === 'pass')
    expect(looks).toHaveLength(8)
    for (const { opened, risk, cautions } of looks) {
      expect([opened, risk]).toEqual(['nothing', 1])
      expect(cautions).toEqual(['fingers'])
    }
  })

  test('takes least where nothing is changed, and most where the card is', () => {
    const minutes = (...ids: CheckId[]) => ids.map((id) => checkOf(id).minutes)
    expect(minutes('next-row')).toEqual([0.5])
    expect(minutes('row-fast', 'row-slow', 'no-card')).toEqual([1, 1, 1])
    expect(minutes('holes-right', 'holes-left', 'blank-right', 'blank-fast')).toEqual([2, 2, 2, 2])
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
