import type { ClassState, PointerPlace, QuizPlace } from './state.ts'

/** The longest link that another window may send, in characters. */
const linkLimit = 20_000

/** How many figures wide or high the farthest place of a screen is. */
const farthest = 10

const isShare = (value: unknown): value is number => typeof value === 'number' && Math.abs(value) <= farthest

const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isSafeInteger(value) && value >= 0

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> | undefined =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : undefined

/** Reads a part that may be left out; null where it is there and no good. */
const optional = <T>(value: unknown, read: (value: unknown) => T | undefined): T | undefined | null =>
  value === undefined || value === null ? undefined : (read(value) ?? null)

const readPointer = (value: unknown): PointerPlace | undefined => {
  const { x, y } = fieldsOf(value) ?? {}
  return isShare(x) && isShare(y) ? { x, y } : undefined
}

const readQuiz = (value: unknown): QuizPlace | undefined => {
  const { seed, question } = fieldsOf(value) ?? {}
  return isCount(seed) && isCount(question) ? { seed, question } : undefined
}

/** Reads a state that came from another window; undefined where any of it is not what it should be. */
export const readClassState = (value: unknown): ClassState | undefined => {
  const { chapter, step, part, parts, link, revealed, blank, qr, ...rest } = fieldsOf(value) ?? {}
  const pointer = optional(rest.pointer, readPointer)
  const quiz = optional(rest.quiz, readQuiz)
  if (typeof chapter !== 'string' || !/^[a-z0-9-]{1,80}$/.test(chapter)) return undefined
  if (typeof link !== 'string' || link.length > linkLimit) return undefined
  if (typeof revealed !== 'boolean' || typeof blank !== 'boolean' || typeof qr !== 'boolean') return undefined
  if (!isCount(step) || !isCount(part) || !isCount(parts) || pointer === null || quiz === null)
    return undefined
  return { chapter, step, part, parts, link, revealed, blank, pointer, quiz, qr }
}
