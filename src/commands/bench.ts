// npm run bench: how long the model and the search for faults take, warm, beside their limits, and how many faults are
// found; with `speed` only how long. With `find`, and perhaps how many, what the search reaches on machines drawn at random.

import { performance } from 'node:perf_hooks'
import { infer } from '../find/infer.ts'
import { read } from '../link/read.ts'
import { scenarioOf } from '../link/state.ts'
import { passEnds, wholeBed } from '../mechanism/bed.ts'
import { frameAt } from '../mechanism/frame.ts'
import { at, entry } from '../mechanism/lookup.ts'
import { startRun } from '../mechanism/pass.ts'
import type { Scenario } from '../mechanism/scenario.ts'
import { reportFinder } from './bench/report.ts'
import { benchFind, benchProof, medianAndMost, type Print } from './bench-find.ts'
import { cardLibrary, cardsFolder } from './cards.ts'
import { type Command, type Io, refuse, runAsProcess } from './command.ts'

const cardRows = 60
const library = cardLibrary(cardsFolder)

/** A machine from a link's text, with the main card run on to 60 rows. */
const machine = (text: string): Scenario => {
  const scenario = scenarioOf(read(text, library).state, library)
  const card = scenario.card ?? entry(library.cards, library.main)
  return { ...scenario, card: Array.from({ length: cardRows }, (_, n) => at(card, n % card.length)) }
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
    times: 1000,
    work: (scenario) => (n) => void startRun(scenario).passOf((n % cardRows) + 1),
  },
  {
    name: 'a frame',
    limit: 0.05,
    times: 1000,
    work(scenario) {
      const run = startRun(scenario)
      const { start, end } = passEnds(1, wholeBed)
      return (n) => void frameAt(run, (n % cardRows) + 1, start + ((n * 0.37) % (end - start)))
    },
  },
  {
    name: `a card of ${cardRows} rows`,
    limit: 6,
    times: 60,
    work: (scenario) => () => {
      const run = startRun(scenario)
      for (let pass = 1; pass <= cardRows; pass++) run.passOf(pass)
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
  return medianAndMost(taken)
}

const row = (name: string, cells: readonly string[], width: number): string =>
  `${name.padEnd(width)}${cells.map((cell) => cell.padStart(16)).join('')}\n`

/** How many machines the search for faults is tried on, and the seed that names their bench. */
const machinesTried = { usual: 400, most: 100_000, seed: 1 } as const

const benchFinder = (count: number, io: Io): number => {
  if (!Number.isInteger(count) || count < 1 || count > machinesTried.most)
    return refuse(
      `Give a number of machines from 1 to ${machinesTried.most}, as in: npm run bench -- find 40`,
      io,
    )
  reportFinder((name, cells) => void io.write(row(name, cells, 44)), infer, machinesTried.seed, count)
  return 0
}

const benchModel = (print: Print): void => {
  print('milliseconds', ['', ...machines.flatMap(({ name }) => ['', name])])
  print('', ['limit', ...machines.flatMap(() => ['median', '95 %'])])
  for (const task of tasks) {
    const taken = machines.flatMap(({ scenario }) => measure(task, scenario))
    print(task.name, [String(task.limit), ...taken.map((ms) => ms.toFixed(4))])
  }
}

/**
 * Writes the tables of times and, unless it is given `speed`, of the faults that are found; where it is given `find`, only
 * what the search for faults reaches.
 */
export const bench: Command = (args, io) => {
  const [what, count] = args
  if (what === 'find') return benchFinder(Number(count ?? machinesTried.usual), io)
  const print: Print = (name, cells) => void io.write(row(name, cells, 24))
  benchModel(print)
  const found = benchFind(print, entry(library.cards, library.main))
  if (what !== 'speed') benchProof(print, found)
  return 0
}

if (import.meta.main) await runAsProcess(bench)
