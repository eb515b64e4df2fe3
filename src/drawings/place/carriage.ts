import { sideOfWay } from '../../mechanism/bed.ts'
import { cams, gate2Start } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'
import { carriageHalf, leadingSpan } from '../shared/cams.ts'
import { hatch } from '../shared/definitions.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { along, type PlaceLayout } from './layout.ts'
import { type Box, edge, endOf, face, frontOf, type Point, topOf } from './projection.ts'
import { brokenMark, drawPressArea, type PlaceView } from './view.ts'

/** Height of the cams' upper sides above the bed. */
const camHigh = (layout: PlaceLayout): number => layout.deckHigh * 0.8

/** A place along the bed, in needles behind the presser's trailing edge. */
const behind = (view: PlaceView, needles: number): number =>
  along(view.layout, view.frame.x - view.frame.pass.way * needles)

/** A gate from above: the wall that leads a butt across the bed, thickening to the `side` away from it, -1 the front. */
const gate = (view: PlaceView, from: number, length: number, lift: number, side: 1 | -1): string => {
  const { layout } = view
  const z = camHigh(layout)
  const thick = layout.butt * 0.18
  const clear = layout.butt * 0.05
  const steps = 8
  const wall: Point[] = []
  const outer: Point[] = []
  for (let n = 0; n <= steps; n++) {
    const share = n / steps
    const x = behind(view, from + share * length)
    const y = layout.butt - lift * layout.moved * harmonic(share) + side * clear
    wall.push([x, y, z])
    outer.unshift([x, y + side * thick * (0.35 + 0.65 * share), z])
  }
  return face(layout, ...wall, ...outer)
}

/** A leading cam from above, on the `side` of the butts that it brings back to the line, -1 the front. */
const leading = (view: PlaceView, lift: number, side: 1 | -1): string => {
  const { layout } = view
  const z = camHigh(layout)
  const thick = layout.butt * 0.12
  const steps = 8
  const wall: Point[] = []
  const outer: Point[] = []
  for (let n = 0; n <= steps; n++) {
    const share = n / steps
    const x = behind(view, leadingSpan[0] + share * (leadingSpan[1] - leadingSpan[0]))
    const y = layout.butt - lift * layout.moved * harmonic(1 - share) + side * layout.butt * 0.05
    wall.push([x, y, z])
    outer.unshift([x, y + side * thick * (0.35 + 0.65 * (1 - share)), z])
  }
  return face(layout, ...wall, ...outer)
}

const presser = (view: PlaceView): string => {
  const { layout } = view
  const [half, z] = [layout.butt * 0.16, camHigh(layout)]
  const [x0, x1] = [behind(view, 0), behind(view, -cams.presserFlat - cams.presserRamp)]
  const [near, far] = [layout.butt - half, layout.butt + half]
  return face(layout, [x0, near, z], [x1, near, z], [x1, far, z], [x0, far, z])
}

/** Where the cams are, for their leader lines. */
export const camPoints = (view: PlaceView): { presser: Point; gate1: Point; gate2: Point } => {
  const { layout } = view
  const at = (needles: number, forward: number): Point => [
    behind(view, needles),
    layout.butt - forward * layout.moved,
    camHigh(layout),
  ]
  return {
    presser: at(-(cams.presserFlat + cams.presserRamp) / 2, 0),
    gate1: at(view.frame.condition.dimensions.gateLag + cams.gate1Length / 2, -cams.plainTravel / 2),
    gate2: at(gate2Start(view.frame.condition.dimensions) + cams.gate2Length / 2, cams.selectedTravel / 2),
  }
}

const drawCam = (group: Group, view: PlaceView, id: string, worn: string, path: string): void => {
  const holder = drawGroup(group, `cam-${id.replace('.', '-')}`, { 'data-part': id })
  drawPressArea(holder, path, 'line')
  drawShape(holder, 'path', 'cam-face', {
    d: path,
    'data-broken': brokenMark(view, worn),
    'data-aside': view.frame.condition.carriagePlain ? 'aside' : '',
    fill: view.broken.has(worn) ? hatch(view.prefix, 'broken') : '',
  })
}

const coverOf = (view: PlaceView): Box => {
  const { layout, frame } = view
  const { front, back, high } = layout.carriage
  return {
    from: [along(layout, frame.x - carriageHalf), front, camHigh(layout)],
    to: [along(layout, frame.x + carriageHalf), back, high],
  }
}

const handle = (view: PlaceView): string => {
  const { layout, frame } = view
  const [x0, x1] = [along(layout, frame.x - carriageHalf / 2), along(layout, frame.x + carriageHalf / 2)]
  const y = (layout.carriage.front + layout.carriage.back) / 2
  const [low, high] = [layout.carriage.high, layout.carriage.high + layout.deckHigh * 1.3]
  return edge(layout, [x0, y, low], [x0, y, high], [x1, y, high], [x1, y, low])
}

/** The carriage, its cover as if of glass, with the cams beneath it over the needles' butts. */
export const drawCarriage = (root: Group, view: PlaceView): void => {
  const { layout, frame } = view
  const group = drawGroup(root, 'carriage-on-bed')
  const cover = coverOf(view)
  const holder = drawGroup(group, 'cover', { 'data-part': 'carriage' })
  drawShape(holder, 'path', 'cover-faces', {
    d: [topOf(layout, cover), frontOf(layout, cover), endOf(layout, cover)].join(''),
  })
  drawShape(holder, 'path', 'handle', { d: handle(view) })
  drawShape(group, 'path', 'leading-cams', {
    d: leading(view, cams.selectedTravel, -1) + leading(view, -cams.plainTravel, 1),
  })
  const presserSide = `presser.${sideOfWay(frame.pass.way)}`
  drawCam(
    group,
    view,
    'gate.1',
    'gate.1',
    gate(view, view.frame.condition.dimensions.gateLag, cams.gate1Length, -cams.plainTravel, -1),
  )
  drawCam(group, view, 'presser', presserSide, presser(view))
  drawCam(
    group,
    view,
    'gate.2',
    'gate.2',
    gate(view, gate2Start(view.frame.condition.dimensions), cams.gate2Length, cams.selectedTravel, 1),
  )
}
