import { describe, expect, test } from 'vitest'
import { readerChances, readers, retainerChances, retainerMs } from '@/find/chances.ts'
import { oils } from '@/find/finding.ts'
import { infer } from '@/find/infer.ts'
import { viewsOfQuery } from '@/find/query.ts'
import { scenarioIn } from '@/find/view.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type Needle, toColumn } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { needleName } from '@/mechanism/bed.ts'
import { startRun } from '@/mechanism/pass.ts'
import {
  askedOf,
  columnChoices,
  type InLooks,
  needlesOf,
  needleSum,
  shareLate,
} from './column-enumeration.ts'
import { queryOf, type ReferenceMachine, referenceMachines } from './reference.ts'

/*
 * Where the search and the second computation differ, which of the two is right: each shown without either, by running the
 * model or by adding up every combination one by one.
 */

type Places = readonly { readonly place: string; readonly wrong: number }[]

const wrongAt = (places: Places, place: string): number =>
  places.find((one) => one.place === place)?.wrong ?? 0

/** The chance of a worn bar before the notes, under an answer's own oil. */
const barBefore = ({ answer: { oil } }: ReferenceMachine): number =>
  oils.reduce((sum, name) => sum + oil[name] * retainerChances[name], 0)

describe('a worn bar where the state of the bed hides it', { timeout: 60_000 }, () => {
  test.each([
    [8, 'gate.1.high=0.5', 'gate'],
    [28, 'carriage.plain', 'carriage'],
  ] as const)('is as likely as before, on machine %d with %s', (number, id, place) => {
    const machine = at(referenceMachines, number)
    const query = queryOf(machine)
    // With that fault, every bar leaves every needle of every look as a sound bar does: the notes say nothing of it.
    for (const view of viewsOfQuery(query)) {
      const came = (bar: readonly string[], seed: number): string =>
        startRun({ ...scenarioIn(view, [id, ...bar].map(faultOf)), seed })
          .passOf(view.pass)
          .came.join()
      const sound = came([], 1)
      for (const ms of retainerMs)
        for (const seed of [1, 2, 3]) expect(came([`retainer.worn=${ms}`], seed)).toBe(sound)
    }
    // So a worn bar has at least that fault's chance times its own: by the second computation's own figures more than it says.
    const least = wrongAt(machine.answer.places, place) * barBefore(machine)
    expect(wrongAt(machine.answer.places, 'retainer')).toBeLessThan(least - 0.02)
    const { places } = infer(query)
    expect(wrongAt(places, 'retainer')).toBeGreaterThan(wrongAt(places, place) * barBefore(machine) - 0.005)
  })
})

test('Needles of a dead column under a worn bar are no likelier wrong than before, on machine 13', () => {
  const machine = at(referenceMachines, 13)
  const query = queryOf(machine)
  const column = toColumn(12)
  const needles = needlesOf(column)
  const { places } = infer(query)
  expect(places.find(({ place }) => place === 'retainer')!.ways[0]!.causes).toEqual(['retainer.worn=9'])
  for (const wear of [0, 0.3, 0.6]) {
    const shares = new Map([500, 900].map((speed) => [speed, shareLate(9, speed, wear)]))
    let whole = 0
    const wrong = new Map<Needle, number>()
    for (const reader of readers)
      for (const { up, chance } of columnChoices(askedOf(query, column), reader)) {
        const sums = needles.map((needle) => needleSum(query, needle, up, (speed) => shares.get(speed)!))
        const likely = sums.reduce((all, sum) => all * sum.all, readerChances[reader] * chance)
        whole += likely
        for (const [n, needle] of needles.entries()) {
          const { sound, all } = at(sums, n)
          wrong.set(needle, (wrong.get(needle) ?? 0) + likely * (1 - sound / all))
        }
      }
    for (const needle of needles) {
      const is = wrong.get(needle)! / whole
      expect(is).toBeLessThan(0.01)
      // A list leaves out what has less than that.
      expect(wrongAt(places, `needle.${needleName(needle)}`)).toBeLessThanOrEqual(0.01)
    }
  }
  for (const name of ['R84', 'R60', 'L37'])
    expect(wrongAt(machine.answer.places, `needle.${name}`)).toBeGreaterThan(0.05)
}, 60_000)

test('Sticky pins beside one that stays pushed over make all the difference on machine 3', () => {
  const machine = at(referenceMachines, 3)
  const query = queryOf(machine)
  const { places } = infer(query)
  const bar = places.find(({ place }) => place === 'retainer')!.ways[0]!
  expect(bar.causes).toEqual(['retainer.worn=6'])
  const late = shareLate(6, 500, 0)
  // Once the pin of column 3 is pushed in a look, the strip stays for all needles that follow; those before it are at an end.
  const over = askedOf(query, toColumn(3))
  const isReached = (needle: Needle, look: number): boolean =>
    at(query.passes, look).way === 1
      ? needle >= needlesOf(toColumn(3))[0]!
      : needle <= needlesOf(toColumn(3)).at(-1)!
  const beside = (up: InLooks, needle: Needle): InLooks =>
    up.map((isUp, look) => isUp || (at(over, look) && isReached(needle, look)))
  const sumOf = (isSticky: boolean): number =>
    [11, 19]
      .map(toColumn)
      .reduce(
        (product, column) =>
          product *
          columnChoices(askedOf(query, column), 'gummed', isSticky).reduce(
            (sum, { up, chance }) =>
              sum +
              needlesOf(column).reduce(
                (all, needle) => all * needleSum(query, needle, beside(up, needle), () => late).all,
                chance,
              ),
            0,
          ),
        1,
      )
  const likelier = sumOf(true) / sumOf(false)
  expect(likelier).toBeGreaterThan(2.5)
  const odds = (of: Places): number => wrongAt(of, 'column.3') / wrongAt(of, 'strip.3')
  // With them, the second computation's odds of the pin against a slow strip come to those of the search.
  expect(Math.abs(Math.log((odds(machine.answer.places) * likelier) / odds(places)))).toBeLessThan(0.3)
  expect(Math.abs(Math.log(odds(machine.answer.places) / odds(places)))).toBeGreaterThan(0.6)
}, 60_000)
