import type { AdvisedCourse } from './advised-course.ts'
import type { BestCourse } from './best-course.ts'
import type { DealtMachine } from './deal-machine.ts'
import type { CardPlace } from '../mechanism/bed.ts'
import type { Fault } from '../mechanism/fault.ts'
import { type Prediction, predictionOf } from './check-outcomes.ts'
import type { Finding, PlaceFinding, Unexplained } from './finding.ts'
import { hypothesesOf } from './hypotheses.ts'
import { shownByMachine } from './machine-bed.ts'
import type { NextLook } from './next.ts'
import { faultOfCause, isWidePlace, type Place } from './place.ts'
import { type NotedPass, type Query, viewsOfQuery } from './query.ts'
import { howCommon } from './how-common.ts'
import { settingOf } from './shown.ts'
import { soundBeds } from './sound.ts'
import { type Speaking, speakingFor } from './needle-evidence.ts'

/** One answer to what may be wrong, as it is sent from the worker to the page: a place, or nothing at all. */
export interface Answer {
  readonly kind: 'sound' | 'faults' | 'noCard' | 'unknown'
  /** Where it is; null for nothing at all. */
  readonly place: Place | null
  /** The ways in which it may be so, the likeliest first; each is one fault. */
  readonly ways: readonly (readonly Fault[])[]
  readonly probability: number
  /** By pass: what the likeliest whole machine with it would show. */
  readonly shown: readonly Prediction[]
  /** By pass: the needles that speak for it and against it. */
  readonly speaking: readonly Speaking[]
}

/** What the page asks of its worker. */
export type WorkerQuestion =
  | { readonly kind: 'infer'; readonly id: number; readonly query: Query }
  /** The courses of passes to what is wrong with a machine, after a first pass with the card in question. */
  | ({ readonly kind: 'course'; readonly machine: DealtMachine; readonly first: NotedPass } & CardPlace)

/** The courses of passes to what is wrong with a machine. */
export interface CourseMessage {
  readonly kind: 'course'
  /** The course that proves its one fault in the least time; null where it has several. */
  readonly best: BestCourse | null
  /** The course that the page's own advice takes, and the places that it then names. */
  readonly advised: AdvisedCourse
}

/**
 * What the worker sends: to each query first its answers, then the next looks, and where no other query follows soon, what was
 * shown right and what was not looked at; `ms` is the time since the question.
 */
export type WorkerMessage =
  | CourseMessage
  | {
      readonly kind: 'ranked'
      readonly id: number
      readonly answers: readonly Answer[]
      /** The whole in a sentence or a few, and what else there is to say. */
      readonly whole: string
      readonly remarks: readonly string[]
      readonly unexplained: readonly Unexplained[]
      readonly ms: number
    }
  | {
      readonly kind: 'next'
      readonly id: number
      readonly looks: readonly NextLook[]
      readonly ms: number
    }
  | { readonly kind: 'shown'; readonly sentences: readonly string[] }

/** The most answers that are sent, the least likely one, and the most ways of one answer. */
const sent = { answers: 8, probability: 0.02, ways: 60 } as const

/** Ways with less than this share of their place's chance are left out. */
const leastShare = 0.05

/** A place is named where the notes have raised its odds by this factor; one that reaches the whole bed from this chance on. */
const raised = 2
const wideFrom = 0.2

const oddsOf = (chance: number): number => chance / Math.max(1e-12, 1 - chance)

/** Whether the notes speak of a place, and it is not merely as likely as it was before. */
const isSpokenOf = ({ place, wrong, before }: PlaceFinding): boolean =>
  before === null
    ? isWidePlace(place) && wrong > wideFrom
    : oddsOf(wrong) > raised * oddsOf(before) || wrong > 0.5

/** What the likeliest whole machine of a finding shows in each pass of a query. */
const shownByLikeliest = (query: Query, finding: Finding): Prediction[] => {
  const [likeliest] = hypothesesOf(finding)
  const beds = soundBeds()
  return viewsOfQuery(query).map((view) =>
    likeliest ? predictionOf(shownByMachine(likeliest, settingOf(view, beds))) : { changed: [], chance: 0 },
  )
}

/** Of what no look distinguishes, the commonest first. */
const commonestFirst = (one: Fault, other: Fault): number => howCommon[other.kind] - howCommon[one.kind]

const kindOf = ({ ways }: PlaceFinding): Answer['kind'] => {
  const [first] = ways[0]?.causes ?? []
  return first === 'card.out' ? 'noCard' : first === 'other' ? 'unknown' : 'faults'
}

/** The places that may be wrong, ready to be sent; where none likely is, that nothing is wrong comes first. */
export const answersOf = (query: Query, finding: Finding): Answer[] => {
  const shown = shownByLikeliest(query, finding)
  const named = finding.places
    .filter((place) => place.wrong >= sent.probability && isSpokenOf(place))
    .slice(0, sent.answers)
  const answers = named.map((place): Answer => ({
    kind: kindOf(place),
    place: place.place,
    ways: place.ways
      .filter(({ probability }) => probability >= leastShare * place.wrong)
      .flatMap(({ causes }) => causes.flatMap((cause) => faultOfCause(cause) ?? []).sort(commonestFirst))
      .slice(0, sent.ways)
      .map((fault) => [fault]),
    probability: place.wrong,
    shown,
    speaking: speakingFor(query, finding, place.place),
  }))
  const right = named.reduce((product, { wrong }) => product * (1 - wrong), 1)
  return right < 0.5
    ? answers
    : [{ kind: 'sound', place: null, ways: [], probability: right, shown, speaking: [] }, ...answers]
}
