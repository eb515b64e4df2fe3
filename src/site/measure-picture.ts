import { cameraAt, project, type View } from '../drawings/scene/engine/camera.ts'
import type { Vector } from '../drawings/scene/engine/vector.ts'
import type { Layer } from '../drawings/scene/machine/part.ts'
import {
  backLegs,
  buttLevel,
  columnAt,
  frontLegs,
  needleAt,
  needleHalf,
  stripAt,
  stripEnds,
  strips,
  tipLevel,
} from '../drawings/scene/machine/places.ts'
import { poseOf } from '../drawings/scene/machine/pose.ts'
import { drawSeen, stillTimes } from '../drawings/scene/draw-scene.ts'
import { sceneOf } from '../drawings/scene/scene.ts'
import { machineTree } from '../drawings/scene/grown.ts'
import { everything } from '../drawings/scene/views.ts'
import { shape as profile } from '../drawings/shared/detail/profile.ts'
import { calliper } from './calliper.ts'
import { drawGroup, drawShape } from '../drawings/shared/svg.ts'
import { cams, dimensions, gate2Start } from '../mechanism/dimensions.ts'
import { measureOfColumn, measureOfStrip, toColumn, toStrip } from '../mechanism/indices.ts'
import type { MeasurementName } from '../mechanism/measurement.ts'
import { machineInState } from './machine-state.ts'
import { sceneStill } from './scene.ts'

/** The states in which the machine is drawn: needle R11 under the presser, and held behind it. */
const states = { pressed: 'pass=17&at=R10.8', held: 'pass=17&at=R12.2' } as const
type StateName = keyof typeof states

/** Where a calliper is put: from one point to another, in mm of the drawing, and from where that is seen. */
interface Place {
  readonly state: StateName
  readonly view: View
  readonly layers: readonly Layer[]
  /** Which needles are shown, by their count from R1; all where it is left out. */
  readonly needles?: (order: number) => boolean
  readonly from: Vector
  readonly to: Vector
  /** How many mm of the machine the picture is wide. */
  readonly wide: number
  /** Whether the jaws come from the other side. */
  readonly isTurned?: true
}

const pictureSize = { width: 260, height: 190 } as const

const machines = { pressed: machineInState(states.pressed), held: machineInState(states.held) }
const poses = {
  pressed: poseOf(machines.pressed.run, machines.pressed.frame),
  held: poseOf(machines.held.run, machines.held.frame),
}

const { frame } = machines.pressed
const [columnUp, columnDown, strip] = [toColumn(11), toColumn(10), toStrip(3)]
const pushed = measureOfColumn(frame.pinLeans, columnUp)
const shifted = measureOfStrip(frame.stripShifts, strip)
const sweepAt = columnAt(frame.sweepAt)
const { x } = frame
const buttAt = -0.8
const gateAt = (behind: number): number => needleAt(x - behind)
const under = { turned: 24, raised: -28, zoom: 100 } as const

const reader: readonly Layer[] = ['pins', 'frame']
const bedOpen: readonly Layer[] = ['strips', 'needles', 'shanks', 'bed']
const camsFrom: readonly Layer[] = ['carriage', 'cams', 'needles']

/** From the butt of one needle to that of another, by their numbers, in a picture so many mm wide. */
const fromButtToButt = (first: number, last: number, wide: number): Place => ({
  state: 'pressed',
  view: { turned: 18, raised: 52, zoom: 100 },
  layers: bedOpen,
  from: [needleAt(first), buttAt, buttLevel(0)],
  to: [needleAt(last), buttAt, buttLevel(0)],
  wide,
})

/** Where each measurement is taken. */
const places: Readonly<Record<MeasurementName, Place>> = {
  needles: fromButtToButt(100, 108, 60),
  pitch: fromButtToButt(106, 107, 26),
  pinHigh: {
    state: 'pressed',
    view: { turned: -160, raised: 12, zoom: 100 },
    layers: reader,
    from: [columnAt(columnUp), backLegs, 0],
    to: [columnAt(columnUp), backLegs, tipLevel(dimensions.pinHigh)],
    wide: 24,
  },
  pinLow: {
    state: 'pressed',
    view: { turned: -160, raised: 12, zoom: 100 },
    layers: reader,
    from: [columnAt(columnDown), backLegs, 0],
    to: [columnAt(columnDown), backLegs, tipLevel(dimensions.pinLow)],
    wide: 24,
  },
  sweepEdge: {
    state: 'pressed',
    view: { turned: 20, raised: 10, zoom: 100 },
    layers: [...reader, 'sweep'],
    from: [sweepAt + 4, frontLegs, 0],
    to: [sweepAt + 4, frontLegs, tipLevel(dimensions.sweepEdge)],
    wide: 34,
  },
  sweepThrow: {
    state: 'pressed',
    view: { turned: 20, raised: 34, zoom: 100 },
    layers: reader,
    from: [columnAt(columnUp), frontLegs, tipLevel(dimensions.pinHigh)],
    to: [columnAt(columnUp) - pushed, frontLegs, tipLevel(dimensions.pinHigh)],
    wide: 26,
    isTurned: true,
  },
  slack: {
    state: 'pressed',
    view: { turned: 24, raised: 24, zoom: 100 },
    layers: [...reader, 'sweep'],
    from: [sweepAt - 2, frontLegs, 14],
    to: [sweepAt + dimensions.pitch - 2, frontLegs, 14],
    wide: 60,
  },
  timing: {
    state: 'pressed',
    view: { turned: 24, raised: 24, zoom: 100 },
    layers: [...reader, 'sweep'],
    from: [columnAt(columnUp), frontLegs, 14],
    to: [sweepAt, frontLegs, 14],
    wide: 60,
  },
  shift: {
    state: 'pressed',
    view: { turned: 30, raised: 40, zoom: 100 },
    layers: bedOpen,
    from: [stripEnds.right, stripAt(strip), strips.high],
    to: [stripEnds.right + shifted, stripAt(strip), strips.high],
    wide: 40,
  },
  home: {
    state: 'pressed',
    view: { turned: 30, raised: 40, zoom: 100 },
    layers: bedOpen,
    from: [stripEnds.right + shifted, stripAt(strip), strips.high],
    to: [stripEnds.right, stripAt(strip), strips.high],
    wide: 56,
  },
  reach: {
    state: 'held',
    view: { turned: -158, raised: 40, zoom: 100 },
    layers: ['strips', 'needles', 'shanks'],
    from: [needleAt(113) - profile.halfStem - dimensions.reach, 4.4, buttLevel(-2.2)],
    to: [needleAt(113) - profile.halfStem, 4.4, buttLevel(-2.2)],
    wide: 20,
  },
  presserRight: {
    state: 'pressed',
    view: under,
    layers: camsFrom,
    needles: (order) => order === 14,
    from: [gateAt(-0.6), buttAt, buttLevel(0)],
    to: [gateAt(-0.6), buttAt, buttLevel(-dimensions.presserRight)],
    wide: 40,
  },
  presserLeft: {
    state: 'pressed',
    view: { ...under, turned: -24 },
    layers: camsFrom,
    needles: (order) => order === 14,
    from: [gateAt(-0.6), buttAt, buttLevel(0)],
    to: [gateAt(-0.6), buttAt, buttLevel(-dimensions.presserLeft)],
    wide: 40,
  },
  catchDepth: {
    state: 'held',
    view: { turned: 14, raised: 12, zoom: 100 },
    layers: bedOpen,
    needles: (order) => order >= 8 && order <= 14,
    from: [needleAt(110) + needleHalf, buttAt, buttLevel(0)],
    to: [needleAt(110) + needleHalf, buttAt, buttLevel(-dimensions.catchDepth)],
    wide: 26,
  },
  gate1: {
    state: 'pressed',
    view: under,
    layers: camsFrom,
    needles: (order) => order === 14,
    from: [gateAt(dimensions.gateLag + cams.gate1Length / 2), buttAt, buttLevel(0)],
    to: [gateAt(dimensions.gateLag + cams.gate1Length / 2), buttAt, buttLevel(-dimensions.gate1)],
    wide: 40,
  },
  gate2: {
    state: 'pressed',
    view: under,
    layers: camsFrom,
    needles: (order) => order === 14,
    from: [gateAt(gate2Start(dimensions) + 1), buttAt, buttLevel(0)],
    to: [gateAt(gate2Start(dimensions) + 1), buttAt, buttLevel(-dimensions.gate2)],
    wide: 40,
  },
}

/** The picture of where a calliper is put, as an SVG file with its styles in it. */
export const measureFile = (name: MeasurementName): string => {
  const { state, view, layers, needles = null, from, to, wide, isTurned } = places[name]
  const middle: Vector = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2]
  const camera = cameraAt(view, middle, wide, pictureSize)
  const scene = sceneOf(machineTree(), poses[state], { ...everything, view, layers, needles, named: [] })
  const [one, other] = isTurned ? [to, from] : [from, to]
  const { jaws, arrow } = calliper(project(camera, one), project(camera, other))
  return sceneStill(pictureSize, (group) => {
    drawSeen(drawGroup(group, 'scene-pieces'), scene, camera, pictureSize)
    const over = drawGroup(group, 'calliper', { transform: `scale(${stillTimes})` })
    drawShape(over, 'path', 'calliper-ground', { d: jaws + arrow })
    drawShape(over, 'path', 'calliper-jaws', { d: jaws })
    drawShape(over, 'path', 'calliper-arrow', { d: arrow })
  })
}
