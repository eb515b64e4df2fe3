import { earlyWindow, lateWindow, lateWindowOf } from '../mechanism/closed-forms.ts'
import { type Dimensions, dimensions as training } from '../mechanism/dimensions.ts'
import { holeClearance } from '../mechanism/pin.ts'
import { neededPush } from '../mechanism/rocker.ts'
import { biteForPush } from '../mechanism/sweep.ts'
import { wideAmounts } from './chances.ts'

/** How far a part has to be out before it fails, in mm, on a machine of some dimensions. */
const marginsOf = (of: Dimensions) => ({
  side: holeClearance(of),
  gateHigh: of.gate1,
  gateLow: Math.max(of.presserRight, of.presserLeft) - of.gate1,
  sweep: of.pinHigh - of.sweepEdge - biteForPush(of, neededPush(of)),
})

const trainings = marginsOf(training)

/** An amount as ids write it, to a hundredth, and never none. */
const written = (amount: number): number => Math.max(0.05, Math.round(amount * 100) / 100)

/**
 * By how much what reaches the whole bed is out where it fails: `wideAmounts` of the training machine, and as far past the
 * margin on a machine of other dimensions. Needles for the belt, mm for the rest.
 */
export const amountsFor = (of: Dimensions) => {
  const margins = marginsOf(of)
  const past = (name: keyof typeof margins): number =>
    written(wideAmounts[name] + margins[name] - trainings[name])
  const dip = (wideAmounts.wornDip * of.catchDepth) / training.catchDepth
  const late = lateWindowOf(of)
  const betweenWindows = (late + earlyWindow(training.speed, of)) / 2
  return {
    side: past('side'),
    gateHigh: past('gateHigh'),
    gateLow: past('gateLow'),
    sweep: past('sweep'),
    presserRight: written(of.presserRight - dip),
    presserLeft: written(of.presserLeft - dip),
    beltOneWay: written(Math.min(wideAmounts.beltOneWay + late - lateWindow, betweenWindows)),
  }
}
