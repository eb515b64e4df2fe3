import type { Condition, TurnFaults } from './condition.ts'
import type { Fault } from './fault.ts'
import { measureOfColumn, slotOf } from './indices.ts'
import { holeKey, pinStates, stripStates } from './states.ts'

/**
 * What a fault does to the machine. `holes` and `turns` are the ones that the condition reads. A new kind of fault
 * does not compile until it has its effect here.
 */
export const applyFault = (
  c: Condition,
  fault: Fault,
  holes: Map<number, boolean>,
  turns: Readonly<Record<keyof TurnFaults, Set<number>>>,
): void => {
  switch (fault.kind) {
    case 'card.torn':
    case 'card.blocked':
      holes.set(holeKey(...fault.at), fault.kind === 'card.torn')
      break
    case 'card.side':
      c.cardSide += fault.amount
      break
    case 'card.skew':
      c.cardSkew += fault.amount
      break
    case 'card.reversed':
      c.cardReversed = true
      break
    case 'card.locked':
      c.cardLocked = true
      break
    case 'pawl.right':
      c.pawlDead.right = true
      break
    case 'pawl.left':
      c.pawlDead.left = true
      break
    case 'pawl.double':
      c.pawlDouble = true
      break
    case 'turn.short':
      turns.short.add(fault.at[0])
      break
    case 'pawl.skips':
      turns.skipped.add(fault.at[0])
      break
    case 'pawl.jumps':
      turns.jumped.add(fault.at[0])
      break
    case 'turn.twice':
      c.turnTwice = true
      break
    case 'pin.low':
      c.pinStuck[fault.at[0] - 1] = pinStates.low
      break
    case 'pin.high':
      c.pinStuck[fault.at[0] - 1] = pinStates.high
      break
    case 'pin.sticky':
      c.pinSticky[fault.at[0] - 1] = fault.amount
      break
    case 'pin.over':
      c.pinOver[fault.at[0] - 1] = 1
      break
    case 'sweep.worn':
      c.sweepEdge += fault.amount
      break
    case 'belt.timing':
      c.timing += fault.amount
      break
    case 'belt.slack':
      c.slack += fault.amount
      break
    case 'belt.off':
      c.beltOff = true
      break
    case 'pivots.loose':
      c.pivotsLoose = fault.amount
      break
    case 'rocker.dead':
      c.rockerDead[fault.at[0] - 1] = 1
      break
    case 'rocker.worn':
      c.lost[fault.at[0] - 1] = measureOfColumn(c.lost, fault.at[0]) + fault.amount
      break
    case 'strip.seized':
      c.stripStuck[fault.at[0] - 1] = stripStates.seized
      break
    case 'strip.over':
      c.stripStuck[fault.at[0] - 1] = stripStates.over
      break
    case 'strip.slow':
      c.stripReturn[fault.at[0] - 1] = fault.amount
      break
    case 'carriage.plain':
      c.carriagePlain = true
      break
    case 'catch.broken':
      c.catchBroken[slotOf(fault.at[0], c.dimensions.needles)] = 1
      break
    case 'needle.bent':
      c.needleBent[slotOf(fault.at[0], c.dimensions.needles)] = 1
      break
    case 'needle.gone':
      c.needleGone[slotOf(fault.at[0], c.dimensions.needles)] = 1
      break
    case 'presser.right.worn':
      c.presser.right -= fault.amount
      break
    case 'presser.left.worn':
      c.presser.left -= fault.amount
      break
    case 'needle.stiff':
      c.needleStiff[slotOf(fault.at[0], c.dimensions.needles)] = fault.amount
      break
    case 'retainer.worn':
      c.retainer = fault.amount
      break
    case 'gate.1.low':
      c.gate1 += fault.amount
      break
    case 'gate.1.high':
      c.gate1 -= fault.amount
      break
    default:
      fault satisfies never
  }
}
