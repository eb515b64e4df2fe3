import { carriage } from './carriage.ts'
import { card, feed } from './card.ts'
import { frame } from './frame.ts'
import type { MachinePiece } from './part.ts'
import { pins } from './pins.ts'
import { bed } from './bed.ts'
import { needles, retainer } from './needles.ts'
import type { Pose } from './pose.ts'
import { rockers } from './rockers.ts'
import { strips } from './strips.ts'
import { sweepAndBelt } from './sweep.ts'

/** All pieces of the drawn machine in a pose: always as many, in the same order. */
export const machine = (pose: Pose): MachinePiece[] => [
  ...card(pose),
  ...feed(pose),
  ...sweepAndBelt(pose),
  ...pins(pose),
  ...rockers(pose),
  ...frame(pose),
  ...strips(pose),
  ...needles(pose),
  ...retainer(pose),
  ...bed(),
  ...carriage(pose),
]
