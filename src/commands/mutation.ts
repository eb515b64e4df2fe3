// npm run mutation [-- ROOM …] [from-scratch]: changes the model, the links and the search for faults in every small way that
// Stryker knows, and counts how many of the changes their tests find. Fails where they find fewer than nine in ten,
// or where one that they do not find is not in tests/mutation/survivors.md with its reason.
// Where neither code nor tests have changed, the result of the run before is kept, unless everything is to be tried again.

import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Command, refuse, runAsProcess } from './command.ts'
import { listedIn, type Report, survivorsIn } from './survivors.ts'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const stryker = join(root, 'node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js')
const rooms = ['mechanism', 'link', 'find']

/** The word that asks for everything to be tried again. */
const fromScratch = 'from-scratch'

/** The least share of the changes that a room's tests must find. */
const enough = 0.9

interface Score {
  readonly found: number
  readonly all: number
  /** Rows of the list for what was not found and is not listed. */
  readonly unlisted: readonly string[]
}

const found = ['Killed', 'Timeout']
const counted = [...found, 'Survived', 'NoCoverage']

const scoreOf = (report: Report): Score => {
  const states = Object.values(report.files).flatMap(({ mutants }) => mutants.map(({ status }) => status))
  const among = (kinds: readonly string[]): number => states.filter((state) => kinds.includes(state)).length
  const listed = listedIn(readFileSync(join(root, 'tests', 'mutation', 'survivors.md'), 'utf8'))
  const unlisted = survivorsIn(report).filter((row) => !listed.has(row))
  return { found: among(found), all: among(counted), unlisted }
}

/** Has one room's code changed, and gives the score; null where Stryker itself has failed. */
const mutate = (room: string, isFromScratch: boolean): Score | null => {
  const file = join(root, '.results', 'mutation', `${room}.json`)
  rmSync(file, { force: true })
  const args = ['run', join('tests', 'mutation', 'stryker.mjs'), ...(isFromScratch ? ['--force'] : [])]
  spawnSync(process.execPath, [stryker, ...args], {
    cwd: root,
    env: { ...process.env, MUTATED_ROOM: room },
    stdio: 'inherit',
  })
  try {
    return scoreOf(JSON.parse(readFileSync(file, 'utf8')) as Report)
  } catch {
    return null
  }
}

/** Scores the rooms that it is given, or all; gives 1 where one of them is not good enough. */
export const mutation: Command = async (args, io) => {
  const named = args.filter((word) => word !== fromScratch)
  const strange = named.filter((room) => !rooms.includes(room))
  if (strange.length > 0) return refuse(`Name one of ${rooms.join(', ')}, not ${strange.join(', ')}.`, io)
  const started = Date.now()
  let code = 0
  for (const room of named.length > 0 ? named : rooms) {
    const score = mutate(room, args.includes(fromScratch))
    const isEnough = score !== null && score.found >= enough * score.all
    if (!isEnough || score.unlisted.length > 0) code = 1
    for (const row of score?.unlisted ?? []) await io.write(`not in survivors.md: | ${row} |\n`)
    const share = score
      ? `${((100 * score.found) / score.all).toFixed(1)} %, ${score.found} of ${score.all} changes found`
      : 'not run'
    const minutes = ((Date.now() - started) / 60_000).toFixed(0)
    await io.write(`src/${room}: ${share}; ${minutes} min so far\n`)
  }
  return code
}

if (import.meta.main) await runAsProcess(mutation)
