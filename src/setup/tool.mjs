import { join } from 'node:path'
import { run } from './child.mjs'
import { environment } from './environment.mjs'
import { modules } from './paths.mjs'

/** Each tool's own file, run by Node itself: the shims in .bin differ between systems. */
const files = {
  astro: 'astro/bin/astro.mjs',
  eslint: 'eslint/bin/eslint.js',
  knip: 'knip/bin/knip.js',
  oxfmt: 'oxfmt/bin/oxfmt',
  oxlint: 'oxlint/bin/oxlint',
  playwright: '@playwright/test/cli.js',
  prettier: 'prettier/bin/prettier.cjs',
  tsc: 'typescript/bin/tsc',
  vitest: 'vitest/vitest.mjs',
}

/** What Prettier formats; all the rest oxfmt does, in a twentieth of the time. */
export const markup = '**/*.astro'

/** @typedef {keyof typeof files} ToolName */

/**
 * @param {string} name
 * @returns {name is ToolName}
 */
export const isTool = (name) => Object.hasOwn(files, name)

/** @param {ToolName} name */
export const fileOf = (name) => join(modules, files[name])

/**
 * @param {string} node path of the Node program
 * @param {ToolName} name
 * @param {string[]} args
 * @param {import('./child.mjs').Options} [options] of which env adds to the tools' environment
 */
export function tool(node, name, args, options = {}) {
  const env = { ...environment(node), ...options.env }
  return run(node, [fileOf(name), ...args], { ...options, env })
}
