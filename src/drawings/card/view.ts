import { sideOfTurn } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { stepsAtTurn } from '../../mechanism/turn.ts'
import { turnShown } from '../../words/figures/card.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { type CardLayout, layoutOf, layouts } from './layout.ts'

export type Side = 'left' | 'right'

/** The order of a turn. */
export const phases = ['pins down', 'card on', 'pins up'] as const
type Phase = (typeof phases)[number]

/** The parts of the roll in which the pins drop, the card steps and the pins rise. */
const share = { drop: 0.8, rise: 0.2 }

export interface CardView extends FigureView<CardLayout> {
  /** What the turn is at while the card steps; null where nothing steps. */
  readonly phase: Phase | null
  /** How far the pins have dropped, 0 to 1. */
  readonly drop: number
  /** How many rows the card has still to roll to the row being read. */
  readonly rows: number
  /** How far the pawl has still to push, as a share of its stroke, while the card steps; 0 afterwards. */
  readonly push: number
  /** How far the pawl still is from its rest after its push, as a share of its stroke. */
  readonly back: number
  /** The side of the turn shown, whether it is past, and by how many rows it steps the card. */
  readonly side: Side
  readonly isPast: boolean
  readonly steps: 0 | 1 | 2
}

const between = (value: number, low: number, high: number): number =>
  Math.min(1, Math.max(0, (value - low) / (high - low)))

const phaseOf = (roll: number): Phase | null => {
  if (roll <= 0) return null
  if (roll > share.drop) return 'pins down'
  return roll > share.rise ? 'card on' : 'pins up'
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): CardView => {
  const { condition, pass } = frame
  const roll = options.roll ?? 0
  const turn = roll > 0 ? pass.pass : turnShown(frame)
  const steps = turn > 1 ? stepsAtTurn(condition, turn) : 0
  const push = between(roll, share.rise, share.drop)
  const base = viewBase(layouts, run, frame, options)
  return {
    ...base,
    layout: layoutOf(options.shape, base.whole),
    phase: steps > 0 ? phaseOf(roll) : null,
    drop: steps > 0 ? Math.min(between(roll, 0, share.rise), 1 - between(roll, share.drop, 1)) : 0,
    rows: push * steps,
    push,
    back: roll > share.rise ? 0 : between(roll, 0, share.rise),
    side: turn > 1 ? sideOfTurn(turn) : 'left',
    isPast: turn === pass.pass,
    steps,
  }
}
