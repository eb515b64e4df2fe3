import { needleIndex, needleName } from '../../../mechanism/bed.ts'
import type { ClassState, PointerPosition, QuizPosition } from './state.ts'

/** The longest link that another window may send, in characters. */
const linkLimit = 20_000

/** How many figures wide or high the farthest pointer position of a screen is. */
const farthest = 10

const isShare = (value: unknown): value is number => typeof value === 'number' && Math.abs(value) <= farthest

const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isSafeInteger(value) && value >= 0

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> | undefined =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : undefined

/** Parses a field that may be missing; null where it is there and not valid. */
const optional = <T>(value: unknown, parse: (value: unknown) => T | undefined): T | undefined | null =>
  value === undefined || value === null ? undefined : (parse(value) ?? null)

const parsePointer = (value: unknown): PointerPosition | undefined => {
  const { x, y } = fieldsOf(value) ?? {}
  return isShare(x) && isShare(y) ? { x, y } : undefined
}

const parseQuiz = (value: unknown): QuizPosition | undefined => {
  const { seed, question } = fieldsOf(value) ?? {}
  return isCount(seed) && isCount(question) ? { seed, question } : undefined
}

/** Parses a state that came from another window; undefined where any field of it is not valid. */
export const parseClassState = (value: unknown): ClassState | undefined => {
  const given = fieldsOf(value) ?? {}
  const { chapter, step, part, parts, link, revealed, blank, qr } = given
  const first = typeof given['first'] === 'string' ? needleIndex(given['first']) : null
  const pointer = optional(given['pointer'], parsePointer)
  const quiz = optional(given['quiz'], parseQuiz)
  if (typeof chapter !== 'string' || !/^[a-z0-9-]{1,80}$/.test(chapter)) return undefined
  if (first === null) return undefined
  if (typeof link !== 'string' || link.length > linkLimit) return undefined
  if (typeof revealed !== 'boolean' || typeof blank !== 'boolean' || typeof qr !== 'boolean') return undefined
  if (!isCount(step) || !isCount(part) || !isCount(parts) || pointer === null || quiz === null)
    return undefined
  return { chapter, step, part, parts, first: needleName(first), link, revealed, blank, pointer, quiz, qr }
}
