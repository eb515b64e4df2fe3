import { faultId } from '../mechanism/fault.ts'
import { speeds } from './battery.ts'
import { type CheckOutcome, outcomesOf, type RequestedPass, passOfView } from './check-outcomes.ts'
import { viewOfCheck } from './check-views.ts'
import {
  type CautionId,
  type Check,
  type CheckId,
  checks,
  opensMachine,
  type PartCheck,
  partChecks,
} from './checks.ts'
import { signatureOf } from './dictionary.ts'
import { type Hypothesis, hypothesesOf } from './hypotheses.ts'
import type { Finding } from './finding.ts'
import { shownByMachine } from './machine-bed.ts'
import { codes } from './packed-change.ts'
import { faultOfCause } from './place.ts'
import { kindAndPlace, type Query } from './query.ts'
import { type Setting, settingOf, type Shown } from './shown.ts'
import { soundBeds } from './sound.ts'
import type { View } from './view.ts'

/** A check worth making next, with what it would settle. */
export interface NextLook {
  readonly check: CheckId
  /** How much it settles on average about which fault it is, in bits. */
  readonly bits: number
  readonly minutes: number
  readonly opened: Check['opened']
  readonly cautions: readonly CautionId[]
  /** The pass to make; null where it looks at a part. */
  readonly pass: RequestedPass | null
  /** What it may show, that of a sound machine first. */
  readonly outcomes: readonly CheckOutcome[]
}

/** Entropy in bits of shares, which need not add up to 1. */
export const entropy = (shares: Iterable<number>): number => {
  const all = [...shares].filter((share) => share > 0)
  const whole = all.reduce((sum, share) => sum + share, 0)
  return all.reduce((bits, share) => bits - (share / whole) * Math.log2(share / whole), 0)
}

/**
 * How much an answer tells about hypotheses, in bits: as each hypothesis settles its answer, that is the entropy of the
 * answers. Slips in noting the answer are left out, so it is the most that the check can tell.
 */
export const bitsOf = (hypotheses: readonly Hypothesis[], answers: readonly string[]): number => {
  const shares = new Map<string, number>()
  for (const [n, { probability }] of hypotheses.entries())
    shares.set(answers[n]!, (shares.get(answers[n]!) ?? 0) + probability)
  return entropy(shares.values())
}

/** What a hand or an eye on the parts finds: which part, and what it does, but not how much. */
const partAnswer = ({ shows }: PartCheck, { faults }: Hypothesis): string =>
  faults
    .filter(({ kind }) => shows.includes(kind))
    .map((fault) => kindAndPlace(fault))
    .sort()
    .join(' ')

/** So many needles late, on average, are seen to be scattered; fewer look like a sound bed. */
const scattered = 3

const lookAnswer = ({ changed, chance }: Shown, { sound }: Setting): string => {
  const plain = sound.codes.reduce((count, code) => count + (code === codes.plain ? 1 : 0), 0)
  return signatureOf([{ changed, chance: 0 }]) + (chance * plain >= scattered ? ' scattered' : '')
}

/** What each hypothesis would show in some views: by view, a text for each hypothesis. */
const viewAnswers = (views: readonly View[], hypotheses: readonly Hypothesis[]): string[][] => {
  const beds = soundBeds()
  return views.map((view) => {
    const setting = settingOf(view, beds)
    const known = new Map<string, string>()
    return hypotheses.map((hypothesis) => {
      const key = hypothesis.faults.map(faultId).join() + String(hypothesis.hasCard)
      let answer = known.get(key)
      if (answer === undefined)
        known.set(key, (answer = lookAnswer(shownByMachine(hypothesis, setting), setting)))
      return answer
    })
  })
}

/** Bits below this are no reason for a check. */
const worthwhile = 0.005

/** A check with the view that its pass takes, if it is a pass, and the answers that hypotheses give. */
interface Candidate {
  readonly check: Check
  readonly view: View | null
  readonly answers: readonly string[]
}

interface Rated extends Omit<Candidate, 'answers'> {
  readonly bits: number
  /** Whether it would show the likeliest fault itself. */
  readonly confirms: boolean
}

const ease = ({ check, bits }: Rated): number => bits / check.minutes / check.risk
const riskOfOpening = ({ check }: Rated): number => (opensMachine(check) ? check.risk : 0)

/** Checks that settle something; where nothing is left to settle, those that find the likeliest fault by hand or eye. */
const worthMaking = (rated: readonly Rated[]): Rated[] => {
  const settling = rated.filter(({ bits }) => bits >= worthwhile)
  return settling.length > 0 ? settling : rated.filter(({ confirms }) => confirms)
}

/** Every check that can be made after a query's passes, with the answers of all hypotheses. */
const candidatesOf = (query: Query, hypotheses: readonly Hypothesis[]): Candidate[] => {
  const passes = checks.flatMap((check) => {
    const view = check.kind === 'pass' ? viewOfCheck(check.id, query) : null
    return view ? [{ check, view }] : []
  })
  const answers = viewAnswers(
    passes.map(({ view }) => view),
    hypotheses,
  )
  return [
    ...passes.map((pass, n) => ({ ...pass, answers: answers[n]! })),
    ...partChecks.map((check) => ({
      check,
      view: null,
      answers: hypotheses.map((hypothesis) => partAnswer(check, hypothesis)),
    })),
  ]
}

/** From this chance on one place is nearly sure, and what shows it by hand or eye comes first. */
const nearlySure = 0.85

/** Whether a check shows the place that is nearly sure, without opening anything. */
const confirmsPlace = ({ places }: Finding, { check }: Rated): boolean => {
  const [first] = places
  if (!first || first.wrong < nearlySure || check.kind === 'pass' || opensMachine(check)) return false
  return (first.ways[0]?.causes ?? []).some((cause) => {
    const fault = faultOfCause(cause)
    return fault !== null && check.shows.includes(fault.kind)
  })
}

const isFast = ({ view }: Rated): boolean => view !== null && view.speed > speeds.ordinary

/** Checks in which no pass is fast before a slow one has run freely: until then a slow one stands where the first fast one would. */
const slowFirst = (query: Query, ordered: readonly Rated[], all: readonly Rated[]): Rated[] => {
  const isReady = query.passes.some(({ speed }) => speed <= speeds.slow)
  if (isReady || !ordered.some(isFast)) return [...ordered]
  const slow = all.find(({ check }) => check.id === 'row-slow')
  const place = ordered.findIndex((one) => isFast(one) || one === slow)
  const others = ordered.filter((one) => !isFast(one) && one !== slow)
  return [...others.slice(0, place), ...(slow ? [slow] : []), ...others.slice(place)]
}

/** Whether a needle was seen not to move, and nobody has looked for what broke: then nothing may move before that. */
const mustStop = ({ passes, checks: made }: Query): boolean =>
  passes.some(({ needles }) => needles.includes('u')) && !made.some(({ check }) => check === 'broken-piece')

/**
 * The checks worth making next, best first: by the bits that each would settle for its minutes and its risk. Whatever
 * opens the machine comes after all that doesn't, and the card reader last of all. What the query has as made is left out.
 * What shows a place that is nearly sure comes first of what leaves the machine closed.
 * No fast pass comes before a slow one, and where a needle did not move there is nothing but to stop and look for the piece.
 */
export const nextLooks = (query: Query, finding: Finding): NextLook[] => {
  const hypotheses = hypothesesOf(finding)
  const rated = candidatesOf(query, hypotheses).map(({ check, view, answers: given }): Rated => ({
    check,
    view,
    bits: bitsOf(hypotheses, given),
    confirms: check.kind === 'part' && given[0] !== '',
  }))
  const made = new Set(query.checks.map(({ check }) => check))
  const ordered = mustStop(query)
    ? rated.filter(({ check }) => check.id === 'broken-piece')
    : worthMaking(rated)
        .filter(({ check }) => !made.has(check.id))
        .sort(
          (one, other) =>
            riskOfOpening(one) - riskOfOpening(other) ||
            Number(confirmsPlace(finding, other)) - Number(confirmsPlace(finding, one)) ||
            ease(other) - ease(one),
        )
  return slowFirst(query, ordered, rated).map(({ check, view, bits }) => ({
    check: check.id,
    bits,
    minutes: check.minutes,
    opened: check.opened,
    cautions: check.cautions,
    pass: view && passOfView(view),
    outcomes: outcomesOf(check, view, hypotheses),
  }))
}
