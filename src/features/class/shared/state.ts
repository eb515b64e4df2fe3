import { createStore } from '../../../browser/store.ts'
import type { NeedleName } from '../../../mechanism/bed.ts'

/**
 * Where the pointer is, as shares of the figure's width and height: 0 to 1 on the figure itself, less or more beside it.
 */
export interface PointerPosition {
  readonly x: number
  readonly y: number
}

/** A question of the chapter's quiz: the seed it is made from, and its index among the chapter's questions, from 0. */
export interface QuizPosition {
  readonly seed: number
  readonly question: number
}

/** All that a class sees, small enough to be sent to another window at every change. */
export interface ClassState {
  /** The chapter's slug in its address. */
  readonly chapter: string
  /** Index of the step, from 0. */
  readonly step: number
  /** Index of the part of a text too long for one screen, from 0. A number past the last part means the last. */
  readonly part: number
  /** How many parts the text has on the class's screen; 1 until that screen has measured it. */
  readonly parts: number
  /** The needle of column 1 on the class's own machine, by which the steps' states go. */
  readonly first: NeedleName
  /** The machine's state as the text of a link; empty for the state that belongs to the step or question. */
  readonly link: string
  /** Whether the step's prediction, or the question's answer, is shown. */
  readonly revealed: boolean
  readonly blank: boolean
  /** Undefined where the pointer is put away. */
  readonly pointer: PointerPosition | undefined
  /** Undefined where a step is shown. */
  readonly quiz: QuizPosition | undefined
  /** Whether the code to follow along is shown. */
  readonly qr: boolean
}

/** The fields of a class's state. */
export const stateKeys = [
  'chapter',
  'step',
  'part',
  'parts',
  'first',
  'link',
  'revealed',
  'blank',
  'pointer',
  'quiz',
  'qr',
] as const satisfies (keyof ClassState)[]

/** Which window made a change: this one, or another of the class. */
export type Origin = 'local' | 'remote'

type Listener = (state: ClassState, origin: Origin) => void

/** The one place where a window's class state lives; all windows of a class keep theirs the same. */
export interface ClassStore {
  readonly state: () => ClassState
  readonly set: (patch: Partial<ClassState>, origin: Origin) => void
  /** Calls the listener at every change from now on; returns a function that ends that. */
  readonly subscribe: (listener: Listener) => () => void
}

/** Whether two states have the same value in a field. Values are plain data in one order of keys, so JSON is enough. */
export const isSameField = (key: keyof ClassState, one: ClassState, other: ClassState): boolean =>
  JSON.stringify(one[key]) === JSON.stringify(other[key])

/** Makes a store. A change that changes nothing reaches no listener, so that two windows come to rest. */
export const classStore = (initial: ClassState): ClassStore => {
  const store = createStore<ClassState, Origin>(initial, 'local', (one, other) =>
    stateKeys.every((key) => isSameField(key, one, other)),
  )
  return {
    state: store.now,
    set: (patch, origin) => {
      store.set({ ...store.now(), ...patch }, origin)
    },
    subscribe: (listener) =>
      store.listen((state, _, origin) => {
        listener(state, origin)
      }),
  }
}
