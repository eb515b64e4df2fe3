import { type Bed, needleName, needlesIn, usualPlace, wholeBed } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { ofNeedle, toNeedle } from '../../mechanism/indices.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { hasChanged } from '../shared/memo.ts'
import { type NeedleMark, needleMark } from '../shared/needle-mark.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import type { ChainLayout } from './layout.ts'
import type { ChainView } from './view.ts'

const margin = dimensions.turnMark + 2

/** The needle under whose tick both names of the middle are written. */
const nextToMiddle = [toNeedle(usualPlace.columnOne - 1)]

/** How many needles the map of a whole bed is long. */
const mapLength = ({ first, last }: Bed): number => last - first + 2 * margin

/** Place on the map of a point of the bed, in needles. */
export const mapX = (layout: ChainLayout, x: number, whole = wholeBed): number => {
  const width = layout.needles * layout.pitch
  return layout.left + ((x - whole.first + margin) / mapLength(whole)) * width
}

/** The point of the bed at a place on the map. */
export const mapNeedle = (layout: ChainLayout, place: number, whole = wholeBed): number =>
  ((place - layout.left) / (layout.needles * layout.pitch)) * mapLength(whole) + whole.first - margin

const kinds = ['ahead', 'plain', 'selected', 'missed', 'extra', 'unmoved'] as const
type Kind = (typeof kinds)[number]

const kindOf: Readonly<Record<NeedleMark, Kind | null>> = {
  out: null,
  ahead: 'ahead',
  set: 'ahead',
  pressed: 'ahead',
  plain: 'plain',
  selected: 'selected',
  missed: 'missed',
  extra: 'extra',
  unmoved: 'unmoved',
}

/** The map's base line. */
const baseOf = (layout: ChainLayout): number => layout.map + 15

/** From the map's base line: where each kind's tick begins and ends. */
const ticks: Readonly<Record<Kind, readonly [number, number]>> = {
  ahead: [-2, 0],
  plain: [-5, 0],
  selected: [-14, 0],
  missed: [-14, 0],
  extra: [-14, 0],
  unmoved: [2, 6],
}

/** Each kind's tick for every needle of the bed, as path texts. */
type TickTexts = Readonly<Record<Kind, readonly string[]>>

const tickTexts = (layout: ChainLayout, whole: Bed): TickTexts => {
  const needles = needlesIn(whole).map((needle) => px(mapX(layout, needle, whole)))
  const base = baseOf(layout)
  const of = ([kind, [top, bottom]]: [string, readonly [number, number]]): [string, string[]] => [
    kind,
    needles.map((x) => `M${x},${base + top}V${base + bottom}`),
  ]
  return Object.fromEntries(Object.entries(ticks).map(of)) as Record<Kind, string[]>
}
const knownTexts = new Map<string, TickTexts>()
const textsOf = (layout: ChainLayout, whole: Bed): TickTexts => {
  const key = `${layout.shape} ${whole.first}`
  const texts = knownTexts.get(key) ?? tickTexts(layout, whole)
  knownTexts.set(key, texts)
  return texts
}

/** All the needles of the bed as ticks. They change as the presser comes to a needle, and as it is sorted behind it. */
const drawTicks = (band: Group, { layout, frame, whole }: ChainView): void => {
  const { x, pass, before } = frame
  const sortedTo = x - pass.way * frame.condition.dimensions.gateLag
  const borders = [x, sortedTo].flatMap((at) => [Math.floor(at), Math.ceil(at)])
  if (!hasChanged(band, [pass, before, ...borders])) return
  const texts = textsOf(layout, whole)
  const paths = emptyPaths(kinds)
  for (const needle of needlesIn(whole)) {
    const kind = kindOf[needleMark(frame, needle)]
    if (kind) paths[kind] += ofNeedle(texts[kind], needle)
  }
  drawByLook(band, 'map-ticks', 'data-mark', kinds, paths)
}

/** All the needles of the bed as ticks, what came out so far, and where the window and the turn marks are. */
export const drawMap = (root: Group, view: ChainView): void => {
  const { layout, frame, whole } = view
  const band = drawGroup(root, 'map-band')
  const base = baseOf(layout)
  const left = mapX(layout, view.from, whole)
  const right = mapX(layout, view.from + layout.needles - 1, whole)
  const edge = [layout.left, layout.left + layout.needles * layout.pitch] as const
  drawShape(band, 'rect', 'map-window', {
    x: px(Math.max(edge[0], left)),
    y: layout.map - 4,
    width: px(Math.min(edge[1], right) - Math.max(edge[0], left)),
    height: 23,
  })

  const { bed } = frame.condition
  drawShape(band, 'path', 'turn-marks', {
    d: [bed.first - dimensions.turnMark, bed.last + dimensions.turnMark]
      .map((x) => `M${px(mapX(layout, x, whole))},${base - 14}V${base}`)
      .join(''),
  })
  drawTicks(band, view)
  drawShape(band, 'path', 'map-flags', {
    d: frame.departures
      .map(({ needle }) => `M${px(mapX(layout, needle, whole) - 2.2)},${base + 3.5}h4.4l-2.2,-3.2Z`)
      .join(''),
  })
  const way = frame.pass.way
  drawShape(band, 'path', 'map-carriage', {
    transform: `translate(${px(mapX(layout, frame.x, whole))} 0)`,
    d: `M0,${layout.map - 7}V${base + 4}M${-3 * way},${layout.map - 9.5}L${5 * way},${layout.map - 6}L${-3 * way},${layout.map - 2.5}Z`,
  })
  const half = Math.floor((whole.last - whole.first + 1) / 4)
  const named =
    layout.shape === 'wide'
      ? [whole.first, toNeedle(whole.first + half), ...nextToMiddle, toNeedle(whole.last - half), whole.last]
      : []
  drawShapes(band, 'text', 'map-name', named, (index) => ({
    x: px(mapX(layout, index, whole)),
    y: base + 14.5,
    text: needleName(index) === 'L1' ? 'L1 R1' : needleName(index),
  }))
}
