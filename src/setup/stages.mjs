import { availableParallelism } from 'node:os'
import { title } from './say.mjs'

/**
 * A part of a run. It gets a function for all that it prints, and returns its exit code.
 * @typedef {{ title: string, run: (collect: (text: string) => void) => Promise<number> }} Job
 */

/** How long each stage of this run took, in seconds, in the order in which they ended. @type {[string, number][]} */
const durations = []

/**
 * Runs a stage under its title, and notes how long it took.
 * @template T
 * @param {string} name
 * @param {() => Promise<T>} run
 * @returns {Promise<T>}
 */
export async function stage(name, run) {
  title(name)
  const start = performance.now()
  try {
    return await run()
  } finally {
    durations.push([name, (performance.now() - start) / 1000])
  }
}

/**
 * Runs jobs side by side, as many at a time as there are cores. Each one's output comes at once when it has ended.
 * @param {Job[]} jobs the longest first
 * @returns {Promise<string[]>} titles of those that failed
 */
export async function sideBySide(jobs) {
  const waiting = [...jobs]
  /** @type {string[]} */
  const failed = []
  const work = async () => {
    for (let job = waiting.shift(); job; job = waiting.shift()) {
      const start = performance.now()
      let text = ''
      const code = await job.run((more) => (text += more))
      const seconds = (performance.now() - start) / 1000
      durations.push([job.title, seconds])
      title(`${job.title} (${seconds.toFixed(0)} s)`)
      process.stdout.write(text)
      if (code !== 0) failed.push(job.title)
    }
  }
  await Promise.all(Array.from({ length: availableParallelism() }, work))
  return failed
}

/** @returns {string} how long the stages of this run took; those that ran side by side overlap */
export const durationsInWords = () =>
  durations.map(([name, seconds]) => `${name} ${seconds.toFixed(0)} s`).join(', ')
