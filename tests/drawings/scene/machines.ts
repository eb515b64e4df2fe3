import type { Tree } from '@/drawings/scene/engine/tree.ts'
import { type ModelName, modelNames } from '@/drawings/scene/machine/models.ts'
import { type Pose, poseOf } from '@/drawings/scene/machine/pose.ts'
import { treeOfMachine } from '@/drawings/scene/scene.ts'
import { drawnDown } from '@/drawings/shared/turn.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { withDrawBar } from '@/mechanism/draw-bar.ts'

/** Rows whose holes are alone, side by side, and nowhere. */
const rows = [0b010001110001000111001011, 0xffffff, 0x000000, 0b101010101010101010101010]

/** The machine with these faults, in a pass, with the carriage at a place in needles. */
export const poseAt = (pass: number, x: number, faults: readonly string[] = [], hasCard = true): Pose => {
  const run = startRun({ ...soundScenario(hasCard ? rows : null), faults: faults.map(faultOf) })
  return poseOf(run, frameAt(run, pass, x))
}

/** The machine at a turn, with its draw bar so high, in mm, and its card so many rows behind. */
export const turnPose = (drawBar: number, cardRoll = 0, faults: readonly string[] = []): Pose => {
  const pose = poseAt(1, 211, faults)
  return { ...pose, frame: { ...withDrawBar(pose.frame, drawBar), cardRoll } }
}

/** Machines in many states: both ways, with and without holes, at rest, and with what can be seen to be broken. */
export const states: readonly (readonly [name: string, pose: Pose])[] = [
  ['one hole under the sweep', poseAt(1, 109.8)],
  ['a hole under the first gate', poseAt(1, 112.1)],
  ['every hole, to the left', poseAt(2, 109.3)],
  ['no hole', poseAt(3, 104.2)],
  ['every other hole, to the left', poseAt(4, 118.7)],
  ['no card', poseAt(1, 108.4, [], false)],
  ['far to the left', poseAt(1, 40)],
  ['strip 3 seized', poseAt(1, 109.8, ['strip.3.seized'])],
  ['strip 3 stuck over', poseAt(1, 104, ['strip.3.over'])],
  ['a catch broken', poseAt(1, 109.8, ['catch.R11.broken', 'catch.R1.broken', 'catch.R8.broken'])],
  ['a needle bent, one without a butt', poseAt(1, 109.8, ['needle.R11.bent', 'needle.R5.gone'])],
  ['rocker 11 broken', poseAt(1, 109.8, ['rocker.11.dead'])],
  ['pin 11 pushed over', poseAt(1, 116, ['pin.11.over'])],
  ['the card to the side and askew', poseAt(1, 109.8, ['card.side=1.2', 'card.skew=0.12'])],
  ['the carriage set to plain', poseAt(1, 109.8, ['carriage.plain'])],
  ['the draw bar on its way', turnPose(2)],
  ['all pins drawn down', turnPose(drawnDown)],
  ['the card a fifth of a row behind', turnPose(drawnDown, 0.2)],
  ['the card half a row behind, and askew', turnPose(drawnDown, 0.5, ['card.side=1.2', 'card.skew=0.12'])],
  ['the card more than a row behind', turnPose(drawnDown, 1.7)],
  ['the first gate low', poseAt(2, 109.8, ['gate.1.low=0.4'])],
]

/** The trees, which are the same for every state. */
export const trees = Object.fromEntries(
  modelNames.map((model) => [model, treeOfMachine(poseAt(1, 109.8), model)]),
) as Record<ModelName, Tree>
