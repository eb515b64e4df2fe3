import { stripOfColumn } from '../../../mechanism/bed.ts'
import { allColumns, type Column, markOfColumn, measureOfColumn } from '../../../mechanism/indices.ts'
import { partId } from '../../../mechanism/part.ts'
import { bentWire, type Hull, prism, wire } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { createMemory } from './remember.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { columnAt, frontLegs, levels, rockers as shape, rodRadius, stripAt, strips } from './places.ts'
import { isColumnMoved, moodOf, type Pose } from './pose.ts'

/** How far a rocker has gone to the right at a level: as far to the left above its pivot as to the right below it. */
const shiftAt = (out: number, level: number): number =>
  (out * (levels.pivot - level)) / (levels.pivot - levels.lug)

/** An upright bar of a rocker between two levels, from front to back. */
const bar = (x: number, out: number, low: number, high: number, front: number, back: number): Hull => {
  const at = (level: number): Vector[] => {
    const middle = x + shiftAt(out, level)
    return [
      [middle - shape.half, front, level],
      [middle + shape.half, front, level],
      [middle + shape.half, back, level],
      [middle - shape.half, back, level],
    ]
  }
  return prism(at(low), at(high))
}

/** How far from the plate a slanting rod is parted, so that no edge of it is in the plate. */
const clear = 0.05

/** A rocker: its bar, the finger beside its pin's leg, the pin on which it turns, and its rod down to its strip. */
const rocker = (pose: Pose, column: Column): MachinePiece[] => {
  const part = partId({ kind: 'rocker', column })
  const mood = moodOf(pose, part, isColumnMoved(pose, column))
  const make = pieceMaker('rocker', 'rockers', 'metal', { part, mood, order: column })
  const out = measureOfColumn(pose.frame.rockerOuts, column)
  const x = columnAt(column) + shape.aside
  const isDead = markOfColumn(pose.condition.rockerDead, column) === 1
  const rodAt = (back: number, level: number): Vector => [x + shiftAt(out, level), back, level]
  const strip = stripAt(stripOfColumn(column)) + strips.lug
  const middle = (shape.front + shape.back) / 2
  return [
    make(
      bar(x, out, levels.rockerFoot, isDead ? levels.pivot + 8 : levels.rockerTop, shape.front, shape.back),
    ),
    // A dead rocker has lost its top: nothing of it is beside the leg.
    make(isDead ? null : bar(x, out, levels.contact - 1, levels.contact + 0.5, shape.back, frontLegs + 0.6)),
    make(wire([x, shape.front - 1.4, levels.pivot], [x, shape.front, levels.pivot], 0.7, [true, true])),
    make(wire([x, shape.back, levels.pivot], [x, shape.back + 1.4, levels.pivot], 0.7, [true, true])),
    ...bentWire(
      [
        rodAt(middle, levels.rockerFoot + 0.2),
        rodAt(middle, levels.rockerFoot - 1.5),
        rodAt(strip, levels.rodBend),
        rodAt(strip, levels.plate[1] + clear),
      ],
      rodRadius,
      [false, true],
    ).map(make),
    make(wire(rodAt(strip, levels.plate[0] - clear), rodAt(strip, levels.rodEnd), rodRadius, [true, false])),
  ]
}

/** What of the rods is inside the plate: to be seen when the plate is taken away. */
export const rodThrough = (pose: Pose): MachinePiece[] =>
  allColumns.map((column) => {
    const part = partId({ kind: 'rocker', column })
    const mood = moodOf(pose, part, isColumnMoved(pose, column))
    const make = pieceMaker('rocker', 'rockers', 'metal', { part, mood, order: column })
    const out = measureOfColumn(pose.frame.rockerOuts, column)
    const back = stripAt(stripOfColumn(column)) + strips.lug
    const at = (level: number): Vector => [columnAt(column) + shape.aside + shiftAt(out, level), back, level]
    return make(wire(at(levels.plate[0] - clear), at(levels.plate[1] + clear), rodRadius, [true, true]))
  })

/** The 24 rockers with their rods. */
export const rockers = (pose: Pose): MachinePiece[] =>
  allColumns.flatMap((column) => remember(column, keyOf(pose, column), () => rocker(pose, column)))

const remember = createMemory<MachinePiece[]>()

/** All that a rocker's pieces depend on. */
const keyOf = (pose: Pose, column: Column): string =>
  [
    measureOfColumn(pose.frame.rockerOuts, column),
    moodOf(pose, partId({ kind: 'rocker', column }), isColumnMoved(pose, column)),
    markOfColumn(pose.condition.rockerDead, column),
  ].join(' ')
