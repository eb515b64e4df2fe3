import { describe, expect, test } from 'vitest'
import { bitsOfPart, findsWide } from '@/find/part-bits.ts'
import { checkOf, type PartCheck } from '@/find/checks.ts'
import { type Component, componentsOf, type NeedleChances, needleCausesOf } from '@/find/components.ts'
import { bitsOfNeedles } from '@/find/needle-bits.ts'
import { bitsOfPasses, type Weighing } from '@/find/pass-bits.ts'
import { entropy, noisyBits } from '@/find/shared-bits.ts'
import { errorOf } from '@/find/by-hand.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { looks, machineOf, wide } from './drawn-machine.ts'

const needle: NeedleChances = {
  needle: allNeedles[100]!,
  right: 0.6,
  noHold: 0.2,
  stiff: 0.1,
  gone: 0.07,
  other: 0.03,
}
const component = (labels: readonly number[], causes: Component['causes']): Component => ({
  labels: Int32Array.from(labels),
  causes,
})
const partOf = (id: PartCheck['id']): PartCheck => {
  const check = checkOf(id)
  if (check.kind !== 'part') throw new RangeError(id)
  return check
}
const weighing = (components: readonly Component[], needles: readonly NeedleChances[] = []): Weighing => ({
  machines: [],
  components,
  needles,
  byState: [],
  slip: 0.02,
  columnOne: usualPlace.columnOne,
})

describe('what a look at parts settles', () => {
  const bed = component([0, 0, 0, 1], [[], ['carriage.plain']])
  const strip = component([0, 1, 2, 2], [[], ['strip.1.seized'], ['pin.1.low']])

  test('is what it shows of each part, with a hand’s error', () => {
    const of = (id: PartCheck['id']) => bitsOfPart(partOf(id), weighing([bed, strip]))
    const settings = noisyBits([3, 1], errorOf('settings'))
    expect(of('settings')).toEqual({ wide: settings, all: settings })
    expect(of('strips')).toEqual({ wide: 0, all: noisyBits([3, 1], errorOf('strips')) })
    expect(of('pins').all).toBeCloseTo(noisyBits([2, 2], errorOf('pins')), 12)
    expect(findsWide(partOf('settings'), weighing([bed, strip]))).toBe(0.25)
    expect(findsWide(partOf('strips'), weighing([bed, strip]))).toBe(0)
    expect(findsWide(partOf('strips'), weighing([]))).toBe(0)
    expect(bitsOfPart(partOf('strips'), weighing([]))).toEqual({ wide: 0, all: 0 })
  })

  test('is of needles what it settles of the one most in doubt, or of all that it shows', () => {
    const sure: NeedleChances = {
      ...needle,
      needle: allNeedles[3]!,
      right: 0.99,
      noHold: 0.01,
      stiff: 0,
      gone: 0,
      other: 0,
    }
    const check = partOf('needle')
    const shown = needleCausesOf(needle).map(([, chance]) => chance)
    expect(needleCausesOf(needle)).toEqual([
      ['catch.R1.broken', 0.1],
      ['needle.R1.bent', 0.1],
      ['needle.R1.stiff', 0.1],
      ['needle.R1.gone', 0.07],
    ])
    const one = bitsOfPart(check, weighing([], [needle]))
    expect(one.all).toBeGreaterThan(0)
    expect(one.all).toBeLessThan(entropy([0.63, ...shown]))
    expect(bitsOfPart(check, weighing([], [sure, needle])).all).toBeCloseTo(one.all, 12)
  })
})

describe('what a pass settles of needles', () => {
  const of = (held: number, sorts: boolean, speed = 500) =>
    bitsOfNeedles(
      [needle],
      { columnOne: usualPlace.columnOne, slip: 0.02 },
      speed,
      dimensions,
      { heldAt: new Array<number>(24).fill(held), sorts },
      new Map(),
    )

  test('is the mean over what it is offered, of what each state of the needle would show', () => {
    expect(of(1, false)).toBe(0)
    expect(of(0.25, true)).toBeCloseTo(0.25 * of(1, true) + 0.75 * of(0, true), 12)
    const [selected, plain, unmoved] = [
      [0.98, 0.0192, 0.0008],
      [0.0192, 0.98, 0.0008],
      [0.018, 0.002, 0.98],
    ] as const
    const any = [0.45, 0.45, 0.1]
    const bits = (states: readonly (readonly [number, readonly number[]])[]): number =>
      entropy([0, 1, 2].map((n) => states.reduce((sum, [chance, notes]) => sum + chance * notes[n]!, 0))) -
      states.reduce((sum, [chance, notes]) => sum + chance * entropy(notes), 0)
    const rest = [
      [0.2, plain],
      [0.07, unmoved],
      [0.03, any],
    ] as const
    expect(of(1, true)).toBeCloseTo(bits([[0.6, selected], [0.1, selected], ...rest]), 12)
    // A stiff needle comes late at this speed, and not when the carriage creeps.
    expect(of(0, true)).toBeCloseTo(bits([[0.6, plain], [0.1, selected], ...rest]), 12)
    expect(of(0, true, 10)).toBeCloseTo(bits([[0.6, plain], [0.1, plain], ...rest]), 12)
  })
})

describe('what passes settle of strips and of the whole bed', () => {
  test('is all there is to know where each machine shows something of its own', () => {
    const machines = Array.from({ length: 40 }, (_, n) =>
      machineOf(
        n % 4 === 0
          ? { state: wide('carriage.plain') }
          : n % 4 === 1
            ? { strips: { 3: { state: 'seized' } } }
            : {},
      ),
    )
    const components = componentsOf(machines, 1)
    const [holes, blank] = bitsOfPasses({ ...weighing(components), machines }, looks.slice(0, 2), 1)
    // A quarter of the machines has a seized strip, which only a right carriage shows.
    expect(holes!.wide).toBeGreaterThan(0.9 * entropy([1, 3]))
    expect(holes!.wide).toBeLessThan(entropy([1, 3]) + 0.05)
    expect(holes!.all - holes!.wide).toBeGreaterThan(0.7 * entropy([1, 3]))
    expect(blank).toEqual({ wide: 0, all: 0 })
    const many = Array.from({ length: 33 }, () => looks[1]!).with(32, looks[0]!)
    const settled = bitsOfPasses({ ...weighing(components), machines }, many, 1)
    expect(settled).toHaveLength(33)
    expect(settled[32]).toEqual(holes)
    expect(at(settled, 31)).toEqual(blank)
  })
})
