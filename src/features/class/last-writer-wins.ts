import type { ClassState } from './state.ts'

/** When something was set: the turn, counted over all windows of a class, and which window did it. */
export interface Stamp {
  readonly turn: number
  readonly window: string
}

/**
 * What is always set at once. A place is where the class is; the link, the parts and the pointer belong to a place and
 * go with it; the rest stands for itself.
 */
const registerOf = {
  chapter: 'place',
  step: 'place',
  part: 'place',
  revealed: 'place',
  quiz: 'place',
  link: 'link',
  parts: 'parts',
  pointer: 'pointer',
  blank: 'blank',
  qr: 'qr',
} as const satisfies Record<keyof ClassState, string>

type Register = (typeof registerOf)[keyof ClassState]

const keys = Object.keys(registerOf) as (keyof ClassState)[]
const registers = [...new Set(Object.values(registerOf))]
const belongs: readonly Register[] = ['link', 'parts', 'pointer']

/** When a register was set, and when the place it belongs to was: a later place wins over a later pointer. */
interface Mark {
  readonly place: Stamp
  readonly own: Stamp
}

export type Marks = Readonly<Record<Register, Mark>>

/** A state, and when each of its registers was set. */
export interface Stamped {
  readonly state: ClassState
  readonly marks: Marks
}

const never: Stamp = { turn: 0, window: '' }

const marksBy = (mark: (register: Register) => Mark): Marks =>
  Object.fromEntries(registers.map((register) => [register, mark(register)])) as Marks

/** The marks of a window where nobody has done anything yet: what any other window says wins over it. */
export const unmarked: Marks = marksBy(() => ({ place: never, own: never }))

/** All registers set at once. */
export const markedAll = (stamp: Stamp): Marks =>
  marksBy((register) => ({ place: belongs.includes(register) ? stamp : never, own: stamp }))

/**
 * The marks with what nobody has set yet set by this window, so that a window that comes later takes it; but as the 0th
 * turn, so that it gives way to whatever somebody does, in any window.
 */
export const claimed = (marks: Marks, window: string): Marks =>
  marksBy((register) => {
    const isSet = compare(marks[register].own, never) > 0
    return isSet ? marks[register] : { place: never, own: { turn: 0, window } }
  })

/** The last turn of all. */
export const lastTurn = (marks: Marks): number => Math.max(...registers.map((name) => marks[name].own.turn))

const compare = (one: Stamp, other: Stamp): number =>
  one.turn - other.turn || (one.window < other.window ? -1 : Number(one.window > other.window))

const isLater = (one: Mark, other: Mark): boolean =>
  (compare(one.place, other.place) || compare(one.own, other.own)) > 0

/**
 * The marks after a change of this window's own, the same where nothing changed; a new place takes all that belongs to it
 * along.
 */
export const marked = (before: ClassState, after: ClassState, marks: Marks, stamp: Stamp): Marks => {
  const changed = new Set<Register>(
    keys
      .filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]))
      .map((key) => registerOf[key]),
  )
  if (changed.size === 0) return marks
  const place = changed.has('place') ? stamp : marks.place.own
  return marksBy((register) => {
    const belongsHere = belongs.includes(register)
    const isSet = changed.has(register) || (belongsHere && changed.has('place'))
    return isSet ? { place: belongsHere ? place : never, own: stamp } : marks[register]
  })
}

/** Of two windows' states the later of each register. In whatever order windows hear of each other, all end the same. */
export const merged = (mine: Stamped, theirs: Stamped): Stamped => {
  const taken = new Set(registers.filter((name) => isLater(theirs.marks[name], mine.marks[name])))
  const pick = (key: keyof ClassState): Stamped => (taken.has(registerOf[key]) ? theirs : mine)
  return {
    state: Object.fromEntries(keys.map((key) => [key, pick(key).state[key]])) as unknown as ClassState,
    marks: marksBy((name) => (taken.has(name) ? theirs : mine).marks[name]),
  }
}

const isStamp = (value: unknown): value is Stamp => {
  const { turn, window } = (value ?? {}) as Partial<Record<keyof Stamp, unknown>>
  return Number.isSafeInteger(turn) && Number(turn) >= 0 && typeof window === 'string' && window.length <= 16
}

/** Reads marks that another window sent; undefined where they are not what they should be. */
export const readMarks = (value: unknown): Marks | undefined => {
  const given = (value ?? {}) as Partial<Record<Register, Partial<Record<keyof Mark, unknown>> | null>>
  const isSound = registers.every((name) => {
    const { place, own } = given[name] ?? {}
    return isStamp(place) && isStamp(own)
  })
  return isSound ? (given as Marks) : undefined
}
