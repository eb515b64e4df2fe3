import { describe, expect, test } from 'vitest'
import { observationOf } from '@/find/evidence.ts'
import { codes, packChange } from '@/find/packed-change.ts'
import { settingOf } from '@/find/shown.ts'
import { soundBeds } from '@/find/sound.ts'
import { slipsOrMore, unknownLog, worstColumn } from '@/find/unknown.ts'
import { columnOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'

describe('something unknown', () => {
  test.each([
    [0, 10],
    [3, 10],
    [10, 10],
    [60, 200],
  ])(
    'with %i needles against it of %i is as likely as the mean over rates from a tenth to nearly one',
    (against, looked) => {
      let sum = 0
      for (let percent = 10; percent < 100; percent++)
        sum += (1 - percent / 100) ** (looked - against) * (percent / 200) ** against
      const fit = { departures: 0, explained: 0, against, looked }
      expect(unknownLog(fit)).toBeCloseTo(Math.log(sum / 90), 9)
    },
  )
})

describe('the chance of so many slips', () => {
  test('of none or more is one, and of more than there are needles none', () => {
    expect(slipsOrMore(0, 8, 0.01)).toBeCloseTo(1, 12)
    expect(slipsOrMore(9, 8, 0.01)).toBe(0)
  })

  test('is exact both where it is nearly one and where it is next to nothing', () => {
    expect(slipsOrMore(1, 200, 0.5)).toBeCloseTo(1, 12)
    expect(slipsOrMore(8, 8, 0.01) / 1e-16).toBeCloseTo(1, 9)
    expect(slipsOrMore(1, 10, 0.01)).toBeCloseTo(1 - 0.99 ** 10, 12)
    expect(slipsOrMore(1, 8, 0.5)).toBeCloseTo(255 / 256, 12)
    expect(slipsOrMore(90, 200, 0.5) + slipsOrMore(111, 200, 0.5)).toBeCloseTo(1, 9)
  })
})

describe('the worst column', () => {
  const setting = settingOf({ card: [0xffffff], pass: 1, speed: 500, shift: 0, ...usualPlace }, soundBeds())
  const none = { changed: new Uint16Array(0), chance: 0 }
  const own = (column: number): number[] =>
    Array.from({ length: 200 }, (_, needle) => needle).filter(
      (needle) => columnOfNeedle(toNeedle(needle), usualPlace) === column,
    )
  /** Every needle selected but so many of these columns' needles. */
  const bedWith = (missed: Readonly<Record<number, number>>): string => {
    const letters = new Array<string>(200).fill('s')
    for (const [column, count] of Object.entries(missed))
      for (const needle of own(Number(column)).slice(0, count)) letters[needle] = 'p'
    return letters.join('')
  }
  const observations = (...beds: string[]) => beds.map((bed) => observationOf(setting, bed, 0.01))

  test('is the one with most needles against a prediction', () => {
    expect(worstColumn(observations(bedWith({ 3: 2, 7: 5, 24: 4 })), [none], usualPlace).column).toBe(7)
    expect(worstColumn(observations(bedWith({ 24: 1 })), [none], usualPlace).column).toBe(24)
    expect(
      worstColumn(observations(bedWith({ 1: 1 }), bedWith({ 1: 1, 5: 1 })), [none, none], usualPlace).column,
    ).toBe(1)
  })

  test('is none that the prediction explains', () => {
    const missed = {
      changed: Uint16Array.from(own(7), (needle) => packChange(needle, codes.plain)),
      chance: 0,
    }
    expect(worstColumn(observations(bedWith({ 3: 2, 7: 8 })), [missed], usualPlace).column).toBe(3)
  })

  test('is credible while slips may explain it: up to three of eight needles at one in a hundred', () => {
    const isCredible = (count: number): boolean =>
      worstColumn(observations(bedWith({ 11: count })), [none], usualPlace).isCredible
    expect([0, 1, 2, 3].map(isCredible)).toEqual([true, true, true, true])
    // Four of eight: 70 times one in a hundred to the fourth, less than one in a hundred thousand.
    expect([4, 8].map(isCredible)).toEqual([false, false])
  })

  test('is weighed by the needles that were looked at', () => {
    const looked = Array.from({ length: 12 }, () => bedWith({ 11: 0 }))
    const some = observations(bedWith({ 11: 4 }), ...looked)
    expect(
      worstColumn(
        some,
        some.map(() => none),
        usualPlace,
      ).isCredible,
    ).toBe(true)
    const few = bedWith({ 11: 2 }).replace(/s/g, '?')
    expect(worstColumn(observations(few), [none], usualPlace)).toEqual({ column: 11, isCredible: true })
    const three = bedWith({ 11: 3 }).replace(/s/g, '?')
    expect(worstColumn(observations(three), [none], usualPlace)).toEqual({ column: 11, isCredible: false })
  })
})
