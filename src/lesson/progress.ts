import { type Answered, answeredOn, daysOfBox, isDue, unasked } from './spacing.ts'

/**
 * A reader's progress, as it is kept in her own browser only:
 *
 *     { "steps": { "3": ["heights", "edge"] },            ids of the steps seen, by chapter
 *       "answers": { "3.pin": { "right": 2, "wrong": 1,   how often a maker's questions were answered so
 *                               "box": 2, "due": 20500 } } }    spacing: box 0 to 5, due from this day
 *
 * Days are counted from 1 January 1970. The first version had no spacing: an answer without it is in box 0 and due.
 */
export interface Progress {
  readonly steps: Readonly<Record<string, readonly string[]>>
  readonly answers: Readonly<Record<string, Answered>>
}

export const noProgress: Progress = { steps: {}, answers: {} }

/** Far more entries than the site has steps or questions: what is beyond is not read. */
const mostEntries = 500

type Entries = readonly (readonly [string, unknown])[]

const entriesOf = (value: unknown): Entries =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).slice(0, mostEntries)
    : []

/** A count; null for anything else. */
const count = (value: unknown): number | null =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < 1e9 ? value : null

const parseSteps = (value: unknown): Progress['steps'] =>
  Object.fromEntries(
    entriesOf(value).flatMap(([chapter, steps]) => {
      if (!/^\d+$/.test(chapter) || !Array.isArray(steps)) return []
      const ids = steps.filter((id): id is string => typeof id === 'string').slice(0, mostEntries)
      return [[chapter, [...new Set(ids)]]]
    }),
  )

const parseAnswers = (value: unknown): Progress['answers'] =>
  Object.fromEntries(
    entriesOf(value).flatMap(([maker, answer]) => {
      if (!/^\d+\.[a-z]+$/.test(maker)) return []
      const given = new Map(entriesOf(answer))
      const [right, wrong] = [count(given.get('right')), count(given.get('wrong'))]
      if (right === null || wrong === null) return []
      const box = Math.min(daysOfBox.length - 1, count(given.get('box')) ?? unasked.box)
      return [[maker, { right, wrong, box, due: count(given.get('due')) ?? unasked.due }]]
    }),
  )

/** Parses what was kept of a reader's progress. Never throws: what is not valid is left out. */
export const parseProgress = (kept: { readonly steps?: unknown; readonly answers?: unknown }): Progress => ({
  steps: parseSteps(kept.steps),
  answers: parseAnswers(kept.answers),
})

/** The version of the file that a reader saves. */
const fileVersion = 2

/** The text of the file that a reader saves. */
export const progressFile = (progress: Progress): string =>
  JSON.stringify({ version: fileVersion, ...progress }, null, 2)

/** The progress with a step of a chapter seen; the same object where it was seen before. */
export const withStep = (progress: Progress, chapter: number, step: string): Progress => {
  const seen = progress.steps[chapter] ?? []
  return seen.includes(step)
    ? progress
    : { ...progress, steps: { ...progress.steps, [chapter]: [...seen, step] } }
}

/** The progress with a question of a maker answered on a day, counted from 1 January 1970. */
export const withAnswer = (progress: Progress, maker: string, right: boolean, day: number): Progress => ({
  ...progress,
  answers: { ...progress.answers, [maker]: answeredOn(progress.answers[maker] ?? unasked, right, day) },
})

/** How many of a maker's questions have been answered. */
export const timesAnswered = (progress: Progress, maker: string): number => {
  const { right, wrong } = progress.answers[maker] ?? unasked
  return right + wrong
}

/** The makers whose questions are due on a day, the longest due first. */
export const due = (progress: Progress, day: number): string[] =>
  Object.entries(progress.answers)
    .filter(([, answered]) => isDue(answered, day))
    .sort(([one, a], [other, b]) => a.due - b.due || (one < other ? -1 : 1))
    .map(([maker]) => maker)
