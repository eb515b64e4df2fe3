import { stripOfColumn } from '../../../mechanism/bed.ts'
import { dimensions } from '../../../mechanism/dimensions.ts'
import {
  allColumns,
  type Column,
  measureOfColumn,
  measureOfNeedle,
  toColumn,
  toNeedle,
} from '../../../mechanism/indices.ts'
import { shape as profile } from '../../shared/detail/profile.ts'
import { closed, moved } from '../engine/piece.ts'
import type { Vector } from '../engine/vector.ts'
import { machine } from './machine.ts'
import type { MachinePiece } from './part.ts'
import { legsOf, pinThrough } from './pins.ts'
import { buttLevel, columnAt, frontLegs, levels, needleAt, rockers, stripAt, strips } from './places.ts'
import type { Pose } from './pose.ts'
import { rodThrough } from './rockers.ts'

const railsOfPins = ['top-plate', 'leaf-spring', 'lift-spring', 'draw-bar']

type AssemblyName = 'card' | 'sweep' | 'pins' | 'rockers' | 'plate' | 'strips' | 'cams' | 'needles'

/** An assembly of the machine taken apart: what belongs to it, how far it is lifted, and between which levels it then is. */
export interface Assembly {
  readonly name: AssemblyName
  readonly has: (piece: MachinePiece) => boolean
  readonly lift: number
  readonly room: readonly [low: number, high: number]
}

/** The assemblies in the order in which they push, from the card down to the needles. */
export const assemblies: readonly Assembly[] = [
  { name: 'card', has: ({ name }) => name === 'card', lift: 132, room: [134, 188] },
  { name: 'sweep', has: ({ layer }) => layer === 'sweep', lift: 105, room: [107, 129] },
  {
    name: 'pins',
    has: ({ layer, name }) => layer === 'pins' || (layer === 'frame' && railsOfPins.includes(name)),
    lift: 92,
    room: [54, 101],
  },
  {
    name: 'rockers',
    has: ({ layer, name }) => layer === 'rockers' || name === 'rail',
    lift: 63,
    room: [-14.5, 48],
  },
  { name: 'plate', has: ({ layer }) => layer === 'plate', lift: 45, room: [-25.1, -23.4] },
  { name: 'strips', has: ({ layer }) => layer === 'strips', lift: 42, room: [-44.1, -30] },
  { name: 'cams', has: ({ layer }) => layer === 'cams', lift: 14, room: [-61.5, -48] },
  {
    name: 'needles',
    has: ({ layer }) => ['needles', 'shanks', 'bed', 'retainer'].includes(layer),
    lift: 0,
    room: [-94.1, -70],
  },
]

const liftOf = (name: AssemblyName): number => assemblies.find((each) => each.name === name)?.lift ?? 0

/** The column that lines follow from part to part: that which moves most, or the eleventh. */
const columnShown = ({ frame }: Pose): Column =>
  allColumns.reduce(
    (most, column) =>
      measureOfColumn(frame.rockerOuts, column) > measureOfColumn(frame.rockerOuts, most) + 0.01
        ? column
        : most,
    toColumn(11),
  )

/** Lines from part to part, as one column’s hole comes to push its needle. */
export const apartLines = (pose: Pose): (readonly [Vector, Vector])[] => {
  const column = columnShown(pose)
  const [x, strip] = [columnAt(column), stripAt(stripOfColumn(column)) + strips.lug]
  const { front, back, tip } = legsOf(pose, column)
  const needle = toNeedle(dimensions.needles / 2 + column - 1)
  const height = measureOfNeedle(pose.frame.buttHeights, needle)
  const at = needleAt(needle)
  const line = (
    [upper, high]: readonly [AssemblyName, number],
    [lower, low]: readonly [AssemblyName, number],
    right: number,
    behind: number,
  ): readonly [Vector, Vector] => [
    [right, behind, high + liftOf(upper)],
    [right, behind, low + liftOf(lower)],
  ]
  const rod = x + rockers.aside
  return [
    line(['card', levels.card[0]], ['pins', tip], back[0], back[1]),
    line(['sweep', levels.belt[0] - 5], ['pins', tip], front[0], front[1]),
    line(['pins', levels.contact], ['rockers', levels.rockerTop], rod, frontLegs),
    line(['rockers', levels.rodEnd], ['strips', strips.high + 6], rod, strip),
    line(
      ['strips', buttLevel(-profile.spurDrop)],
      ['needles', buttLevel(height - profile.spurDrop)],
      at,
      4.5,
    ),
    line(['cams', buttLevel(-1.5)], ['needles', buttLevel(height)], at, -0.8),
  ]
}

/** The machine taken apart along the way of the push; what carries it and holds it together is left out. */
export const apartMachine = (pose: Pose): MachinePiece[] =>
  [...machine(pose), ...pinThrough(pose), ...rodThrough(pose)].flatMap((piece) => {
    const assembly = assemblies.find(({ has }) => has(piece))
    const by: Vector = [0, 0, assembly?.lift ?? 0]
    if (!assembly) return []
    const shape = piece.shape && moved(piece.shape, by)
    // What the guides are joined to is another assembly.
    return [{ ...piece, shape: shape && piece.name === 'guide' ? closed(shape) : shape }]
  })
