import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { npm } from './npm.mjs'
import { modules, root } from './paths.mjs'
import { say, Stop } from './say.mjs'

const stamp = join(modules, '.installed-from')

/**
 * Installs the locked packages when they are missing or the lock file has changed since.
 * @param {string} node path of the Node program that the packages are for
 */
export async function ensurePackages(node) {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex')
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return
  say('Installing the packages, as locked.')
  const code = await npm(node, ['ci', '--include=dev', '--include=optional'], root)
  if (code !== 0) throw new Stop('The packages could not be installed: see npm’s message above.')
  writeFileSync(stamp, lock)
}
