// npm run mutation [-- ROOM …] [anew]: changes the model, the links and the search for faults in every small way that
// Stryker knows, and counts how many of the changes their tests find. Fails where they find fewer than nine in ten,
// or where one that they do not find is not in tests/mutation/survivors.md with its reason.
// What is known from the run before stands where neither code nor tests have changed, unless all is to be tried anew.

import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { listedIn, type Report, survivorsIn } from './survivors.ts'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const stryker = join(root, 'node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js')
const rooms = ['mechanism', 'link', 'find']

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
const mutate = (room: string, isAnew: boolean): Score | null => {
  const file = join(root, '.results', 'mutation', `${room}.json`)
  rmSync(file, { force: true })
  const args = ['run', join('tests', 'mutation', 'stryker.mjs'), ...(isAnew ? ['--force'] : [])]
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

const anew = 'anew'
const words = process.argv.slice(2)
const asked = words.filter((word) => word !== anew)
const strange = asked.filter((room) => !rooms.includes(room))
if (strange.length > 0) {
  process.stderr.write(`Name one of ${rooms.join(', ')}, not ${strange.join(', ')}.\n`)
  process.exitCode = 2
} else {
  const started = Date.now()
  for (const room of asked.length > 0 ? asked : rooms) {
    const score = mutate(room, words.includes(anew))
    const isEnough = score !== null && score.found >= enough * score.all
    if (!isEnough || score.unlisted.length > 0) process.exitCode = 1
    for (const row of score?.unlisted ?? []) process.stdout.write(`not in survivors.md: | ${row} |\n`)
    const share = score ? `${((100 * score.found) / score.all).toFixed(1)} %` : 'not run'
    const minutes = ((Date.now() - started) / 60_000).toFixed(0)
    process.stdout.write(
      `src/${room}: ${share}, ${score?.found ?? 0} of ${score?.all ?? 0} changes found; ${minutes} min so far\n`,
    )
  }
}
