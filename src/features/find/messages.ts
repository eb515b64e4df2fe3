import type { CheckId } from '../../find/checks.ts'
import type { Letters } from '../../find/evidence.ts'
import type { Suspect } from '../../find/rank.ts'
import type { Noted } from '../../find/view.ts'
import type { Card } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'

/** A pass as the worker is told of it. */
export interface AskedPass extends Noted {
  readonly card: Card | null
  /** Whether it is the card in question, whose own holes may be at fault. */
  readonly isOwn: boolean
  readonly needles: Letters
}

/** A part that was looked at: which check, and the fault that was found; null for none. */
export interface AskedCheck {
  readonly check: string
  readonly found: Fault | null
}

/** What the worker is asked: to rank what may be wrong, and then to advise on the next check. */
export interface Ask {
  readonly id: number
  /** Chance that a needle is marked wrongly. */
  readonly slip: number
  readonly passes: readonly AskedPass[]
  readonly checked: readonly AskedCheck[]
}

/** What a machine would show in one pass, beside a sound one: needles as `change` packs them, and the chance of late ones. */
export interface Prediction {
  readonly changed: readonly number[]
  readonly chance: number
}

/** One answer to what may be wrong. */
export interface Answer {
  readonly is: Suspect['is']
  /** The ways in which it may be so, the likeliest first; each is one fault or two at once. */
  readonly ways: readonly (readonly Fault[])[]
  readonly probability: number
  /** Why it stands where it does, in a sentence. */
  readonly why: string
  /** By pass; null for what is unknown. */
  readonly shown: readonly Prediction[] | null
  /** Whether it would show nothing on the needles that were looked at. */
  readonly isHidden: boolean
}

/** One outcome of a check, with the answers that would give it. */
export type CheckOutcome =
  | { readonly kind: 'bed'; readonly prediction: Prediction; readonly if: readonly Answer['ways'][number][] }
  | { readonly kind: 'part'; readonly found: Fault | null }

/** A check worth taking. */
export interface Advice {
  readonly check: CheckId
  readonly bits: number
  readonly minutes: number
  readonly opens: boolean
  readonly cautions: readonly string[]
  /** The pass that it asks for; null where it looks at a part. */
  readonly pass: (Noted & { readonly card: 'same' | 'none' | 'all-holes' | 'blank' }) | null
  readonly outcomes: readonly CheckOutcome[]
}

/** The worker is asked for a course of passes to a fault, from the first pass on. */
export interface CourseAsk {
  readonly course: Fault
  readonly first: AskedPass
}

/** What the worker tells of a course. */
export type CourseTold = Extract<Told, { kind: 'course' }>

export type Told =
  | {
      readonly kind: 'course'
      /** The course that proves the fault in the least time, and whether that is proved. */
      readonly passes: readonly AskedPass[]
      readonly isProved: boolean
      /** Faults that no pass tells from it. */
      readonly alike: readonly Fault[]
      /** The course that the page's own advice takes. */
      readonly advised: readonly AskedPass[]
    }
  | {
      readonly kind: 'ranked'
      readonly id: number
      readonly answers: readonly Answer[]
      readonly nearest: Answer | null
      readonly ms: number
    }
  | { readonly kind: 'advised'; readonly id: number; readonly advice: readonly Advice[]; readonly ms: number }
