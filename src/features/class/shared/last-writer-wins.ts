import { type ClassState, isSameField, stateKeys } from './state.ts'

/**
 * A class's state as last-writer-wins registers: each window keeps, beside each register's value, the logical time at
 * which it was written, and of two values the one with the later time wins.
 */

/** A logical time (Lamport's): a counter over all windows of a class, and the id of the window that wrote. */
export interface Timestamp {
  readonly counter: number
  readonly window: string
}

/**
 * The register of each field; fields of one register are always written together. The position says where the class is;
 * the link, the parts and the pointer belong to a position and change with it; the others are independent.
 */
const registerOf = {
  chapter: 'position',
  step: 'position',
  part: 'position',
  revealed: 'position',
  quiz: 'position',
  first: 'first',
  link: 'link',
  parts: 'parts',
  pointer: 'pointer',
  blank: 'blank',
  qr: 'qr',
} as const satisfies Record<keyof ClassState, string>

type Register = (typeof registerOf)[keyof ClassState]

const registers = [...new Set(Object.values(registerOf))]

/** Registers whose values belong to a position. */
const dependent: readonly Register[] = ['link', 'parts', 'pointer']

/** When a register was written, and when the position it belongs to was: a later position wins over a later pointer. */
interface WriteTime {
  readonly position: Timestamp
  readonly own: Timestamp
}

/** When each register was written. */
export type WriteTimes = Readonly<Record<Register, WriteTime>>

/** A state, and when each of its registers was written. */
export interface TimedState {
  readonly state: ClassState
  readonly times: WriteTimes
}

const never: Timestamp = { counter: 0, window: '' }

const timesBy = (timeOf: (register: Register) => WriteTime): WriteTimes =>
  Object.fromEntries(registers.map((register) => [register, timeOf(register)])) as WriteTimes

/** The times of a window where nobody has done anything yet: any value of another window wins over its own. */
export const neverWritten: WriteTimes = timesBy(() => ({ position: never, own: never }))

/** All registers written at one time. */
export const allWrittenAt = (time: Timestamp): WriteTimes =>
  timesBy((register) => ({ position: dependent.includes(register) ? time : never, own: time }))

/**
 * The times with each register that nobody has written claimed by this window, so that a window that opens later takes
 * its value; but with counter 0, so that whatever somebody does, in any window, wins over it.
 */
export const claimUnwritten = (times: WriteTimes, window: string): WriteTimes =>
  timesBy((register) => {
    const isWritten = compare(times[register].own, never) > 0
    return isWritten ? times[register] : { position: never, own: { counter: 0, window } }
  })

/** The highest counter of all registers. */
export const latestCounter = (times: WriteTimes): number =>
  Math.max(...registers.map((name) => times[name].own.counter))

const compare = (one: Timestamp, other: Timestamp): number =>
  one.counter - other.counter || (one.window < other.window ? -1 : Number(one.window > other.window))

const isLater = (one: WriteTime, other: WriteTime): boolean =>
  (compare(one.position, other.position) || compare(one.own, other.own)) > 0

/**
 * The times after this window's own change from `before` to `after`; the same object where nothing changed. A new
 * position rewrites the registers that belong to it too.
 */
export const timesAfter = (
  before: ClassState,
  after: ClassState,
  times: WriteTimes,
  now: Timestamp,
): WriteTimes => {
  const changed = new Set<Register>(
    stateKeys.filter((key) => !isSameField(key, before, after)).map((key) => registerOf[key]),
  )
  if (changed.size === 0) return times
  const position = changed.has('position') ? now : times.position.own
  return timesBy((register) => {
    const isDependent = dependent.includes(register)
    const isWritten = changed.has(register) || (isDependent && changed.has('position'))
    return isWritten ? { position: isDependent ? position : never, own: now } : times[register]
  })
}

/** The later value of each register. In whatever order windows receive each other's states, all end the same. */
export const merge = (mine: TimedState, theirs: TimedState): TimedState => {
  const taken = new Set(registers.filter((name) => isLater(theirs.times[name], mine.times[name])))
  const pick = (register: Register): TimedState => (taken.has(register) ? theirs : mine)
  return {
    state: Object.fromEntries(
      stateKeys.map((key) => [key, pick(registerOf[key]).state[key]]),
    ) as unknown as ClassState,
    times: timesBy((register) => pick(register).times[register]),
  }
}

const isTimestamp = (value: unknown): value is Timestamp => {
  const { counter, window } = (value ?? {}) as Partial<Record<keyof Timestamp, unknown>>
  return (
    Number.isSafeInteger(counter) && Number(counter) >= 0 && typeof window === 'string' && window.length <= 16
  )
}

/** Parses times that another window sent; undefined where any of them is not valid. */
export const parseTimes = (value: unknown): WriteTimes | undefined => {
  const given = (value ?? {}) as Partial<Record<Register, Partial<Record<keyof WriteTime, unknown>> | null>>
  const isValid = registers.every((name) => {
    const { position, own } = given[name] ?? {}
    return isTimestamp(position) && isTimestamp(own)
  })
  return isValid ? (given as WriteTimes) : undefined
}
