import { describe, expect, test } from 'vitest'
import { oils } from '@/find/finding.ts'
import { componentsOf, doubtfulNeedles, stripCausesOf, wideCausesOf } from '@/find/components.ts'
import { type DrawnMachine, drawMachines } from '@/find/draw-machines.ts'
import { drawnPasses, mostAtOnce, soundPlaces } from '@/find/drawn-passes.ts'
import { inferWhole } from '@/find/infer.ts'
import type { Look } from '@/find/looks.ts'
import { type Cause, faultOfCause } from '@/find/place.ts'
import { possiblePasses } from '@/find/possible-looks.ts'
import type { Query } from '@/find/query.ts'
import { scenarioIn } from '@/find/view.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, rightBed } from '@/find/wide-states.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import type { Fault, FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { firstPasses, numbers, randomCard } from './make.ts'
import { notedQuery } from './noted.ts'

const card = randomCard(8, 31)

/** A query in which the first passes of a card were seen on a machine with these faults. */
const queryOf = (ids: readonly FaultId[], passes: number): Query =>
  notedQuery(card, firstPasses(card.length, passes, 500), ids)

const every = 1500

/** By how many standard deviations a share of draws may be off. */
const farOff = (chance: number): number => 4.5 * Math.sqrt((chance * (1 - chance)) / every) + 0.02

describe('machines drawn from what is still possible', { timeout: 180_000 }, () => {
  test.each<[FaultId[], number]>([
    [['strip.3.seized'], 1],
    [['strip.1.slow=300', 'strip.2.seized', 'pin.5.low'], 3],
    [['pin.4.sticky=0.5', 'retainer.worn=9'], 3],
    [['carriage.plain'], 2],
    [['pivots.loose=0.5', 'strip.6.seized'], 3],
  ])('have %j as often as the sums say, after %d passes', (ids, passes) => {
    const { finding, beds } = inferWhole(queryOf(ids, passes))
    const machines = drawMachines(beds, every, 7)
    expect(machines).toHaveLength(every)
    const counts = new Map<string, number>()
    const next = numbers(3)
    for (const machine of machines) {
      const wide = wideCausesOf(machine, next)
      const own = machine.strips.flatMap((strip, n) => stripCausesOf(n, strip, next))
      const places = new Set([...wide, ...own].map((cause) => placeOf(cause)))
      for (const place of places) counts.set(place, (counts.get(place) ?? 0) + 1)
    }
    for (const { place, wrong } of finding.places)
      if (!place.startsWith('needle.'))
        expect(Math.abs((counts.get(place) ?? 0) / every - wrong), place).toBeLessThan(farOff(wrong))
    const oil = oils.map((name) => machines.filter(({ hidden }) => hidden.oil.oil === name).length / every)
    for (const [n, name] of oils.entries())
      expect(Math.abs(oil[n]! - finding.oil[name]), name).toBeLessThan(farOff(finding.oil[name]))
  })

  test('are the same for the same seed, and others for another', () => {
    const { beds } = inferWhole(queryOf(['strip.3.seized'], 1))
    const statesOf = (seed: number): string =>
      drawMachines(beds, 60, seed)
        .map(({ strips }) => strips.map(({ state }) => state).join())
        .join(' ')
    expect(statesOf(1)).toBe(statesOf(1))
    expect(statesOf(1)).not.toBe(statesOf(2))
  })

  test('leave a needle in doubt as far as the sums do', () => {
    const { finding, beds } = inferWhole(queryOf(['needle.R3.bent'], 3))
    const needles = doubtfulNeedles(beds)
    for (const { place, wrong } of finding.places) {
      if (!place.startsWith('needle.')) continue
      const own = needles.find(({ needle }) => place === `needle.${nameOf(needle)}`)!
      expect(1 - own.right, place).toBeCloseTo(wrong, 2)
    }
  })
})

const nameOf = (needle: number): string => (needle < 100 ? `L${100 - needle}` : `R${needle - 99}`)

/** The place of a cause that is no needle's. */
const placeOf = (cause: Cause): string => {
  const [kind, number] = cause.split('.')
  if (kind === 'strip') return `strip.${number}`
  if (kind === 'pin' || kind === 'rocker') return `column.${number}`
  if (kind === 'pawl' || kind === 'turn') return 'turn'
  if (kind === 'card' && ['torn', 'blocked'].includes(number ?? '')) return 'hole'
  return kind!.split('=')[0]!
}

/** Looks that somebody may make next, in the machine's order. */
const looks = (query: Query): Look[] =>
  possiblePasses(query)
    .slice(0, mostAtOnce)
    .map(({ view }) => ({ view, way: wayOfPass(view.pass), noted: new Uint8Array(200) }))

/** A drawn machine with a certain state of each strip and column, as new but for that. */
const machineWith = (base: DrawnMachine, strips: DrawnMachine['strips'], bed = base.bed): DrawnMachine => ({
  ...base,
  bed,
  hidden: { ...base.hidden, wear: 0, pivots: 0 },
  retainer: -1,
  strips,
})

/** By place, whether its needles are selected on a machine with these faults. */
const placesSelected = (faults: readonly Fault[], view: Look['view']): number[] => {
  const { came } = startRun(scenarioIn(view, faults)).passOf(view.pass)
  return Array.from({ length: 24 }, (_, place) => {
    // Needles near the ends may not be met; the rest of a column's needles all do the same.
    const own = came.filter((_, n) => n > 40 && n < 160 && (n - usualPlace.columnOne + 240) % 24 === place)
    return Math.round(own.filter((outcome) => outcome === 'selected').length / own.length)
  })
}

const bitsAt = (bits: ArrayLike<number>, n: number): number[] => Array.from(bits, (own) => (own >> n) & 1)

const right = { state: 'sound', stays: 0, certainty: 1 } as const

describe('a drawn machine in a pass', { timeout: 180_000 }, () => {
  const query = queryOf([], 2)
  const [base] = drawMachines(inferWhole(query).beds, 1, 1)
  const strips = Array.from({ length: 8 }, () => ({
    state: 'right' as const,
    slow: 0,
    columns: [right, right, right],
  }))
  const withStrip = (n: number, strip: DrawnMachine['strips'][number]) =>
    strips.map((one, m) => (m === n ? strip : one))
  const column = (state: 'dead' | 'high' | 'over') => ({
    state: 'right' as const,
    slow: 0,
    columns: [right, { ...right, state }, right],
  })
  const cases: readonly (readonly [string, DrawnMachine['strips'], readonly string[]])[] = [
    ['nothing', strips, []],
    ['a seized strip', withStrip(2, { ...strips[0]!, state: 'seized' }), ['strip.3.seized']],
    ['a strip over', withStrip(2, { ...strips[0]!, state: 'over' }), ['strip.3.over']],
    ['a slow strip', withStrip(4, { ...strips[0]!, state: 'slow', slow: 3 }), ['strip.5.slow=300']],
    ['a very slow strip', withStrip(4, { ...strips[0]!, state: 'slow', slow: 6 }), ['strip.5.slow=1000']],
    ['a low pin', withStrip(0, column('dead')), ['pin.9.low']],
    ['a high pin', withStrip(0, column('high')), ['pin.9.high']],
    ['a leaning pin', withStrip(0, column('over')), ['pin.9.over']],
  ]
  const bed = { ...base!.bed, state: rightBed }

  test.each(cases)('does what the model does, with %s', (_, own, ids) => {
    const made = looks(query)
    const passes = drawnPasses(machineWith(base!, own, bed), made, numbers(1))
    const faults = ids.map(faultOf)
    for (const [n, { view }] of made.entries())
      expect(bitsAt(passes.all, n), `look ${n}`).toEqual(placesSelected(faults, view))
  })

  test('does what the model does with whatever reaches the whole bed', () => {
    const made = looks(query)
    for (const cause of wideCauses()) {
      const state = alone(cause)
      const passes = drawnPasses(machineWith(base!, strips, { ...bed, state }), made, numbers(1))
      const places = soundPlaces(wideBedOf(state, made))
      for (const [n, look] of made.entries()) {
        const view = cause.fault ? look.view : { ...look.view, card: null, shift: null }
        const came = placesSelected(cause.fault ? [cause.fault] : [], view)
        expect(bitsAt(passes.all, n), `${cause.causes[0]} look ${n}`).toEqual(came)
        const sound = Array.from(came, (_, place) => (places[n]! >> place) & 1)
        expect(sound, `${cause.causes[0]} look ${n}`).toEqual(came)
      }
    }
  })

  test('has needles late by a worn bar the more the faster it goes, and by loose pivots some of a column', () => {
    const made = looks(query)
    const worn = { ...machineWith(base!, strips, bed), retainer: 6 }
    const { late } = drawnPasses(worn, made, numbers(1))
    const at = (speed: number) => late[made.findIndex(({ view }) => view.speed === speed)]!
    expect(at(90)).toBeLessThan(at(500))
    expect(at(500)).toBeLessThan(at(900))
    expect(
      drawnPasses(machineWith(base!, strips, bed), made, numbers(1)).late.every((one) => one === 0),
    ).toBe(true)
    const loose = withStrip(1, { ...strips[0]!, columns: [{ ...right, certainty: 0.6 }, right, right] })
    const { all, some } = drawnPasses(machineWith(base!, loose, bed), made, numbers(1))
    expect(some[1]).not.toBe(0)
    expect(all[1]! & some[1]!).toBe(0)
    expect(some.filter((bits) => bits !== 0)).toHaveLength(1)
  })

  test('has a sticky pin rise as often as it does not stay', () => {
    const sticky = withStrip(0, {
      ...strips[0]!,
      columns: [{ ...right, state: 'sticky' as const, stays: 0.25 }, right, right],
    })
    const next = numbers(9)
    const holes = looks(query).filter(({ view }) => view.card?.[0] === 0xffffff)
    const rises = Array.from({ length: 300 }, () =>
      holes.filter((_, n) => (drawnPasses(machineWith(base!, sticky, bed), holes, next).all[0]! >> n) & 1),
    ).reduce((sum, list) => sum + list.length, 0)
    expect(rises / (300 * holes.length)).toBeCloseTo(0.75, 1)
  })
})

describe('what is wrong with drawn machines', () => {
  test('is one label for each machine and part, amounts left aside, of causes that are faults', () => {
    const { beds } = inferWhole(queryOf(['strip.3.seized', 'pin.5.low'], 2))
    const machines = drawMachines(beds, 200, 5)
    const components = componentsOf(machines, 5)
    expect(components).toHaveLength(9)
    for (const { labels, causes } of components) {
      expect(labels).toHaveLength(200)
      expect(new Set(labels).size).toBe(causes.length)
      for (const cause of causes.flat())
        expect(cause === 'other' || cause === 'card.out' || faultOfCause(cause) !== null, cause).toBe(true)
    }
    const strip = components[3]!
    const seized = strip.causes.findIndex((own) => own[0] === 'strip.3.seized')
    expect(strip.labels.filter((label) => label === seized).length).toBeGreaterThan(100)
  })
})
