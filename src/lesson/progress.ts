import { type Answered, answeredOn, daysOfBox, isDue, unasked } from './spacing.ts'

/**
 * What is kept of a reader's progress, in her own browser only, as JSON:
 *
 *     { "version": 2,
 *       "steps": { "3": ["heights", "edge"] },            ids of the steps seen, by chapter
 *       "answers": { "3.pin": { "right": 2, "wrong": 1,   how often a maker's questions were answered so
 *                               "box": 2, "due": 20500 } } }    spacing: box 0 to 5, due from this day
 *
 * Days are counted from 1 January 1970. Version 1 had no boxes: `"3.pin": { "right": 2, "wrong": 1 }`.
 */
export interface Progress {
  readonly version: 2
  readonly steps: Readonly<Record<string, readonly string[]>>
  readonly answers: Readonly<Record<string, Answered>>
}

/** Where a browser keeps it. */
export const storageKey = 'every-eighth-needle'

export const noProgress: Progress = { version: 2, steps: {}, answers: {} }

/** Far more than the site has: a store grown beyond any sense is not read on. */
const most = 500

type Entries = readonly (readonly [string, unknown])[]

const entriesOf = (value: unknown): Entries =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).slice(0, most)
    : []

/** A count that can still be counted on. */
const count = (value: unknown): number | null =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < 1e9 ? value : null

const readSteps = (value: unknown): Progress['steps'] =>
  Object.fromEntries(
    entriesOf(value).flatMap(([chapter, steps]) => {
      if (!/^\d+$/.test(chapter) || !Array.isArray(steps)) return []
      const ids = steps.filter((id): id is string => typeof id === 'string').slice(0, most)
      return [[chapter, [...new Set(ids)]]]
    }),
  )

/** Reads what fits and leaves out the rest. Answers of version 1 have no box: they start in the first and are due. */
const readAnswers = (value: unknown): Progress['answers'] =>
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

const parsed = (text: string | null): unknown => {
  try {
    return JSON.parse(text ?? '')
  } catch {
    return null
  }
}

const storeOf = (text: string | null): Map<string, unknown> | null => {
  const store = new Map(entriesOf(parsed(text)))
  return count(store.get('version')) === null ? null : store
}

/** Whether a text is a store at all, of whatever version. */
export const isProgress = (text: string): boolean => storeOf(text) !== null

/**
 * Reads a store's text, of this version, an older or a later one; null where there is none. Never throws: what can't
 * be read is left out, and a text that is no store gives no progress.
 */
export const readProgress = (text: string | null): Progress => {
  const store = storeOf(text)
  if (store === null) return noProgress
  return { version: 2, steps: readSteps(store.get('steps')), answers: readAnswers(store.get('answers')) }
}

/** The store's text; also what a reader saves as a file. */
export const writeProgress = (progress: Progress): string => JSON.stringify(progress, null, 2)

/** With a step of a chapter seen. */
export const withStep = (progress: Progress, chapter: number, step: string): Progress => {
  const seen = progress.steps[chapter] ?? []
  return seen.includes(step)
    ? progress
    : { ...progress, steps: { ...progress.steps, [chapter]: [...seen, step] } }
}

/** With a question of a maker answered on a day. */
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
