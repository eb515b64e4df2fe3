import type { CardPlace } from '../mechanism/bed.ts'
import type { Fault } from '../mechanism/fault.ts'
import { at } from '../mechanism/lookup.ts'
import { type Prediction, predictionOf } from './check-outcomes.ts'
import type { Fit } from './evidence.ts'
import type { Finding } from './infer.ts'
import type { NextLook } from './next.ts'
import { changedNeedle } from './packed-change.ts'
import type { NotedPass, Query } from './query.ts'
import type { RankedAnswer } from './rank.ts'
import type { Shown } from './shown.ts'

/** One answer to what may be wrong, as it is sent from the worker to the page. */
export interface Answer {
  readonly kind: RankedAnswer['kind']
  /** The ways in which it may be so, the likeliest first; each is one fault or two at once. */
  readonly ways: readonly (readonly Fault[])[]
  readonly probability: number
  /** By pass; null for what is unknown. */
  readonly shown: readonly Prediction[] | null
  /** How it fits the notes; null for what is unknown, and for what is next to impossible. */
  readonly fit: Fit | null
  /** Whether it is a fault that would show nothing on the needles that were looked at. */
  readonly isHidden: boolean
}

/** What the page asks of its worker. */
export type WorkerQuestion =
  | { readonly kind: 'infer'; readonly id: number; readonly query: Query }
  /** The courses of passes to a fault, after a first pass with the card in question. */
  | ({ readonly kind: 'course'; readonly fault: Fault; readonly first: NotedPass } & CardPlace)

/** The courses of passes to a fault. */
export interface CourseMessage {
  readonly kind: 'course'
  /** The course that proves the fault in the least time, and whether that is proved. */
  readonly passes: readonly NotedPass[]
  readonly isProved: boolean
  /** Faults that no pass tells from it. */
  readonly alike: readonly Fault[]
  /** The course that the page's own advice takes. */
  readonly advised: readonly NotedPass[]
}

/** What the worker sends: to each query first its answers, then the next looks; `ms` is the time since the question. */
export type WorkerMessage =
  | CourseMessage
  | {
      readonly kind: 'ranked'
      readonly id: number
      readonly answers: readonly Answer[]
      readonly nearest: Answer | null
      readonly ms: number
    }
  | {
      readonly kind: 'next'
      readonly id: number
      readonly looks: readonly NextLook[]
      readonly ms: number
    }

/** The most answers that are sent, the least likely one, and the most ways of one answer. */
const sent = { answers: 6, probability: 0.005, ways: 60 } as const

/** Whether a prediction would be seen on the needles that were looked at. */
const isVisible = ({ changed, chance }: Shown, needles: string): boolean =>
  (chance > 0 && /[^?]/.test(needles)) ||
  changed.some((one) => !['?', ''].includes(needles.charAt(changedNeedle(one))))

/** An answer to a query, ready to be sent. */
export const answerOf = (
  { passes }: Query,
  { kind, ways, probability, shown, fit }: RankedAnswer,
): Answer => ({
  kind,
  ways: ways.slice(0, sent.ways).map((way) => way.map(({ fault }) => fault)),
  probability,
  shown: shown?.map(predictionOf) ?? null,
  fit,
  isHidden: kind === 'faults' && (shown ?? []).every((one, n) => !isVisible(one, at(passes, n).needles)),
})

/** The few likely answers to a query, ready to be sent. */
export const answersOf = (query: Query, { answers }: Finding): Answer[] =>
  answers
    .filter(({ probability }, n) => n === 0 || probability >= sent.probability)
    .slice(0, sent.answers)
    .map((answer) => answerOf(query, answer))
