import { describe, expect, test } from 'vitest'
import { dictionaryOf } from '@/find/dictionary.ts'
import { type Observation, observationOf } from '@/find/evidence.ts'
import { codes, packChange } from '@/find/packed-change.ts'
import { type Pair, stripPairs, widePairs } from '@/find/pairs.ts'
import { bedsOf } from '@/find/proof.ts'
import type { Setting } from '@/find/shown.ts'
import type { FaultClass } from '@/find/fault-class.ts'
import { viewsOf } from '@/find/view.ts'
import { toNeedle, toStrip } from '@/mechanism/indices.ts'
import { faultOf } from '@/mechanism/fault.ts'
import { stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { firstPasses } from './make.ts'

const views = viewsOf([0xffffff], firstPasses(1, 1, 500), usualPlace)

interface Made {
  readonly faultClasses: readonly FaultClass[]
  readonly settings: readonly Setting[]
  readonly observations: readonly Observation[]
}

/** Units of one fault each, with gains made up by hand; on the bed that `broken` leave. */
const made = (gains: Readonly<Record<string, number>>, ...broken: string[]): Made => {
  const dictionary = dictionaryOf(views, Object.keys(gains).map(faultOf))
  const beds = bedsOf(dictionary, broken.map(faultOf), 1)
  return {
    faultClasses: dictionary.entries.map((entry): FaultClass => ({
      entries: [entry],
      weight: 1,
      shown: entry.shown,
      key: entry.key,
      gain: gains[entry.id]!,
    })),
    settings: dictionary.settings,
    observations: dictionary.settings.map((setting, n) => observationOf(setting, beds[n]!, 0.01)),
  }
}
const namesOf = (pairs: readonly Pair[]): string[] =>
  pairs.flatMap(({ ways }) => ways.map((way) => way.map(({ id }) => id).join(' + ')))
const onStrip = ({ faultClasses, settings, observations }: Made, strip: number): Pair[] =>
  stripPairs(faultClasses, toStrip(strip), { settings, place: usualPlace }, observations)
const onBed = ({ faultClasses, settings, observations }: Made): Pair[] =>
  widePairs(faultClasses, settings, observations)

/** So little that whatever a pair shows is better. */
const low = -1e4

describe('two faults of one strip', () => {
  test('are worked out on its needles, with what they show together', () => {
    const gone = made({ 'strip.3.seized': 0, 'needle.R11.gone': 0 }, 'strip.3.seized', 'needle.R11.gone')
    const [both] = onStrip(gone, 3)
    const needles = Array.from({ length: 200 }, (_, n) => n).filter(
      (n) => stripOfNeedle(toNeedle(n), usualPlace) === 3,
    )
    expect([...both!.shown[0]!.changed]).toEqual(
      needles.map((n) => packChange(n, n === 110 ? codes.unmoved : codes.plain)),
    )
    expect(both!.gain).toBeCloseTo(25 * (Math.log(0.99) - Math.log(0.005)), 9)
  })

  test('must explain more by 1 than the better of them', () => {
    const whole = 25 * (Math.log(0.99) - Math.log(0.005))
    const with2 = (one: number, other: number): string[] =>
      namesOf(
        onStrip(
          made({ 'strip.3.seized': one, 'needle.R11.gone': other }, 'strip.3.seized', 'needle.R11.gone'),
          3,
        ),
      )
    expect(with2(whole - 1.01, 0)).toHaveLength(1)
    expect(with2(whole - 0.99, 0)).toEqual([])
    expect(with2(0, whole - 0.99)).toEqual([])
  })

  test('are of that strip, and meet there', () => {
    const gains = { 'strip.3.seized': low, 'pin.11.low': low, 'strip.4.seized': low, 'pin.4.low': low }
    expect(namesOf(onStrip(made(gains), 3))).toEqual(['strip.3.seized + pin.11.low'])
    expect(namesOf(onStrip(made(gains), 4))).toEqual(['strip.4.seized + pin.4.low'])
    const needles = { 'needle.R3.gone': low, 'needle.R11.gone': low, 'catch.R3.broken': low }
    expect(namesOf(onStrip(made(needles), 3))).toEqual(['needle.R3.gone + catch.R3.broken'])
  })

  test('are none that can’t be together', () => {
    expect(namesOf(onStrip(made({ 'pin.3.low': low, 'pin.3.high': low }), 3))).toEqual([])
  })

  test('are told apart where one of a class’s faults can’t be with the other and another can', () => {
    const { faultClasses, settings, observations } = made({
      'pin.3.low': low,
      'rocker.3.dead': low,
      'pin.3.high': low,
    })
    const [pin, rocker, high] = faultClasses
    const faultClass = { ...pin!, entries: [...pin!.entries, ...rocker!.entries] }
    const [pair] = stripPairs([faultClass, high!], toStrip(3), { settings, place: usualPlace }, observations)
    expect(namesOf([pair!])).toEqual(['rocker.3.dead + pin.3.high'])
  })

  test('are one of the ten likeliest with each other, with those that reach the strip, and with needles that explain something', () => {
    const leaders = [
      ...['strip.3.slow=1000', 'pin.3.low', 'pin.11.low', 'pin.19.low', 'rocker.3.dead'],
      ...['rocker.11.dead', 'rocker.19.dead', 'card.blocked.1.3', 'card.blocked.1.11', 'card.blocked.1.19'],
    ]
    const others = ['pin.3.over', 'needle.R3.gone', 'needle.R11.gone']
    const gains = [...leaders, ...others].map((id, n): [string, number] => [id, -500 - n])
    const needle = 'needle.R19.gone'
    const { faultClasses, settings, observations } = made(
      Object.fromEntries([...gains.toReversed(), [needle, 0.5]]),
      'strip.3.seized',
      needle,
    )
    // It explains something, but is the rarest by far.
    const rare = faultClasses.map((faultClass) =>
      faultClass.gain > 0 ? { ...faultClass, weight: Math.exp(-600) } : faultClass,
    )
    const expected = leaders.flatMap((one, n) =>
      [...leaders.slice(n + 1), 'pin.3.over', needle].map((other) => `${one} + ${other}`),
    )
    expect(
      namesOf(stripPairs(rare, toStrip(3), { settings, place: usualPlace }, observations)).toSorted(),
    ).toEqual(expected.toSorted())
  })
})

describe('two faults of which one changes the whole bed or the row read', () => {
  test('are worked out on all needles', () => {
    const faults = made({ 'pawl.right': low, 'strip.3.seized': low }, 'strip.3.seized')
    const [pair] = onBed(faults)
    expect(namesOf([pair!])).toEqual(['pawl.right + strip.3.seized'])
    expect(pair!.shown[0]!.changed).toHaveLength(25)
  })

  test('are one of the six likeliest with each other, with the other wide ones, and with those of a strip, the card apart', () => {
    const leaders = [
      ...['card.reversed', 'pawl.right', 'belt.timing=8', 'belt.slack=2', 'sweep.worn=0.8', 'gate.1.low=0.5'],
    ]
    const wide = ['card.side=1.2', 'card.skew=0.2']
    const narrow = ['strip.3.seized', 'pin.5.low', 'card.blocked.1.7', 'needle.R3.gone', 'retainer.worn=12']
    const gains = [...leaders, ...wide, ...narrow].map((id, n): [string, number] => [id, low - n])
    const names = namesOf(onBed(made(Object.fromEntries(gains.toReversed()))))
    const tried = [...wide, 'strip.3.seized', 'pin.5.low']
    const expected = leaders.flatMap((one, n) =>
      [...leaders.slice(n + 1), ...tried].map((other) => `${one} + ${other}`),
    )
    expect(names.toSorted()).toEqual(expected.toSorted())
  })
})
