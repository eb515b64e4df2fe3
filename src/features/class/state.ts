export { readClassState } from './parse-message.ts'

/**
 * A place on the screen, as shares of the figure's width and height: 0 to 1 on the figure itself, beyond them over what
 * stands beside it.
 */
export interface PointerPlace {
  readonly x: number
  readonly y: number
}

/** Which question of the chapter's quiz is asked: its seed, and its place among the chapter's, from 0. */
export interface QuizPlace {
  readonly seed: number
  readonly question: number
}

/** All that a class sees, small enough to be sent to another window at every change. */
export interface ClassState {
  /** The chapter's own part of its address. */
  readonly chapter: string
  /** Which step, from 0. */
  readonly step: number
  /** Which part of a text too long for one screen, from 0. A number past the last stands for the last. */
  readonly part: number
  /** How many parts there are on the class's screen, which alone can tell; 1 where it has not told. */
  readonly parts: number
  /** The machine's state, as the text of a link; empty for the one that belongs to what is shown. */
  readonly link: string
  /** Whether the step's prediction, or the question's answer, is shown. */
  readonly revealed: boolean
  readonly blank: boolean
  /** Where the pointer is; undefined where it is put away. */
  readonly pointer: PointerPlace | undefined
  /** The question that is asked; undefined where a step is shown. */
  readonly quiz: QuizPlace | undefined
  /** Whether the code to follow along is shown. */
  readonly qr: boolean
}

/** Whose change it was: this window's, or another's. */
export type From = 'here' | 'there'

/** The one place where a class view's state lives; two windows keep theirs the same. */
export interface ClassStore {
  readonly state: () => ClassState
  readonly set: (patch: Partial<ClassState>, from: From) => void
  /** Tells of every change from now on; gives what ends that. */
  readonly subscribe: (listener: (state: ClassState, from: From) => void) => () => void
}

const keys = [
  'chapter',
  'step',
  'part',
  'parts',
  'link',
  'revealed',
  'blank',
  'pointer',
  'quiz',
  'qr',
] as const satisfies (keyof ClassState)[]

/** Whether two states show the same. Both are plain data in one order of keys, so their texts tell. */
const isSame = (one: ClassState, other: ClassState): boolean =>
  keys.every((key) => JSON.stringify(one[key]) === JSON.stringify(other[key]))

/** Makes a store. A change that changes nothing is told to nobody, so that two windows come to rest. */
export const classStore = (initial: ClassState): ClassStore => {
  const listeners = new Set<(state: ClassState, from: From) => void>()
  let current = initial
  return {
    state: () => current,
    set: (patch, from) => {
      const next = { ...current, ...patch }
      if (isSame(next, current)) return
      current = next
      for (const listener of listeners) listener(next, from)
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

const sessionForm = /^[a-z0-9]{4,16}$/

/** The class's id in a page's query, `?class=ID`; undefined where there is none, or none that could be one. */
export const sessionOf = (search: string): string | undefined => {
  const id = new URLSearchParams(search).get('class') ?? ''
  return sessionForm.test(id) ? id : undefined
}

/** The name of the channel over which a class's windows speak. */
export const channelName = (id: string): string => `class-${id}`

/** Opens that channel; undefined where the browser has none, or denies it, as some do with their storage. */
export const openChannel = (id: string): BroadcastChannel | undefined => {
  try {
    return new BroadcastChannel(channelName(id))
  } catch {
    return undefined
  }
}

/** A new class's id: six random letters and digits. */
export const newSession = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(6)), (byte) => (byte % 36).toString(36)).join('')
