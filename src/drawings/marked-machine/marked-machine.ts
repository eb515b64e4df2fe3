import { select } from 'd3'
import type { Fault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { wrongName } from '../../words/case.ts'
import { anchorOf } from '../place/anchors.ts'
import { figure as place } from '../place/figure.ts'
import { along } from '../place/layout.ts'
import { project } from '../place/projection.ts'
import { type PlaceView, viewOf } from '../place/view.ts'
import type { FigureOptions, Shape } from '../shared/figure-contract.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { px, ring } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'

/** A part to ring: where a fault sits, and the number, or the few numbers, that stand for it elsewhere. */
export interface MarkedPart {
  readonly fault: Fault
  readonly number: string
}

/** How the machine is marked. */
export interface MarkedOptions extends FigureOptions {
  /** What is ringed; the faults of the machine, in their order, where it is left out. */
  readonly marked?: readonly MarkedPart[]
  /** Drawn for half the size: no words but the marks', and those twice as large. Keeps its room whatever is marked. */
  readonly isSmall?: boolean
}

interface PartMark {
  readonly number: string
  readonly name: string
  /** The part's place, and the middle of the mark's balloon. */
  readonly to: readonly [number, number]
  readonly x: number
  readonly y: number
}

/** Room for what is said about the machine, down the picture. */
interface Room {
  /** The lines of marks above and below the machine. */
  readonly above: number
  readonly below: number
  /** The picture's edges with marks on these lines, and without. */
  readonly top: number
  readonly bottom: number
  readonly empty: readonly [number, number]
  /** Radius of the rings and of the balloons, and room for a letter of a name. */
  readonly ring: number
  readonly balloon: number
  readonly letter: number
}

const rooms: Readonly<Record<Shape | 'small', Room>> = {
  wide: {
    above: -26,
    below: 492,
    top: -50,
    bottom: 514,
    empty: [18, 455],
    ring: 15,
    balloon: 13,
    letter: 9.2,
  },
  narrow: {
    above: -18,
    below: 292,
    top: -36,
    bottom: 308,
    empty: [4, 268],
    ring: 9,
    balloon: 13,
    letter: 7.6,
  },
  small: {
    above: -22,
    below: 478,
    top: -48,
    bottom: 504,
    empty: [-48, 504],
    ring: 20,
    balloon: 23,
    letter: 15.5,
  },
}

/** How far the machine's edge falls, a pixel along the picture. */
const slope = project({ left: 0, top: 0 }, [1, 0, 0])[1]

/** Sets marks side by side on a line, each as near to its part as its neighbours let it be; as many as there is room for. */
const spread = (
  marks: readonly PartMark[],
  width: number,
  balloon: number,
  room: (mark: PartMark) => number,
): PartMark[] => {
  const line: PartMark[] = []
  let free = balloon + 2
  for (const mark of marks.toSorted((one, other) => one.to[0] - other.to[0])) {
    const x = Math.max(free, mark.x)
    free = x + room(mark)
    line.push({ ...mark, x })
  }
  let end = width
  for (let n = line.length - 1; n >= 0; n--) {
    const mark = line[n]
    if (!mark) continue
    const x = Math.min(mark.x, end - room(mark) + balloon)
    line[n] = { ...mark, x }
    end = x - balloon
  }
  return line.filter(({ x }) => x >= balloon)
}

/** The marks of all faults: on two lines, with their names where these fit. */
const marksOf = (
  view: PlaceView,
  marked: readonly MarkedPart[],
  { above, below, letter, balloon }: Room,
): { marks: PartMark[]; named: boolean } => {
  const { layout } = view
  const all = marked.map(({ fault, number }) => {
    const { place: to, side } = anchorOf(view, fault)
    const x = Math.min(Math.max(to[0], balloon), layout.width - balloon)
    return {
      side,
      mark: { number, name: wrongName(fault), to, x, y: side === 'above' ? above : below },
    }
  })
  const lines = (['above', 'below'] as const).map((side) =>
    all.filter((found) => found.side === side).map(({ mark }) => mark),
  )
  const roomNamed = ({ name }: PartMark): number => 2 * balloon + 12 + name.length * letter
  const named = lines.every(
    (line) => line.reduce((sum, mark) => sum + roomNamed(mark), 0) < layout.width - balloon,
  )
  const room = named ? roomNamed : (): number => 2 * balloon + 5
  return { marks: lines.flatMap((line) => spread(line, layout.width, balloon, room)), named }
}

/** A leader from the balloon's edge to the ring round the part. */
const leader = ({ to: [x, y], x: fromX, y: fromY }: PartMark, room: Room): string => {
  const length = Math.hypot(x - fromX, y - fromY)
  const at = (distance: number): string =>
    `${px(fromX + ((x - fromX) * distance) / length)},${px(fromY + ((y - fromY) * distance) / length)}`
  return `M${at(room.balloon)}L${at(Math.max(room.balloon, length - room.ring))}`
}

/** Everyday names under the machine, for someone who sees it for the first time; clear of the marks' leaders and of each other. */
const plainNames = ({ layout, frame }: PlaceView, marks: readonly PartMark[]): Label[] => {
  const taken = marks
    .filter(({ y }) => y > 0)
    .flatMap(({ x, to }) => [x, to[0]].map((at) => ({ at, room: 40 })))
  const under = (index: number, text: string): Label => {
    const [x, y] = project(layout, [along(layout, index), 0, -layout.body])
    const isFree = (place: number): boolean => taken.every(({ at, room }) => Math.abs(at - place) > room)
    const steps = Array.from({ length: 12 }, (_, n) => n * 10)
    const places = steps.flatMap((by) => [x + by, x - by]).filter((at) => at > 34 && at < layout.width - 34)
    const at = places.find(isFree) ?? x
    taken.push({ at, room: 72 })
    return { text, x: at, y: y + 24 + (at - x) * slope }
  }
  const { first, needles } = layout
  const half = needles / 2
  const carriage = Math.min(Math.max(frame.x, first + 8), first + needles - 8)
  const beside = carriage < first + half ? 1.65 * half : 0.35 * half
  return [under(carriage, 'carriage'), under(first + beside, 'needles')]
}

const drawBalloonsOf = (band: Group, marks: readonly PartMark[], named: boolean, balloon: number): void => {
  const down = 0.42 * balloon
  drawShapes(drawGroup(band, 'mark-heads'), 'circle', 'mark-head', marks, ({ x, y }) => ({
    r: balloon,
    cx: px(x),
    cy: y,
  }))
  drawShapes(drawGroup(band, 'mark-numbers'), 'text', 'mark-number', marks, ({ x, y, number }) => ({
    x: px(x),
    y: px(y + down),
    'font-size': px(balloon * (number.length > 1 ? 1.1 : 1.25)),
    text: number,
  }))
  drawShapes(drawGroup(band, 'mark-names'), 'text', 'mark-name', named ? marks : [], ({ x, y, name }) => ({
    x: px(x + balloon + 6),
    y: px(y + down),
    text: name,
  }))
}

/** The whole machine, as figure 0 draws it, with parts ringed, numbered, and named where there is room. Keeps nothing between calls. */
export const drawMarkedMachine = (
  svg: SVGSVGElement,
  run: Run,
  frame: Frame,
  { marked, isSmall = false, ...options }: MarkedOptions,
): void => {
  place.draw(svg, run, frame, options)
  const view = viewOf(run, frame, options)
  const root = drawGroup(select<SVGGElement, null>(svg), 'marked-place')
  const room = rooms[isSmall && options.shape === 'wide' ? 'small' : options.shape]
  const own = run.scenario.faults.map((fault, n): MarkedPart => ({ fault, number: String(n + 1) }))
  const { marks, named } = marksOf(view, marked ?? own, room)
  const from = isSmall || marks.some(({ y }) => y === room.above) ? room.top : room.empty[0]
  const to = isSmall || marks.some(({ y }) => y === room.below) ? room.bottom : room.empty[1]
  svg.setAttribute('viewBox', `0 ${from} ${view.layout.width} ${to - from}`)
  root.attr('data-size', isSmall ? 'small' : null)
  drawTexts(root, 'plain-names', isSmall ? [] : plainNames(view, marks))
  const lines = marks.map((mark) => leader(mark, room) + ring(...mark.to, room.ring)).join('')
  drawShape(root, 'path', 'mark-edge', { d: lines })
  drawShape(root, 'path', 'mark-line', { d: lines })
  drawBalloonsOf(root, marks, named, room.balloon)
}
