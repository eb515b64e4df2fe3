import { existsSync } from 'node:fs'
import { run } from './child.mjs'
import { say } from './say.mjs'

/** Whether this run has fetched the lists of packages: once is enough. */
let listed = false

/**
 * @param {number} timeLimit milliseconds
 * @param {string[]} args
 */
const apt = (timeLimit, ...args) =>
  run('apt-get', ['-qq', ...args], {
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    output: 'ignore',
    timeLimit,
  })

/**
 * Installs packages of Debian or its like; where the lists of packages are too old for that, after fetching new ones.
 * Says what it is about to do, and why, before it does anything.
 * @param {string[]} packages
 * @param {string} why for a person: what is missing, and what it is needed for
 * @param {number} [timeLimit] milliseconds for each step
 * @returns {Promise<boolean>} whether they are installed; false also where there is no apt, or no right to use it
 */
export async function installFromDebian(packages, why, timeLimit = 600_000) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return false
  const names = packages.join(' and ')
  say(`${why} So ${names} will now be installed on this system, from its own packages, by apt-get.`)
  const install = () => apt(timeLimit, 'install', '-y', '--no-install-recommends', ...packages)
  if ((await install()) === 0) return true
  if (listed) return false
  listed = true
  say('Its lists of packages may be too old: fetching new ones by apt-get update, then trying again.')
  await apt(timeLimit, 'update')
  return (await install()) === 0
}
