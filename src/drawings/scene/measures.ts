import type { Frame } from '../../mechanism/frame.ts'
import {
  type Column,
  measureOfColumn,
  measureOfNeedle,
  measureOfStrip,
  type Needle,
  type Strip,
} from '../../mechanism/indices.ts'
import { columnOfNeedle, stripOfNeedle } from '../../mechanism/bed.ts'
import type { Part } from '../../mechanism/part.ts'
import type { SceneStep } from '../../words/figures/scene-step.ts'
import { millimetres } from '../../words/lists.ts'
import { alongMeasures } from './along-measures.ts'
import type { Vector } from './engine/vector.ts'
import { shape as needleShape } from './machine/needles.ts'
import {
  buttLevel,
  columnAt,
  frontLegs,
  levels,
  needleAt,
  stripAt,
  stripEnds,
  strips,
} from './machine/places.ts'
import { leastMeasured, type Measure } from './measure.ts'
import { rowMeasures } from './row-measures.ts'
import { tipMeasures } from './tip-measures.ts'

/** How far a butt is below the rest level, and before it, where gates are, the edge of the first. */
const acrossAt = (needle: Needle, { buttHeights, condition }: Frame, hasGates: boolean): Measure[] => {
  const depth = -measureOfNeedle(buttHeights, needle)
  const [front] = needleShape.butt
  const at = (height: number): Vector => [needleAt(needle), front, buttLevel(height)]
  const gate = condition.gate1
  return [
    ...(depth > leastMeasured
      ? [{ from: at(0), to: at(-depth), aside: [0, -5, 0] as const, words: millimetres(depth) }]
      : []),
    ...(hasGates
      ? [{ from: at(0), to: at(-gate), aside: [0, -13, 0] as const, words: millimetres(gate) }]
      : []),
  ]
}

/** How far a pin's front leg is pushed along its slot to the left. */
const pushOf = (column: number, push: number): Measure[] => {
  const [x, z] = [columnAt(column), levels.topPlate[1]]
  return push > leastMeasured
    ? [
        {
          from: [x, frontLegs, z],
          to: [x - push, frontLegs, z],
          aside: [0, -9, 0],
          words: millimetres(push),
        },
      ]
    : []
}

/** How far a strip is to the right of its rest, at its right end. */
const shiftOf = (strip: Strip, shift: number): Measure[] => {
  const at = (aside: number): Vector => [stripEnds.right + aside, stripAt(strip), strips.high]
  return shift > leastMeasured
    ? [{ from: at(0), to: at(shift), aside: [0, 0, 9], words: millimetres(shift) }]
    : []
}

/** How far a needle is led from the line of its butt: forward or back. */
const travelOf = (needle: Needle, travel: number): Measure[] => {
  const at = (forward: number): Vector => [needleAt(needle), needleShape.butt[0] - forward, buttLevel(0)]
  return Math.abs(travel) > leastMeasured
    ? [
        {
          from: at(0),
          to: at(travel),
          aside: [-4, 0, -14],
          words: millimetres(Math.abs(travel)),
        },
      ]
    : []
}

const columnOf = (subject: Part, frame: Frame): Column | null =>
  subject.kind === 'pin' || subject.kind === 'rocker'
    ? subject.column
    : subject.kind === 'needle'
      ? columnOfNeedle(subject.needle, frame.condition)
      : null

/** The dimensions of a step's picture: how far its subject is moved from its rest, in the way that the view shows. */
export const measuresOf = (step: SceneStep, frame: Frame): readonly Measure[] => {
  const { view, layers, subject } = step
  if (!subject || !layers) return []
  const has = (kind: (typeof layers)[number]): boolean => layers.includes(kind)
  switch (view) {
    case 'across':
      return subject.kind === 'needle' || subject.kind === 'catch'
        ? acrossAt(subject.needle, frame, has('gates'))
        : []
    case 'front': {
      const column = columnOf(subject, frame)
      return column === null || !has('sweep') ? [] : pushOf(column, measureOfColumn(frame.pinLeans, column))
    }
    case 'bed': {
      const strip =
        subject.kind === 'strip'
          ? subject.strip
          : subject.kind === 'needle'
            ? stripOfNeedle(subject.needle, frame.condition)
            : null
      return strip === null ? [] : shiftOf(strip, measureOfStrip(frame.stripShifts, strip))
    }
    case 'carriage':
      return subject.kind === 'needle'
        ? travelOf(subject.needle, measureOfNeedle(frame.needleTravels, subject.needle))
        : []
    case 'tips':
      return tipMeasures(step, frame)
    case 'row':
      return rowMeasures(step, frame)
    case 'along':
      return alongMeasures(step, frame)
    case 'behind':
    case 'below':
    case 'together':
    case 'apart':
    case 'whole':
      return []
  }
}
