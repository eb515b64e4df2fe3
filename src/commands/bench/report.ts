import { faultId } from '../../mechanism/fault.ts'
import { medianAndMost, type Print } from '../bench-find.ts'
import { type Finder, type Took, tryFinder, tryStripSets } from './finder.ts'
import { calibrationOf, fewestNotes, isMet, type Measure, measuresOf, type Tried } from './measures.ts'
import { kindsInTurn } from './kinds.ts'

/** A share as a reader takes it in. */
const written = (value: number): string => (Number.isNaN(value) ? '–' : value.toFixed(3))

const measureCells = (measure: Measure): string[] => [
  String(measure.tried),
  written(measure.value),
  `${measure.aim.is} ${measure.aim.bound}`,
  isMet(measure) ? '' : 'not met',
]

const timeCells = (times: readonly number[], limit: number): string[] => {
  const [median, most] = medianAndMost(times)
  return [String(times.length), median.toFixed(0), most.toFixed(0), `at most ${limit}`]
}

const printKinds = (print: Print, tried: readonly Tried[]): void => {
  const share = (those: readonly Tried[], n: number): string => written(measuresOf(those)[n]?.value ?? NaN)
  print('by kind of machine', ['machines', 'found', 'in a set', 'right'])
  for (const kind of new Set(kindsInTurn)) {
    const those = tried.filter(({ machine }) => machine.kind === kind)
    print(kind, [String(those.length), share(those, 0), share(those, 1), share(those, 2)])
  }
}

/** Prints each machine, by its number from 0, of which something that shows was missed or something sound called wrong. */
const printMisses = (print: Print, tried: readonly Tried[]): void => {
  print('missed (notes), and named wrongly', [])
  for (const [n, { machine, truth, finding }] of tried.entries()) {
    const likely = finding.places.filter(({ wrong }) => wrong > 0.5)
    const missed = [...truth].filter(
      ([place, notes]) => notes >= fewestNotes && likely.every((each) => each.place !== place),
    )
    const named = likely.filter(({ place }) => !truth.has(place))
    if (missed.length + named.length === 0) continue
    const faults = machine.faults.map(faultId).join(' ') || (machine.isCardOut ? 'no card' : 'sound')
    print(`${n}: ${faults}, wear ${machine.wear}`, [
      ` | missed: ${missed.map(([place, notes]) => `${place} (${notes})`).join(' ') || 'none'}`,
      ` | named: ${named.map(({ place, wrong }) => `${place} ${written(wrong)}`).join(' ') || 'none'}`,
    ])
  }
}

/**
 * Prints what a finder reaches on so many machines of the bench, and on as many sets of strips seized or slow, beside its
 * aims; `seed` names the bench, a whole number below 1000.
 */
export const reportFinder = (print: Print, finder: Finder, seed: number, count: number): void => {
  const { tried, times } = tryFinder(finder, seed, count)
  print(`the finder on ${count} machines`, ['tried', 'is', 'aim'])
  for (const measure of measuresOf(tried)) print(measure.name, measureCells(measure))
  const strips = tryStripSets(finder, seed, count)
  print('sets of strips found whole', [
    String(strips.sets),
    written(strips.found / strips.sets),
    'at least 1',
  ])
  print('nothing selected: all that it may be', ['1', strips.allSeized ? 'named' : 'not named', 'named'])
  print('milliseconds to an answer', ['tried', 'median', '95 %', 'median’s aim'])
  for (const [name, all, limit] of [
    ['the first', times.first, 600],
    ['as one mark changes', times.oneMark, 50],
  ] as const) {
    const cells = (of: keyof Took): string[] =>
      timeCells(
        all.map((took) => took[of]),
        limit,
      )
    print(name, cells('clock'))
    print(`${name}, of processor time`, cells('processor'))
  }
  print('calibration', ['places', 'given', 'are so'])
  for (const [n, { places, given, isSo }] of calibrationOf(tried).entries())
    print(`${n / 10} to ${(n + 1) / 10}`, [String(places), written(given), written(isSo)])
  printKinds(print, tried)
  printMisses(print, tried)
}
