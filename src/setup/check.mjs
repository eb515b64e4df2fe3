import { sideBySide } from './stages.mjs'
import { markup, tool } from './tool.mjs'

// Types are looked at twice: in scripts as lint by types reads them all, and in markup by astro check alone, which takes
// three times as long with the scripts.
/** The longest first. @type {Array<{ title: string, name: import('./tool.mjs').ToolName, args: string[] }>} */
const checks = [
  { title: 'lint', name: 'eslint', args: ['.', '--max-warnings', '0'] },
  {
    title: 'types, and lint by types',
    name: 'oxlint',
    args: ['--type-aware', '--type-check', '--deny-warnings'],
  },
  {
    title: 'types of markup',
    name: 'astro',
    args: ['check', '--noSync', '--minimumFailingSeverity', 'warning', '--tsconfig', 'tsconfig.markup.json'],
  },
  { title: 'unused and circles', name: 'knip', args: [] },
  { title: 'format of markup', name: 'prettier', args: ['--check', '--log-level', 'warn', markup] },
  { title: 'format', name: 'oxfmt', args: ['--check', '.'] },
]

/**
 * Runs all static checks side by side, even after one has failed.
 * @param {string} node path of the Node program
 * @param {import('./stages.mjs').Job[]} [beside] what else may run beside them
 * @returns {Promise<string[]>} titles of those that failed
 */
export async function check(node, beside = []) {
  // Types of the content, which types and lint both read.
  if ((await tool(node, 'astro', ['sync'], { output: 'to-stderr' })) !== 0) return ['astro sync']
  const jobs = checks.map(({ title, name, args }) => ({
    title,
    run: (/** @type {(text: string) => void} */ collect) => tool(node, name, args, { collect }),
  }))
  return sideBySide([...beside, ...jobs])
}
