import type { Frame } from '../../mechanism/frame.ts'
import { type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { holeClearance, holeNow, misplacement } from '../../mechanism/pin.ts'
import type { SceneStep } from '../../words/figures/scene-step.ts'
import { millimetres } from '../../words/lists.ts'
import type { Vector } from './engine/vector.ts'
import { columnAt, levels, pinRadius, readAt, tipLevel } from './machine/places.ts'
import { leastMeasured, type Measure } from './measure.ts'
import { columnsOf } from './tip-measures.ts'

/** How far above the higher of the card and the pin's tip the lines of the pin and of its hole are, in mm. */
const above = { pin: 0.6, hole: 1.6 } as const
/** How far above the card's underside the lines are of what is to spare, and of how far the hole is out of place. */
const under = { spare: -1.3, out: -1.9 } as const

/** The dimensions of a column's pin in its hole, as far as the card has one over it. */
const atColumn = (column: Column, { condition, pass, pinHeights, cardRoll = 0 }: Frame): Measure[] => {
  if (pass.row === null || cardRoll > 0 || !holeNow(condition, pass.row, column)) return []
  const { hole, pin } = condition.dimensions
  const middle = columnAt(column)
  const out = condition.cardSide
  const [low, high] = levels.card
  const up = Math.max(0, tipLevel(measureOfColumn(pinHeights, column)) - high)
  const at = (right: number, up: number): Vector => [middle + right, readAt, up]
  const side = out < 0 ? -1 : 1
  // On the side to which the card lies out of place there is room; on the other the hole's edge is near the pin.
  const [edge, leg] = [out - (side * hole) / 2, -side * pinRadius]
  const spare = holeClearance(condition.dimensions) - misplacement(condition, column)
  return [
    {
      from: at(-pin / 2, high),
      to: at(pin / 2, high),
      aside: [0, 0, up + above.pin],
      words: `pin ${millimetres(pin)}`,
    },
    {
      from: at(out - hole / 2, high),
      to: at(out + hole / 2, high),
      aside: [0, 0, up + above.hole],
      words: `hole ${millimetres(hole)}`,
    },
    ...(Math.abs(spare) < leastMeasured
      ? []
      : [
          {
            from: at(Math.min(edge, leg), low),
            to: at(Math.max(edge, leg), low),
            aside: [0, 0, under.spare] as const,
            words: `${millimetres(Math.abs(spare))} ${spare > 0 ? 'to spare' : 'too far'}`,
            lettered: side > 0 ? ('from' as const) : ('to' as const),
          },
        ]),
    ...(Math.abs(out) < leastMeasured
      ? []
      : [
          {
            from: at(Math.min(0, out), low),
            to: at(Math.max(0, out), low),
            aside: [0, 0, under.out] as const,
            words: `out by ${millimetres(Math.abs(out))}`,
            lettered: side > 0 ? ('to' as const) : ('from' as const),
          },
        ]),
  ]
}

/** The dimensions of the pins of which a step speaks, each in its hole, with how far the card lies out of place. */
export const rowMeasures = (step: SceneStep, frame: Frame): Measure[] =>
  columnsOf(step).flatMap((column) => atColumn(column, frame))
