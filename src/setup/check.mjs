import { title as announce } from './say.mjs'
import { tool } from './tool.mjs'

// astro check looks into .ts and .mjs files too, so tsc has nothing to add.
/** @type {Array<{ title: string, name: import('./tool.mjs').ToolName, args: string[] }>} */
const checks = [
  { title: 'types', name: 'astro', args: ['check', '--minimumFailingSeverity', 'warning'] },
  { title: 'lint', name: 'eslint', args: ['.', '--max-warnings', '0'] },
  { title: 'format', name: 'prettier', args: ['--check', '--log-level', 'warn', '.'] },
]

/**
 * Runs all static checks, even after one has failed.
 * @param {string} node path of the Node program
 * @returns {Promise<string[]>} titles of those that failed
 */
export async function check(node) {
  const failed = []
  for (const { title, name, args } of checks) {
    announce(title)
    if ((await tool(node, name, args)) !== 0) failed.push(title)
  }
  return failed
}
