import { delimiter, dirname, join } from 'node:path'
import { modules } from './paths.mjs'

/**
 * The environment for every tool: the right Node first on PATH, and no reports sent anywhere.
 * NODE_ENV is left to each tool, since a value meant for servers would change what they do.
 * @param {string} node path of a Node program
 * @returns {NodeJS.ProcessEnv}
 */
export function environment(node) {
  /** @type {NodeJS.ProcessEnv} */
  const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' }
  const path = Object.keys(env).find((key) => key.toUpperCase() === 'PATH') ?? 'PATH'
  env[path] = [dirname(node), join(modules, '.bin'), env[path] ?? ''].join(delimiter)
  delete env['NODE_ENV']
  return env
}
