import { slowHand, speeds } from './battery.ts'
import { type Check, opensMachine } from './checks.ts'
import type { Finding } from './finding.ts'
import type { Query } from './query.ts'
import type { View } from './view.ts'

/** Bits below this are no reason for a check. */
const worthwhile = 0.005

/** As long as a look that opens nothing gives so many bits, whatever opens the machine comes after all that doesn't. */
const worthStayingClosed = 0.02

/** From this chance on a place, or that one of some is wrong, is nearly sure, and what shows it by hand or eye comes first. */
export const nearlySure = 0.85
/** From this chance on a place is likelier wrong than right. */
const likely = 0.5

/** Where the oil is older than fresh with this chance, the cheap look that settles most comes first; cheap is at most so many minutes. */
const oldOil = { chance: 0.5, minutes: 2 } as const

/** A look that may be made next: its check, its pass if it is one, and what it would settle. */
export interface Rated {
  readonly check: Check
  readonly view: View | null
  readonly bits: number
  readonly minutes: number
  /** How sure a place is that it shows by hand or eye: 0 for a pass. */
  readonly shows: number
}

/** Bits for the minutes and the risk. */
const ease = ({ check, bits, minutes }: Rated): number => bits / minutes / check.risk
const riskOfOpening = ({ check }: Rated): number => (opensMachine(check) ? check.risk : 0)

const isFast = ({ view }: Rated): boolean => view !== null && view.speed > speeds.ordinary
const isSlow = ({ view }: Rated): boolean => view !== null && view.speed <= slowHand

/** Of the looks of each check the one that is most worth making, at whatever row and speed. */
const bestOfEach = (rated: readonly Rated[]): Rated[] =>
  [...Map.groupBy(rated, ({ check }) => check.id).values()].map((same) =>
    same.reduce((best, one) => (ease(one) > ease(best) ? one : best)),
  )

/** Looks without fast passes; the slow one that must run freely first counts as much as the best of those. */
const slowFirst = (
  query: Query,
  rated: readonly Rated[],
): { looks: readonly Rated[]; slow: Rated | null } => {
  const isReady = query.passes.some(({ speed }) => speed <= slowHand)
  const fast = rated.filter(isFast)
  if (isReady || fast.length === 0) return { looks: rated, slow: null }
  const looks = rated.filter((one) => !isFast(one))
  const slow =
    looks.find(({ check }) => check.id === 'row-slow') ??
    looks
      .filter(isSlow)
      .reduce<Rated | null>((best, one) => (best && ease(best) >= ease(one) ? best : one), null)
  const most = fast.reduce((best, one) => (ease(one) > ease(best) ? one : best))
  if (!slow || most.bits < worthwhile) return { looks, slow: null }
  // The slow pass and the fast one after it take their minutes together.
  const together = (most.bits * slow.minutes) / (most.minutes + slow.minutes)
  const leading = { ...slow, bits: Math.max(slow.bits, together) }
  return { looks: [...looks.filter((one) => one.check.id !== slow.check.id), leading], slow }
}

/** Whether a needle was seen not to move, and nobody has looked for what broke: then nothing may move before that. */
const mustStop = ({ passes, checks: made }: Query): boolean =>
  passes.some(({ needles }) => needles.includes('u')) && !made.some(({ check }) => check === 'broken-piece')

/** The cheap look that opens nothing and settles most, where the oil is likely old: it explains most at once. */
const explainsMost = ({ oil }: Finding, rated: readonly Rated[]): Rated | null => {
  if (oil.old + oil.set <= oldOil.chance) return null
  const cheap = rated.filter(({ check, minutes }) => !opensMachine(check) && minutes <= oldOil.minutes)
  return cheap.reduce<Rated | null>((best, one) => (best && best.bits >= one.bits ? best : one), null)
}

/**
 * Looks in the order in which to make them: where a needle did not move only that its piece is found. Else what shows by hand or
 * eye a place that is nearly sure; with old oil the cheap one that settles most; then by the bits for the minutes and the risk, of
 * as much the shorter. What opens the machine comes after all that doesn't while any of those settles anything, the
 * card reader last of all; no pass is fast before a slow one has run freely.
 */
export const inOrder = (query: Query, finding: Finding, rated: readonly Rated[]): Rated[] => {
  if (mustStop(query)) return rated.filter(({ check }) => check.id === 'broken-piece')
  const made = new Set(query.checks.map(({ check }) => check))
  const open = rated.filter(({ check }) => !made.has(check.id))
  const { looks, slow } = slowFirst(query, open)
  const confirms = (one: Rated): boolean => !opensMachine(one.check) && one.shows >= nearlySure
  const settling = bestOfEach(looks.filter((one) => one.bits >= worthwhile || confirms(one)))
  const left = settling.length > 0 ? settling : open.filter(({ shows }) => shows > likely)
  const staysClosed = left.some(({ check, bits }) => !opensMachine(check) && bits >= worthStayingClosed)
  const most = explainsMost(finding, left)
  const isLast = (one: Rated): boolean => one.check.id === 'reader'
  return left
    .sort(
      (one, other) =>
        Number(isLast(one)) - Number(isLast(other)) ||
        (staysClosed ? riskOfOpening(one) - riskOfOpening(other) : 0) ||
        Number(confirms(other)) - Number(confirms(one)) ||
        Number(other === most) - Number(one === most) ||
        ease(other) - ease(one) ||
        one.minutes - other.minutes,
    )
    .map((one) => (slow && one.check.id === slow.check.id ? slow : one))
}
