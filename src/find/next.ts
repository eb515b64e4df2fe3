import { wayOfPass } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { at } from '../mechanism/lookup.ts'
import { slowHand, speeds } from './battery.ts'
import { type CheckOutcome, outcomesOf, type RequestedPass, passOfView } from './check-outcomes.ts'
import {
  type CautionId,
  type Check,
  type CheckId,
  checkOf,
  opensMachine,
  type PartCheck,
  partChecks,
} from './checks.ts'
import { componentsOf, doubtfulNeedles, needlesByState } from './components.ts'
import { drawMachines } from './draw-machines.ts'
import type { Finding } from './finding.ts'
import { hypothesesOf } from './hypotheses.ts'
import type { Inference } from './infer.ts'
import { bitsOfPart, findsWide } from './part-bits.ts'
import { bitsOfPasses, type Settled, type Weighing } from './pass-bits.ts'
import { kindOfCause } from './place.ts'
import { possiblePasses } from './possible-looks.ts'
import type { Query } from './query.ts'
import type { View } from './view.ts'

/** A check worth making next, with what it would settle. */
export interface NextLook {
  readonly check: CheckId
  /** How much it settles on average about which places are wrong, in bits. */
  readonly bits: number
  readonly minutes: number
  readonly opened: Check['opened']
  readonly cautions: readonly CautionId[]
  /** The pass to make; null where it looks at a part. */
  readonly pass: RequestedPass | null
  /** What it may show, that of a sound machine first. */
  readonly outcomes: readonly CheckOutcome[]
}

/** So many machines are drawn, always by the same seed: the same notes have the same next looks. */
const drawn = { machines: 160, seed: 1 } as const

/** Bits below this are no reason for a check. */
const worthwhile = 0.005

/** As long as a look that opens nothing gives so many bits, whatever opens the machine comes after all that doesn't. */
const worthStayingClosed = 0.02

/** Where something hides the rest of the bed, looks count only for what they settle of that, while one that opens nothing settles so many bits. */
const worthSettlingFirst = 0.1

/** From this chance on a place, or that one of some is wrong, is nearly sure, and what shows it by hand or eye comes first. */
const nearlySure = 0.85
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

/** How sure the surest place is that a check shows by hand or eye, in its likeliest way. */
const surestShown = ({ places }: Finding, check: PartCheck): number =>
  places.find(({ ways }) =>
    (ways[0]?.causes ?? []).some((cause) => {
      const kind = kindOfCause(cause)
      return kind !== null && check.shows.includes(kind)
    }),
  )?.wrong ?? 0

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

/** Causes that reach the whole bed and yet hide nothing of the rest. */
const plainCauses: ReadonlySet<string> = new Set(['retainer.worn', 'pivots.loose'])

/** Whether something that reaches the whole bed is nearly sure: until it is known what, the rest can't be told. */
const hidesRest = ({ components }: Weighing): boolean => {
  const [wide] = components
  if (!wide) return false
  const hides = wide.causes.map((own) => own.some((cause) => !plainCauses.has(kindOfCause(cause) ?? '')))
  return wide.labels.filter((label) => hides[label]).length >= nearlySure * wide.labels.length
}

/** Every look that can be made after a query's passes, with what it would settle. */
const ratedOf = (query: Query, finding: Finding, weighing: Weighing): Rated[] => {
  const passes = possiblePasses(query)
  const looks = passes.map(({ view }) => ({ view, way: wayOfPass(view.pass), noted: unnoted }))
  const ofPasses = bitsOfPasses(weighing, looks, drawn.seed)
  const parts = partChecks.map((check) => ({ check, settled: bitsOfPart(check, weighing) }))
  const made = new Set(query.checks.map(({ check }) => check))
  const closed = parts.filter(({ check }) => !opensMachine(check) && !made.has(check.id))
  const wideFirst =
    hidesRest(weighing) &&
    [...ofPasses, ...closed.map(({ settled }) => settled)].some(({ wide }) => wide >= worthSettlingFirst)
  const bitsOf = ({ wide, all }: Settled): number => (wideFirst ? wide : all)
  return [
    ...passes.map(({ check, view, minutes }, n): Rated => ({
      check: checkOf(check),
      view,
      bits: bitsOf(at(ofPasses, n)),
      minutes,
      shows: 0,
    })),
    ...parts.map(({ check, settled }): Rated => ({
      check,
      view: null,
      bits: bitsOf(settled),
      minutes: check.minutes,
      shows: Math.max(surestShown(finding, check), findsWide(check, weighing)),
    })),
  ]
}

/** No needle of a pass that is still to be made is noted. */
const unnoted = new Uint8Array(dimensions.needles)

/**
 * The checks worth making next, in their order (see `inOrder`), by what each would settle in machines drawn from what is
 * still possible. What the query has as made is left out, and so is what settles nothing; where nothing is left to
 * settle, there is what would show the likeliest place by hand or eye.
 */
export const nextLooks = (query: Query, { finding, beds }: Inference): NextLook[] => {
  const machines = drawMachines(beds, drawn.machines, drawn.seed)
  const weighing: Weighing = {
    machines,
    components: componentsOf(machines, drawn.seed),
    needles: doubtfulNeedles(beds),
    byState: needlesByState(beds),
    slip: query.slip,
    columnOne: query.columnOne,
  }
  const hypotheses = hypothesesOf(finding)
  return inOrder(query, finding, ratedOf(query, finding, weighing)).map(({ check, view, bits, minutes }) => ({
    check: check.id,
    bits,
    minutes,
    opened: check.opened,
    cautions: check.cautions,
    pass: view && passOfView(view),
    outcomes: outcomesOf(check, view, hypotheses),
  }))
}
