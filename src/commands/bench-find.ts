import { usualPlace } from '../mechanism/bed.ts'
import { performance } from 'node:perf_hooks'
import { classesOf, dictionaryOf } from '../find/dictionary.ts'
import { kindsFound, type Score } from '../find/kinds-found.ts'
import { type TestCard, testCard } from '../find/test-card.ts'
import { viewsOf } from '../find/view.ts'
import type { Card } from '../mechanism/card.ts'
import { at } from '../mechanism/lookup.ts'

/** Prints a line of a table. */
export type Print = (name: string, cells: readonly string[]) => void

const rows = 8

/** Median and 95th percentile of some times. Throws a RangeError where there are none. */
export const medianAndMost = (times: Iterable<number>): [number, number] => {
  const sorted = Float64Array.from(times).sort()
  return [at(sorted, Math.floor(sorted.length * 0.5)), at(sorted, Math.floor(sorted.length * 0.95))]
}

/** Milliseconds, median and 95th percentile, of doing something so many times; `warm` times are not counted. */
const time = (times: number, warm: number, work: () => void): [number, number] => {
  const taken: number[] = []
  for (let n = -warm; n < times; n++) {
    const start = performance.now()
    work()
    if (n >= 0) taken.push(performance.now() - start)
  }
  return medianAndMost(taken)
}

/** Prints how long finding faults takes, beside its limits in milliseconds; `main` gives the 8 rows. Gives the test card. */
export const benchFind = (print: Print, main: Card): TestCard => {
  const card = main.slice(0, rows)
  const views = viewsOf(
    card,
    card.map((_, n) => ({ row: n + 1, way: n % 2 === 0 ? 1 : -1, speed: 500 })),
    usualPlace,
  )
  let found = testCard()
  const tasks = [
    {
      name: `a dictionary of ${rows} rows`,
      limit: 150,
      times: 20,
      work: () => void classesOf(dictionaryOf(views)),
    },
    { name: 'a test card', limit: 3000, times: 3, work: () => void (found = testCard()) },
  ]
  print('finding a fault', ['limit', 'median', '95 %'])
  for (const { name, limit, times, work } of tasks)
    print(name, [String(limit), ...time(times, 3, work).map((ms) => ms.toFixed(2))])
  return found
}

const share = ({ tried, found }: Score): string[] => [
  String(tried),
  String(found),
  `${((100 * found) / tried).toFixed(1)} %`,
]

/** Prints the test card's measure, and of how many kinds a fault is found through it. */
export const benchProof = (print: Print, found: TestCard): void => {
  const { card, runs, classes, most, hidden, fewest, forCodes, toSeparate, dictionary } = found
  print('the test card', ['is', 'may be'])
  print('rows, and the fewest', [String(card.length), String(fewest)])
  print('rows for codes, to part', [String(forCodes), String(toSeparate)])
  print('passes of it, and without', [String(card.length * runs.length), '1'])
  print('classes, and the most', [String(classes.length), String(most)])
  print('faults hidden, and all', [String(hidden.length), String(dictionary.entries.length)])
  print('seen through it', ['tried', 'found', 'share', 'limit'])
  print('a fault of each kind', [...share(kindsFound(found)), '94 %'])
}
