import { sideBySide } from './stages.mjs'
import { tool } from './tool.mjs'

// astro check looks into .ts and .mjs files too, so tsc has nothing to add.
/** The longest first. @type {Array<{ title: string, name: import('./tool.mjs').ToolName, args: string[] }>} */
const checks = [
  { title: 'lint', name: 'eslint', args: ['.', '--max-warnings', '0'] },
  { title: 'types', name: 'astro', args: ['check', '--noSync', '--minimumFailingSeverity', 'warning'] },
  { title: 'lint by types', name: 'oxlint', args: ['--type-aware', '--deny-warnings'] },
  { title: 'format', name: 'prettier', args: ['--check', '--log-level', 'warn', '.'] },
  { title: 'unused and circles', name: 'knip', args: [] },
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
