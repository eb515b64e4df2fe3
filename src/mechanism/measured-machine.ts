import { type Way, wholeBedOf } from './bed.ts'
import { everyHole } from './card.ts'
import type { Fault } from './fault.ts'
import { marginSlopes } from './margin-slopes.ts'
import { type Margin, type MarginId, margins } from './margins.ts'
import {
  type Measured,
  type MeasuredSlopes,
  measuredSlopes,
  type MeasurementName,
  measurementNames,
  ownOf,
  stackUp,
  type Uncertainty,
} from './measurement.ts'
import { dimensionsOf } from './own.ts'
import { normalCdf } from './normal.ts'
import { type Run, startRun } from './pass.ts'
import { soundScenario } from './scenario.ts'

/** What was measured of a machine, how exact each value is (±, in its unit), and the carriage's speed in mm/s. */
export interface MeasuredMachine {
  readonly measured: Measured
  readonly exact: Measured
  readonly speed: number
}

/** The faults of a machine that are measured: the belt's play, and how far out of step it is. */
export const measuredFaults = ({ slack = 0, timing = 0 }: Measured): Fault[] => [
  ...(slack > 0 ? [{ kind: 'belt.slack', at: [], amount: slack } as const] : []),
  ...(timing !== 0 ? [{ kind: 'belt.timing', at: [], amount: timing } as const] : []),
]

/** A machine as it was measured, with a card of holes only. */
export const measuredRun = ({ measured, speed }: Omit<MeasuredMachine, 'exact'>): Run =>
  startRun({
    ...soundScenario([everyHole]),
    own: ownOf(measured),
    bed: wholeBedOf(dimensionsOf(ownOf(measured)).needles),
    faults: measuredFaults(measured),
    speed,
  })

/** A margin, how far it may be out, and what makes most of that. */
export interface MeasuredMargin extends Margin, Uncertainty {
  /** The measurement because of which it may be out most; null where nothing was measured that it depends on. */
  readonly most: MeasurementName | null
  /** Whether anything was measured that it depends on. */
  readonly isMeasured: boolean
}

const partsOf = (slopes: MeasuredSlopes, exact: Measured): (readonly [MeasurementName, number])[] =>
  measurementNames.flatMap((name) => {
    const part = Math.abs(slopes[name] ?? 0) * (exact[name] ?? 0)
    return part > 0 ? [[name, part] as const] : []
  })

/** The margins of a machine as it was measured, in a pass of this way; each with what its uncertainty comes to. */
export const measuredMargins = (machine: MeasuredMachine, way: Way): MeasuredMargin[] => {
  const run = measuredRun(machine)
  const slopes = marginSlopes(run, way)
  return margins(run, way).map((margin) => {
    const own = measuredSlopes(slopes[margin.id], machine.measured)
    const parts = partsOf(own, machine.exact)
    const [most = null] = parts.toSorted((one, other) => other[1] - one[1])
    return {
      ...margin,
      ...stackUp(parts.map(([, part]) => part)),
      most: most && most[0],
      isMeasured: Object.keys(own).length > 0,
    }
  })
}

/** The margins that must be left for a needle under a hole to be selected; the others keep the rest from it. */
const forSelection: readonly MarginId[] = [
  'hole',
  'highPin',
  'push',
  'dip',
  'held',
  'heldUnderFirst',
  'heldOverSecond',
]

/**
 * Between which two chances, 0 to 1, it lies that a needle under a hole is selected. What a value may be out by counts as
 * two deviations of a normal draw. Margins share measurements, so only bounds are known: at most the chance of the margin
 * that is likeliest to fail, at least 1 less the chances of all that any fails.
 */
export const selectionBounds = (
  all: readonly MeasuredMargin[],
): { readonly least: number; readonly most: number } => {
  const chances = all
    .filter(({ id }) => forSelection.includes(id))
    .map(({ mm, likely }) => (likely === 0 ? Number(mm >= 0) : normalCdf((2 * mm) / likely)))
  const failing = chances.reduce((sum, chance) => sum + 1 - chance, 0)
  return { least: Math.max(0, 1 - failing), most: Math.min(...chances) }
}
