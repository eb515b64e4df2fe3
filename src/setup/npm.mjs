import { basename } from 'node:path'
import { run } from './child.mjs'
import { environment } from './environment.mjs'

/**
 * Runs npm with the given Node; all it prints goes to standard error.
 * @param {string} node path of a Node program
 * @param {string[]} args
 * @param {string} cwd
 */
export function npm(node, args, cwd) {
  const env = environment(node)
  const loud = [...args, '--loglevel=warn', '--no-update-notifier']
  const cli = process.env['npm_execpath'] ?? ''
  if (basename(cli) === 'npm-cli.js') return run(node, [cli, ...loud], { cwd, env, output: 'to-stderr' })
  const windows = process.platform === 'win32'
  return run(windows ? 'npm.cmd' : 'npm', loud, { cwd, env, output: 'to-stderr', shell: windows })
}
