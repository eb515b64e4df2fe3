import { oils } from '../find/finding.ts'
import { type IntakeAnswer, intake, type IntakeEffect, worn } from '../find/intake.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { faultWords } from './faults.ts'
import { listed } from './lists.ts'

/** A question to whoever brings a machine, with its answers that change something. */
export interface IntakeQuestion {
  readonly id: string
  readonly ask: string
  readonly answers: readonly { readonly value: IntakeAnswer; readonly name: string }[]
  /** The answer that changes nothing; null where every answer changes something. */
  readonly otherwise: 'yes' | 'no' | null
}

/** The questions, on the page that finds faults and in a job. */
export const intakeQuestions: readonly IntakeQuestion[] = [
  {
    id: 'stood',
    ask: 'Has it stood for years?',
    answers: [
      { value: 'stood.yes', name: 'yes' },
      { value: 'stood.no', name: 'no' },
    ],
    otherwise: null,
  },
  {
    id: 'came',
    ask: 'Did it come suddenly, or slowly?',
    answers: [
      { value: 'came.suddenly', name: 'suddenly' },
      { value: 'came.slowly', name: 'slowly' },
    ],
    otherwise: null,
  },
  {
    id: 'plain',
    ask: 'Does it knit plain well?',
    answers: [{ value: 'plain.badly', name: 'no' }],
    otherwise: 'yes',
  },
  {
    id: 'opened',
    ask: 'Was it opened or moved before it began?',
    answers: [{ value: 'opened.yes', name: 'yes' }],
    otherwise: 'no',
  },
  {
    id: 'settings',
    ask: 'Are the settings checked: carriage on pattern, belt engaged, card not on lock, no row twice?',
    answers: [{ value: 'settings.confirmed', name: 'yes, all are right' }],
    otherwise: 'no',
  },
]

const times = (factor: number): string => `×\u00a0${factor}`

/** A kind of fault in a few words: the title before its colon. */
export const kindWords = (kind: FaultKindName): string =>
  faultWords[kind].title.replace(/:.*$/, '').toLowerCase()

/** What an answer changes, in a sentence: how many times as likely something counts before anything is seen. */
export const effectWords = (answer: IntakeAnswer): string => {
  const { oil, wear, wide, kinds }: IntakeEffect = intake[answer]
  const byFactor = Map.groupBy(
    Object.entries(kinds ?? {}) as [FaultKindName, number][],
    ([, factor]) => factor,
  )
  const parts = [
    ...oils.flatMap((name) => (oil?.[name] === undefined ? [] : [`${name} oil ${times(oil[name])}`])),
    ...(wear === undefined ? [] : [`wear from ${worn} on ${times(wear)}`]),
    ...(wide === undefined ? [] : [`whatever reaches the whole bed ${times(wide)}`]),
    ...[...byFactor].map(
      ([factor, own]) => `${listed(own.map(([kind]) => kindWords(kind)))} ${times(factor)}`,
    ),
  ]
  return `Before anything is seen it counts: ${parts.join(', ')}.`
}
