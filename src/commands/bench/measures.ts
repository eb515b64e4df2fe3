import type { Finding, PlaceFinding } from '../../find/finding.ts'
import { isSpokenOf } from './before.ts'
import type { BenchMachine } from './machine.ts'
import type { Truth } from './truth.ts'

/** A machine, what is wrong with it, and what the finder says of it. */
export interface Tried {
  readonly machine: BenchMachine
  readonly truth: Truth
  readonly finding: Finding
}

/** A figure beside its aim. */
export interface Measure {
  readonly name: string
  /** How many it is a figure of; where they are none, its value is not a number. */
  readonly tried: number
  readonly value: number
  readonly aim: { readonly is: 'at least' | 'at most'; readonly bound: number }
}

/** Whether a measure meets its aim, with some slack for a bench of few machines; one that nothing was tried for does. */
export const isMet = ({ tried, value, aim }: Measure, slack = 0): boolean =>
  tried === 0 || (aim.is === 'at least' ? value >= aim.bound - slack : value <= aim.bound + slack)

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

const figure = (
  name: string,
  values: readonly number[],
  is: Measure['aim']['is'],
  bound: number,
): Measure => ({
  name,
  tried: values.length,
  value: mean(values),
  aim: { is, bound },
})

/** Places that show by fewer notes than this need not be found. */
export const fewestNotes = 3

/** A set of places of which one is wrong counts as an answer where it is as small and as likely as this. */
const together = { places: 6, wrong: 0.9 } as const

/** For each place that is wrong and shows whether it is found by itself, and whether at least in a set of few. */
const foundIn = ({ truth, finding }: Tried): { alone: boolean; inSet: boolean }[] =>
  [...truth]
    .filter(([, notes]) => notes >= fewestNotes)
    .map(([place]) => {
      const alone = finding.places.some((each) => each.place === place && each.wrong > 0.5)
      const inSet = finding.together.some(
        ({ places, wrong }) =>
          wrong > together.wrong && places.length <= together.places && places.includes(place),
      )
      return { alone, inSet: alone || inSet }
    })

/** Whether each place that is given more than a chance is truly wrong. */
const rightAbove = (tried: readonly Tried[], chance: number): number[] =>
  tried.flatMap(({ truth, finding }) =>
    finding.places.filter(({ wrong }) => wrong > chance).map(({ place }) => Number(truth.has(place))),
  )

/** A tenth of the chances that were given, and how often what was given them is so. */
export interface Bin {
  readonly places: number
  readonly given: number
  readonly isSo: number
}

const bins = 10

/** Chances given to places of which the notes speak, in ten bins, beside how often those places are wrong. */
export const calibrationOf = (tried: readonly Tried[]): Bin[] => {
  const spoken = tried.flatMap(({ truth, finding }) =>
    finding.places
      .filter((place) => isSpokenOf(place, finding))
      .map(({ place, wrong }: PlaceFinding) => ({ wrong, isSo: Number(truth.has(place)) })),
  )
  return Array.from({ length: bins }, (_, n) => {
    const those = spoken.filter(({ wrong }) => Math.min(bins - 1, Math.floor(wrong * bins)) === n)
    return {
      places: those.length,
      given: mean(those.map(({ wrong }) => wrong)),
      isSo: mean(those.map(({ isSo }) => isSo)),
    }
  })
}

/** How far a bin that has many places is out. */
const calibrationErrors = (tried: readonly Tried[]): number[] =>
  calibrationOf(tried)
    .filter(({ places }) => places > 100)
    .map(({ given, isSo }) => Math.abs(given - isSo))

const wearMeasures = (tried: readonly Tried[]): Measure[] => {
  const error = ({ machine, finding }: Tried): number => Math.abs(finding.wear.mean - machine.wear)
  const isHeld = ({ machine: { wear }, finding }: Tried): number =>
    Number(wear >= finding.wear.low && wear <= finding.wear.high)
  const worn = tried.filter(({ machine }) => machine.wear >= 0.8)
  const calledBroken = ({ truth, finding }: Tried): number =>
    Number(finding.places.some(({ place, wrong }) => wrong > 0.5 && !truth.has(place)))
  return [
    figure('error of wear, where it is 0.8 or more', worn.map(error), 'at most', 0.05),
    figure(
      'error of wear, where 0.6 or more is said',
      tried.filter(({ finding }) => finding.wear.mean >= 0.6).map(error),
      'at most',
      0.05,
    ),
    figure(
      'wear from 0.6 up within its interval',
      tried.filter(({ machine }) => machine.wear >= 0.6).map(isHeld),
      'at least',
      0.8,
    ),
    figure('worn, and a sound part called broken', worn.map(calledBroken), 'at most', 0.1),
  ]
}

/** What the finder reaches on some machines, beside what it is to reach. */
export const measuresOf = (tried: readonly Tried[]): Measure[] => {
  const found = tried.flatMap(foundIn)
  const errors = calibrationErrors(tried)
  return [
    figure(
      'wrong and showing: given over 0.5',
      found.map(({ alone }) => Number(alone)),
      'at least',
      0.94,
    ),
    figure(
      'the same, or in a set of few',
      found.map(({ inSet }) => Number(inSet)),
      'at least',
      0.955,
    ),
    figure('given over 0.5: truly wrong', rightAbove(tried, 0.5), 'at least', 0.95),
    figure('given over 0.9: truly wrong', rightAbove(tried, 0.9), 'at least', 0.99),
    figure('given over 0.99: truly wrong', rightAbove(tried, 0.99), 'at least', 0.995),
    {
      name: 'calibration: the worst bin',
      tried: errors.length,
      value: Math.max(...errors),
      aim: { is: 'at most', bound: 0.08 },
    },
    ...wearMeasures(tried),
  ]
}
