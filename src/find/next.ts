import { wayOfPass } from '../mechanism/bed.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
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
import { inOrder, nearlySure, type Rated } from './look-order.ts'

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

/** Where something hides the rest of the bed, looks count only for what they settle of that, while one that opens nothing settles so many bits. */
const worthSettlingFirst = 0.1

/** How sure the surest place is that a check shows by hand or eye, in its likeliest way. */
const surestShown = ({ places }: Finding, check: PartCheck): number =>
  places.find(({ ways }) =>
    (ways[0]?.causes ?? []).some((cause) => {
      const kind = kindOfCause(cause)
      return kind !== null && check.shows.includes(kind)
    }),
  )?.wrong ?? 0

/** Causes that reach the whole bed and yet hide nothing of the rest. */
const plainCauses: ReadonlySet<string> = new Set(['retainer.worn', 'pivots.loose'])

/** Whether something that reaches the whole bed is nearly sure: until it is known what, the rest can't be known. */
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
const unnoted = new Uint8Array(bedLengths.most)

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
