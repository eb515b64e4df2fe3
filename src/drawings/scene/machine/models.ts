import { apartMachine } from './apart.ts'
import { machine } from './machine.ts'
import type { MachinePiece } from './part.ts'
import type { Pose } from './pose.ts'
import { rowMachine } from './row.ts'
import { wholeMachine } from './whole.ts'

/** The ways in which the machine is laid out: a stretch of its bed in its place, the whole of it, taken apart, and cut along the card's row. */
export const modelNames = ['stretch', 'whole', 'apart', 'row'] as const
export type ModelName = (typeof modelNames)[number]

/** All pieces of each in a pose: always as many, in the same order. */
export const models: Readonly<Record<ModelName, (pose: Pose) => MachinePiece[]>> = {
  stretch: machine,
  whole: wholeMachine,
  apart: apartMachine,
  row: rowMachine,
}
