import type { Frame } from '../../mechanism/frame.ts'
import { type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { partsOf, type SceneStep } from '../../words/figures/scene-step.ts'
import { millimetres } from '../../words/lists.ts'
import type { Vector } from './engine/vector.ts'
import { columnAt, frontLegs, tipLevel } from './machine/places.ts'
import { leastMeasured, type Measure } from './measure.ts'

/** From a pin to the middle of the gap beside it, in mm. */
const gap = dimensions.pitch / 2

/** The columns of whose pins a step speaks, the subject's first. */
export const columnsOf = (step: SceneStep): Column[] =>
  partsOf(step).flatMap((part) => (part.kind === 'pin' ? [part.column] : []))

/** A height in the model's mm at a column, in front of its leg, as far to the left as the leg is pushed. */
const pointAt = (column: Column, height: number, { pinLeans }: Frame): Vector => [
  columnAt(column) - measureOfColumn(pinLeans, column),
  frontLegs,
  tipLevel(height),
]

/** How high a pin's tip is above the top plate; the words are on the plate. */
const heightOf = (column: Column, frame: Frame): Measure => {
  const height = measureOfColumn(frame.pinHeights, column)
  return {
    from: pointAt(column, 0, frame),
    to: pointAt(column, height, frame),
    aside: [gap, 0, 0],
    words: millimetres(height),
    lettered: 'from',
  }
}

/** How high the sweep's lower edge is above the top plate, in the gap before a pin. */
const edgeOf = (column: Column, frame: Frame): Measure => ({
  from: pointAt(column, 0, frame),
  to: pointAt(column, frame.condition.sweepEdge, frame),
  aside: [-gap, 0, 0],
  words: millimetres(frame.condition.sweepEdge),
  lettered: 'from',
})

/** How far a pin's tip is above the sweep's lower edge, or below it; the words are on the sweep. */
const marginOf = (column: Column, frame: Frame): Measure[] => {
  const height = measureOfColumn(frame.pinHeights, column)
  const edge = frame.condition.sweepEdge
  const margin = height - edge
  if (Math.abs(margin) < leastMeasured) return []
  return [
    {
      from: pointAt(column, Math.min(height, edge), frame),
      to: pointAt(column, Math.max(height, edge), frame),
      aside: [gap, 0, 0],
      words: `${margin > 0 ? 'overlaps' : 'clears'} ${millimetres(Math.abs(margin))}`,
      lettered: 'to',
    },
  ]
}

/**
 * The dimensions of the pins' tips: with the sweep as the subject both margins, else how high the tips are and, where it is
 * there, the sweep's edge.
 */
export const tipMeasures = (step: SceneStep, frame: Frame): Measure[] => {
  const columns = columnsOf(step)
  if (step.subject?.kind === 'sweep') return columns.flatMap((column) => marginOf(column, frame))
  return [
    ...columns.map((column) => heightOf(column, frame)),
    ...(step.layers?.includes('sweep') === true
      ? columns.slice(0, 1).map((column) => edgeOf(column, frame))
      : []),
  ]
}
