import { bareFaultId } from '../mechanism/fault.ts'
import { needleName } from '../mechanism/bed.ts'
import { toColumn, toStrip } from '../mechanism/indices.ts'
import { checkErrors } from './chances.ts'
import { type Experience, type ExperienceOfCauses, experienceOfCauses } from './experience.ts'
import { type IntakeAnswer, intakeFactors, type IntakeFactors } from './intake.ts'
import { type CheckId, checkOf, type PartCheck } from './checks.ts'
import { type Cause, faultOfCause, kindOfCause } from './place.ts'
import type { CheckMade } from './query.ts'
import { possibleNeedles } from './bed-needles.ts'

/** How likely what was found by hand is, of something with this cause; `Sound` of what is right there. */
interface Report {
  readonly kinds: PartCheck['shows']
  readonly found: string | null
  readonly error: number
}

const touched: ReadonlySet<string> = new Set<CheckId>(['strips', 'pins', 'needle'])

/** Chance that a check by hand says the wrong thing. */
export const errorOf = (check: CheckId): number =>
  touched.has(check) ? checkErrors.touched : checkErrors.seen

const reportOf = ({ check, found }: CheckMade): Report[] => {
  const made = checkOf(check)
  if (made.kind !== 'part') return []
  return [
    {
      kinds: made.shows,
      found: found ? bareFaultId(found) : null,
      error: errorOf(check),
    },
  ]
}

const isShown = ({ kinds }: Report, cause: Cause): boolean => {
  const kind = kindOfCause(cause)
  return kind !== null && kinds.includes(kind)
}

/** A cause without its amount, as a check by hand finds it. */
const idOf = (cause: Cause): string => {
  const fault = faultOfCause(cause)
  return fault ? bareFaultId(fault) : cause
}

/**
 * How likely a report is, where a place is wrong by one of these causes. A check that found something says nothing of
 * other parts; one that found nothing says that all it shows is right.
 */
const ofCauses = (report: Report, causes: readonly Cause[]): number => {
  const each = causes.map((cause) => {
    if (!isShown(report, cause)) return report.found === null ? 1 - report.error : 1
    if (report.found === null) return report.error
    return idOf(cause) === report.found ? 1 - report.error : 1
  })
  return each.reduce((sum, chance) => sum + chance, 0) / each.length
}

/** How likely a report is of a place that is right, where these are what may be wrong with it. */
const ofRight = (report: Report, all: readonly Cause[]): number => {
  const shown = all.filter((cause) => isShown(report, cause))
  if (report.found === null) return shown.length > 0 ? 1 - report.error : 1
  return shown.some((cause) => idOf(cause) === report.found) ? report.error : 1
}

/** What was found by hand, what its owner said and what the repairer has seen herself, as factors of the chances of each place's states, of oil and of wear. */
export interface ByHand extends Pick<IntakeFactors, 'oil' | 'wear'>, Pick<ExperienceOfCauses, 'shares'> {
  readonly causes: (causes: readonly Cause[], all: readonly Cause[]) => number
  readonly right: (all: readonly Cause[]) => number
  readonly strips: readonly Readonly<Record<'right' | 'slow' | 'seized' | 'over', number>>[]
  readonly columns: readonly Readonly<Record<'right' | 'dead' | 'high' | 'over' | 'sticky', number>>[]
  /** By needle of `possibleNeedles`: right, no hold, stiff, gone. */
  readonly needles: readonly Readonly<Record<'right' | 'noHold' | 'stiff' | 'gone', number>>[]
}

const stripCausesOf = (strip: number): Record<'slow' | 'seized' | 'over', Cause[]> => ({
  slow: [`strip.${strip}.slow=300`],
  seized: [`strip.${strip}.seized`],
  over: [`strip.${strip}.over`],
})

const columnCausesOf = (column: number): Record<'dead' | 'high' | 'over' | 'sticky', Cause[]> => ({
  dead: [`pin.${column}.low`, `rocker.${column}.dead`],
  high: [`pin.${column}.high`],
  over: [`pin.${column}.over`],
  sticky: [`pin.${column}.sticky=0.5`],
})

/** What may be wrong with a needle and its catch. */
const needleCausesOf = (name: `L${number}` | `R${number}`): Record<'noHold' | 'stiff' | 'gone', Cause[]> => ({
  noHold: [`catch.${name}.broken`, `needle.${name}.bent`],
  stiff: [`needle.${name}.stiff`],
  gone: [`needle.${name}.gone`],
})

/** The factors of everything that was found by hand, of what the owner answered, and of her own experience. */
export const byHandOf = (
  checks: readonly CheckMade[],
  answers: readonly IntakeAnswer[] = [],
  experience: Experience = {},
): ByHand => {
  const factors = intakeFactors(answers)
  const seen = experienceOfCauses(experience)
  const reports = checks.flatMap(reportOf)
  const causes = (own: readonly Cause[], all: readonly Cause[]): number => {
    const before = seen.factor(own) * (own.reduce((sum, cause) => sum + factors.cause(cause), 0) / own.length)
    return reports.reduce((product, report) => {
      // A hand finds no amounts, so that other amounts of the same are no other thing.
      const ids = new Set(own.map(idOf))
      const others = all.filter((cause) => !ids.has(idOf(cause)))
      return product * ofCauses(report, own) * (report.found === null ? 1 : ofRight(report, others))
    }, before)
  }
  const right = (all: readonly Cause[]): number =>
    reports.reduce((product, report) => product * ofRight(report, all), 1)
  const table = <State extends string>(by: Record<State, Cause[]>): Record<State | 'right', number> => {
    const all = Object.values<Cause[]>(by).flat()
    const entries = (Object.keys(by) as State[]).map((state) => [state, causes(by[state], all)] as const)
    return Object.fromEntries([['right', right(all)], ...entries]) as Record<State | 'right', number>
  }
  return {
    causes,
    right,
    oil: factors.oil,
    wear: factors.wear,
    shares: seen.shares,
    strips: Array.from({ length: 8 }, (_, n) => table(stripCausesOf(toStrip(n + 1)))),
    columns: Array.from({ length: 24 }, (_, n) => table(columnCausesOf(toColumn(n + 1)))),
    needles: possibleNeedles.map((needle) => table(needleCausesOf(needleName(needle)))),
  }
}
