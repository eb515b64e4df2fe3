import { oils } from '../find/finding.ts'
import { type IntakeAnswer, intake, type IntakeEffect, worn } from '../find/intake.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { faultWords } from './faults.ts'
import { listed } from './lists.ts'

/** A question to whoever brings a machine, with its answers. */
export interface IntakeQuestion {
  readonly id: string
  readonly ask: string
  readonly answers: readonly { readonly value: IntakeAnswer | ''; readonly name: string }[]
}

/** The questions, each with an answer that changes nothing first. */
export const intakeQuestions: readonly IntakeQuestion[] = [
  {
    id: 'stood',
    ask: 'Has it stood for years?',
    answers: [
      { value: '', name: 'not known' },
      { value: 'stood.yes', name: 'yes' },
      { value: 'stood.no', name: 'no' },
    ],
  },
  {
    id: 'came',
    ask: 'How did it come?',
    answers: [
      { value: '', name: 'not known' },
      { value: 'came.suddenly', name: 'suddenly' },
      { value: 'came.slowly', name: 'slowly' },
    ],
  },
  {
    id: 'plain',
    ask: 'Does it knit plain well?',
    answers: [
      { value: '', name: 'yes, or not known' },
      { value: 'plain.badly', name: 'no' },
    ],
  },
  {
    id: 'opened',
    ask: 'Was it opened or moved?',
    answers: [
      { value: '', name: 'no, or not known' },
      { value: 'opened.yes', name: 'yes' },
    ],
  },
  {
    id: 'settings',
    ask: 'Are the settings right: pattern, belt engaged, card off its lock, no row twice?',
    answers: [
      { value: '', name: 'not seen' },
      { value: 'settings.confirmed', name: 'I have seen it' },
    ],
  },
]

const times = (factor: number): string => `×\u00a0${factor}`

/** A kind of fault in a few words: the title before its colon. */
const kindWords = (kind: FaultKindName): string => faultWords[kind].title.replace(/:.*$/, '').toLowerCase()

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
