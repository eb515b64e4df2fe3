import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { byHandOf } from '@/find/by-hand.ts'
import { decide } from '@/find/decide.ts'
import {
  commonShare,
  type Experience,
  experienceFactor,
  experienceFrom,
  experienceTable,
  findsOf,
  practiceFinds,
} from '@/find/experience.ts'
import { howCommon } from '@/find/how-common.ts'
import { infer, inferWhole } from '@/find/infer.ts'
import type { Cause, Place } from '@/find/place.ts'
import type { Query } from '@/find/query.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'

const isKind = (kind: string): kind is FaultKindName => kind in faultKinds
const kinds = Object.keys(howCommon).filter(isKind)
const counts = fc.dictionary(fc.constantFrom(...kinds), fc.integer({ min: 0, max: 200 }))

/** A full row of which every needle came out plain. */
const dark = (experience?: Experience): Query => ({
  card: [0xffffff],
  passes: [{ card: [0xffffff], row: 1, way: 1, speed: 500, needles: 'p'.repeat(200) }],
  slip: 0.005,
  checks: [],
  ...usualPlace,
  ...(experience ? { experience } : {}),
})

/** A full row in which one needle only did not come. */
const oneMissing = (experience?: Experience): Query => ({
  ...dark(experience),
  passes: ['right', 'left'].map((way, n) => ({
    card: [0xffffff],
    row: 1,
    way: way === 'right' ? 1 : -1,
    speed: 500,
    pass: n + 1,
    needles: `${'s'.repeat(110)}p${'s'.repeat(89)}`,
  })),
})

const wayOf = (query: Query, place: Place, cause: Cause): number =>
  infer(query)
    .places.find((one) => one.place === place)
    ?.ways.find(({ causes }) => causes.includes(cause))?.probability ?? 0

describe('what a repairer has seen herself', { timeout: 300_000 }, () => {
  test('gives each kind the mean of a Dirichlet distribution, whose means add up to 1', () => {
    fc.assert(
      fc.property(counts, (experience) => {
        const table = experienceTable(experience)
        const finds = kinds.reduce((sum, kind) => sum + (experience[kind] ?? 0), 0)
        expect(findsOf(experience)).toBe(finds)
        expect(table.map(({ kind }) => kind).sort()).toEqual([...kinds].sort())
        for (const { kind, share, common } of table) {
          const prior = practiceFinds * commonShare(kind)
          expect(common).toBe(commonShare(kind))
          expect(share).toBeCloseTo((prior + (experience[kind] ?? 0)) / (practiceFinds + finds), 12)
        }
        expect(table.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
      }),
    )
  })

  test('weighs as much as common practice where there are as many finds of hers', () => {
    const only: Experience = { 'belt.timing': practiceFinds }
    const [first] = experienceTable(only)
    expect(first?.kind).toBe('belt.timing')
    expect(first?.share).toBeCloseTo((1 + commonShare('belt.timing')) / 2, 12)
    expect(experienceFactor(only, 'pin.low')).toBe(0.5)
  })

  test('counts a kind once a machine, however many parts had it', () => {
    expect(experienceFrom([['strip.seized', 'strip.seized', 'needle.bent'], ['strip.seized'], []])).toEqual({
      'strip.seized': 2,
      'needle.bent': 1,
    })
  })

  test('changes no answer in any bit where there is none', () => {
    for (const kind of kinds) expect(experienceFactor({}, kind)).toBe(1)
    for (const query of [dark, oneMissing]) {
      const plain = inferWhole(query())
      const none = inferWhole(query({}))
      expect(none.finding).toEqual(plain.finding)
      expect(decide(query({}), none, 1)).toEqual(decide(query(), plain, 1))
      expect(infer(query({ 'needle.bent': 0 }))).toEqual(plain.finding)
    }
  })

  test('multiplies the chance of each kind by how much commoner it was', () => {
    const seen: Experience = { 'strip.seized': 5, 'belt.off': 12, 'carriage.plain': 3, 'rocker.dead': 4 }
    const of = (kind: FaultKindName): number => experienceFactor(seen, kind)
    const { strips, columns, causes } = byHandOf([], [], seen)
    expect([strips[2]?.right, strips[2]?.seized, strips[2]?.slow]).toEqual([
      1,
      of('strip.seized'),
      of('strip.slow'),
    ])
    expect(causes(['belt.off'], ['belt.off'])).toBe(of('belt.off'))
    expect(causes(['card.out'], ['card.out'])).toBe(1)
    // What no look distinguishes has the mean of its kinds, by how common they are.
    const [low, dead] = [howCommon['pin.low'], howCommon['rocker.dead']]
    expect(columns[0]?.dead).toBeCloseTo((low * of('pin.low') + dead * of('rocker.dead')) / (low + dead), 12)
  })

  test('moves what is likelier of two that leave the same bed', () => {
    const seen: Experience = { 'belt.off': 12, 'carriage.plain': 3 }
    const ratio = (query: Query): number =>
      wayOf(query, 'belt', 'belt.off') / wayOf(query, 'carriage', 'carriage.plain')
    expect(ratio(dark())).toBeLessThan(1)
    expect(ratio(dark(seen))).toBeGreaterThan(3 * ratio(dark()))
  })

  test('parts what no look distinguishes by how common each is at her bench', () => {
    const seen: Experience = { 'catch.broken': 10 }
    const [broken, bent] = (['catch.R11.broken', 'needle.R11.bent'] as const).map((cause) =>
      wayOf(oneMissing(seen), 'needle.R11', cause),
    )
    expect(wayOf(oneMissing(), 'needle.R11', 'needle.R11.bent')).toBeGreaterThan(0.8)
    expect(broken! / bent!).toBeCloseTo(
      (howCommon['catch.broken'] * experienceFactor(seen, 'catch.broken')) /
        (howCommon['needle.bent'] * experienceFactor(seen, 'needle.bent')),
      6,
    )
  })

  test('changes which work is most worth its time', () => {
    const chanceOf = (query: Query, repair: string): number =>
      decide(query, inferWhole(query), 1).ways.find(
        ({ works }) => works.length === 1 && works[0]?.repair === repair,
      )?.chance ?? 0
    expect(chanceOf(oneMissing({ 'catch.broken': 30 }), 'catches')).toBeGreaterThan(
      1.4 * chanceOf(oneMissing(), 'catches'),
    )
  })
})
