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
 * Installs packages of Debian or its like, quietly; where the lists are too old for that, after fetching new ones.
 * @param {string} what they are, for a person
 * @param {string[]} packages
 * @param {number} [timeLimit] milliseconds for each step
 * @returns {Promise<boolean>} whether they are there; false also where there is no apt, or no right to use it
 */
export async function fromDebian(what, packages, timeLimit = 600_000) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return false
  say(`Installing Debian’s ${what} for the browser tests.`)
  const install = () => apt(timeLimit, 'install', '-y', '--no-install-recommends', ...packages)
  if ((await install()) === 0) return true
  if (listed) return false
  listed = true
  await apt(timeLimit, 'update')
  return (await install()) === 0
}
