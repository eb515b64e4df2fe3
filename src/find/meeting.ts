import type { Dimensions } from '../mechanism/dimensions.ts'
import { normalCdf } from '../mechanism/normal.ts'
import { scatter, wornDimensions } from '../mechanism/wear.ts'
import { wearChances } from './chances.ts'

/**
 * By wear: the chance that the dip of a butt still meets its catch, and that the catch keeps it low enough; of a presser whose
 * dips differ by side, that of the shallower.
 */
const meetsIn = (dimensions: Dimensions): number[] =>
  wearChances.map(({ wear }) => {
    const { catchDepth, gate1 } = dimensions
    const deviation = Math.hypot(scatter(wear).catch, scatter(wear).butt)
    if (deviation === 0) return 1
    const { presser } = wornDimensions(dimensions, wear)
    const dip = Math.min(presser.right, presser.left)
    const [reached, tooHigh] = [dip, gate1].map((edge) => normalCdf((edge - catchDepth) / deviation))
    return Math.max(0, reached! - tooHigh!)
  })

/** Below this the chance that a dip misses is left out of the sums. */
const slight = 1e-4

/** Wears whose dips are weighed together, by index in their table, and the chance that theirs meet. */
export interface MeetingClass {
  readonly meets: number
  readonly wears: readonly number[]
}

/** All wears in classes, those whose dips all meet first. */
export const meetingClasses = (dimensions: Dimensions): MeetingClass[] => {
  const meetsBy = meetsIn(dimensions)
  const missing = meetsBy.map((meets) => 1 - meets >= slight)
  const all = [...meetsBy.keys()]
  return [
    { meets: 1, wears: all.filter((wear) => !missing[wear]) },
    ...all.filter((wear) => missing[wear]).map((wear) => ({ meets: meetsBy[wear]!, wears: [wear] })),
  ]
}

/** All wears as one, where no dip is offered a hold. */
export const oneClass: MeetingClass = { meets: 1, wears: [...wearChances.keys()] }
