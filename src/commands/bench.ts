// npm run bench: how long the model and the search for faults take, warm, beside their limits, and how many faults are
// found; with `speed` only how long.

import { performance } from 'node:perf_hooks'
import { read } from '../link/read.ts'
import { scenarioOf } from '../link/state.ts'
import { passEnds, wholeBed } from '../mechanism/bed.ts'
import { frameAt } from '../mechanism/frame.ts'
import { startRun } from '../mechanism/pass.ts'
import type { Scenario } from '../mechanism/scenario.ts'
import { benchFind, benchProof } from './bench-find.ts'
import { cardLibrary, cardsFolder } from './cards.ts'

const rows = 60
const library = cardLibrary(cardsFolder)

/** A machine from a link's text, with the main card run on to 60 rows. */
const machine = (text: string): Scenario => {
  const scenario = scenarioOf(read(text, library).state, library)
  const card = scenario.card ?? []
  return { ...scenario, card: Array.from({ length: rows }, (_, n) => card[n % card.length] ?? 0) }
}

const troubles = [
  'strip.3.seized',
  'strip.6.slow',
  'pin.5.over',
  'rocker.9.worn=0.8',
  'belt.slack=0.4',
  'retainer.worn=6',
]
const machines = [
  { name: 'sound', scenario: machine('') },
  { name: 'worn, 6 faults', scenario: machine(`wear=0.8&break=${troubles.join('&break=')}`) },
]

/** A thing to do, and how often: `work` readies it for a machine, and what it gives back is timed. */
interface Task {
  readonly name: string
  /** Milliseconds. */
  readonly limit: number
  readonly times: number
  readonly work: (scenario: Scenario) => (n: number) => void
}

const tasks: readonly Task[] = [
  {
    name: 'a pass of 200 needles',
    limit: 0.1,
    times: 4000,
    work: (scenario) => (n) => void startRun(scenario).passOf((n % rows) + 1),
  },
  {
    name: 'a frame',
    limit: 0.05,
    times: 4000,
    work(scenario) {
      const run = startRun(scenario)
      const { start, end } = passEnds(1, wholeBed)
      return (n) => void frameAt(run, (n % rows) + 1, start + ((n * 0.37) % (end - start)))
    },
  },
  {
    name: `a card of ${rows} rows`,
    limit: 6,
    times: 200,
    work: (scenario) => () => {
      const run = startRun(scenario)
      for (let pass = 1; pass <= rows; pass++) run.passOf(pass)
    },
  },
]

/** Median and 95th percentile, in milliseconds, of a task once it is warm. */
const measure = ({ work, times }: Task, scenario: Scenario): [number, number] => {
  const once = work(scenario)
  for (let n = 0; n < times / 2; n++) once(n)
  const taken = new Float64Array(times)
  for (let n = 0; n < times; n++) {
    const start = performance.now()
    once(n)
    taken[n] = performance.now() - start
  }
  taken.sort()
  return [taken[Math.floor(times * 0.5)] ?? 0, taken[Math.floor(times * 0.95)] ?? 0]
}

const column = (text: string): string => text.padStart(16)
const print = (name: string, cells: readonly string[]): void =>
  void process.stdout.write(`${name.padEnd(24)}${cells.map(column).join('')}\n`)

print('milliseconds', ['', ...machines.flatMap(({ name }) => ['', name])])
print('', ['limit', ...machines.flatMap(() => ['median', '95 %'])])
for (const task of tasks) {
  const taken = machines.flatMap(({ scenario }) => measure(task, scenario))
  print(task.name, [String(task.limit), ...taken.map((ms) => ms.toFixed(4))])
}

const found = benchFind(print, library.cards.get(library.main) ?? [])
if (process.argv[2] !== 'speed') benchProof(print, found)
