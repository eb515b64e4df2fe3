import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { faultKinds } from '../mechanism/fault-kinds.ts'
import type { Oil } from './finding.ts'
import { type Cause, kindOfCause } from './place.ts'

/** What an answer changes: by which factors some chances are multiplied before anything is looked at. */
export interface IntakeEffect {
  readonly oil?: Partial<Readonly<Record<Oil, number>>>
  /** Wear from `worn` on. */
  readonly wear?: number
  /** Whatever reaches the whole bed, but for the retainer bar and loose pivots. */
  readonly wide?: number
  /** Some kinds of fault, each by itself. */
  readonly kinds?: Partial<Readonly<Record<FaultKindName, number>>>
}

/** From this wear on a machine counts as worn. */
export const worn = 0.6

const needles = { 'needle.bent': 3, 'needle.gone': 3, 'needle.stiff': 3, 'catch.broken': 3 } as const

/**
 * The questions to ask whoever brings a machine, each with the answers that change something; an answer that is not
 * known changes nothing. Common practice from memory.
 */
export const intake = {
  'stood.yes': { oil: { fresh: 0.4, old: 1.5, set: 2.5 } },
  'stood.no': { oil: { fresh: 1.3, old: 0.7, set: 0.3 } },
  'came.suddenly': { wide: 3, wear: 0.3 },
  'came.slowly': { wear: 3, oil: { set: 1.5 } },
  'plain.badly': { kinds: { ...needles, 'retainer.worn': 3 } },
  'opened.yes': { kinds: { 'belt.off': 5, 'belt.timing': 5, 'belt.slack': 5, 'card.skew': 3 } },
  'settings.confirmed': {
    kinds: { 'carriage.plain': 0.1, 'belt.off': 0.1, 'card.locked': 0.1, 'turn.twice': 0.1 },
  },
} as const satisfies Record<string, IntakeEffect>

export type IntakeAnswer = keyof typeof intake

/** Every answer that changes something, question by question. */
export const intakeAnswers = Object.keys(intake) as IntakeAnswer[]

/** Whether a text is such an answer. */
export const isIntakeAnswer = (text: string): text is IntakeAnswer => Object.hasOwn(intake, text)

/** The question that an answer belongs to: of its answers only one can be so. */
export const questionOf = (answer: IntakeAnswer): string => answer.split('.')[0] ?? answer

/** One answer a question, the last of each, in the order of the questions. */
export const settledAnswers = (answers: readonly IntakeAnswer[]): IntakeAnswer[] => {
  const last = new Map(answers.map((answer) => [questionOf(answer), answer]))
  return intakeAnswers.filter((answer) => last.get(questionOf(answer)) === answer)
}

/** Stages of the chain whose faults reach one place only. */
const narrow: ReadonlySet<string> = new Set([
  'pin',
  'rocker',
  'strip',
  'catch',
  'needle',
  'retainer',
  'pivots',
  'other',
])

const isWide = (cause: Cause): boolean => cause === 'card.out' || !narrow.has(cause.split(/[.=]/)[0] ?? '')

/** By which factors answers multiply the chances of oil, wear and causes. */
export interface IntakeFactors {
  readonly oil: Readonly<Record<Oil, number>>
  /** Of a wear from 0 to 1. */
  readonly wear: (wear: number) => number
  readonly cause: (cause: Cause) => number
}

/** The factors of some answers together. */
export const intakeFactors = (answers: readonly IntakeAnswer[]): IntakeFactors => {
  const effects: IntakeEffect[] = settledAnswers(answers).map((answer) => intake[answer])
  const product = (of: (effect: IntakeEffect) => number | undefined): number =>
    effects.reduce((all, effect) => all * (of(effect) ?? 1), 1)
  const byCause = new Map<Cause, number>()
  const ofCause = (cause: Cause): number => {
    const kind = kindOfCause(cause)
    const own = product(({ kinds }) =>
      kind !== null && kind in faultKinds ? kinds?.[kind as FaultKindName] : 1,
    )
    return own * (isWide(cause) ? product(({ wide }) => wide) : 1)
  }
  const wornFactor = product(({ wear }) => wear)
  return {
    oil: {
      fresh: product(({ oil }) => oil?.fresh),
      old: product(({ oil }) => oil?.old),
      set: product(({ oil }) => oil?.set),
    },
    wear: (wear) => (wear >= worn ? wornFactor : 1),
    cause: (cause) => {
      let factor = byCause.get(cause)
      if (factor === undefined) byCause.set(cause, (factor = ofCause(cause)))
      return factor
    },
  }
}
