import type { CardLibrary } from '../link/state.ts'
import type { CardPlace } from '../mechanism/bed.ts'
import type { Outcome } from '../mechanism/gate.ts'
import type { Random } from './seeded-random.ts'

/** What is said about an answer, in one sentence, and the link text of a state in which it can be seen. */
export interface Verdict {
  readonly reason: string
  readonly show: string
}

/** What a question lets the reader see beside the machine. */
export type Picture =
  | { readonly kind: 'row'; readonly title: string; readonly holes: readonly boolean[] }
  | {
      readonly kind: 'bed'
      readonly title: string
      /** Index of the first needle; the rest follow. */
      readonly first: number
      readonly asked: readonly Outcome[]
      readonly came: readonly Outcome[]
      /** What is wrong on this bed, in words. */
      readonly words: string
    }

/** What every kind of question has, before it is given its place and number. */
interface Common {
  readonly prompt: string
  /** Link text of the machine as the question finds it; it never gives the answer away. */
  readonly state: string
  readonly pictures: readonly Picture[]
}

/** A needle to be chosen or left, and what is said where that was done wrongly. */
export interface Needle extends Verdict {
  /** 0 to 199. */
  readonly index: number
  readonly right: boolean
}

/** Predict the needles. */
export interface Needles extends Common {
  readonly kind: 'needles'
  /** What is predicted: the needles that come forward, or those that come out otherwise than asked. */
  readonly goal: 'selected' | 'wrong'
  readonly needles: readonly Needle[]
  /** Whole answers that come of a known mix-up. */
  readonly slips: readonly (Verdict & { readonly chosen: readonly number[] })[]
  readonly right: Verdict
}

/** One of several answers. */
export interface Option extends Verdict {
  readonly id: string
  readonly label: string
  /** What it costs; empty where it costs nothing. */
  readonly note: string
  readonly right: boolean
}

/** Name the broken part from a bed. */
export interface Part extends Common {
  readonly kind: 'part'
  readonly options: readonly Option[]
}

/** Choose the cheapest next check. */
export interface NextCheck extends Common {
  readonly kind: 'check'
  readonly options: readonly Option[]
}

/** Something that happens, why it comes before the next (the rest of a sentence; empty for the last), and a state that shows it. */
export interface Step {
  readonly id: string
  readonly label: string
  readonly why: string
  readonly show: string
}

/** Put the chain in order. */
export interface Order extends Common {
  readonly kind: 'order'
  /** In their right order. */
  readonly steps: readonly Step[]
  /** The steps' ids as they are offered. */
  readonly offered: readonly string[]
  readonly right: Verdict
}

/** Give a number. */
export interface NumberAsked extends Common {
  readonly kind: 'number'
  readonly value: number
  /** Empty for a bare number. */
  readonly unit: string
  readonly slips: readonly (Verdict & { readonly value: number })[]
  /** How the number is found without saying it, as a sentence. */
  readonly how: string
  readonly right: Verdict
}

/** The question and the answer of each kind. */
export interface Bodies {
  readonly needles: Needles
  readonly part: Part
  readonly order: Order
  readonly number: NumberAsked
  readonly check: NextCheck
}
export interface Answers {
  /** Indexes of the chosen needles. */
  readonly needles: readonly number[]
  readonly part: string
  readonly order: readonly string[]
  readonly number: number
  readonly check: string
}

export type Kind = keyof Bodies
export type Body = Bodies[Kind]

/** A question with its place: the id is its maker's id (chapter and name) and its seed. */
export type Question<K extends Kind = Kind> = {
  [P in K]: Bodies[P] & { readonly id: string; readonly maker: string; readonly seed: number }
}[K]

/** What a maker works with: questions are about a bed with the card at this place. */
export interface Kit extends CardPlace {
  readonly random: Random
  readonly library: CardLibrary
}

/** Makes a question of one kind; the same kit makes the same question. */
export type Maker = (kit: Kit) => Body

/**
 * The makers of a chapter's questions by name, in the order in which they are asked. Progress is kept by chapter and
 * name, so a name once used stays with its question.
 */
export type Makers = Readonly<Record<string, Maker>>
