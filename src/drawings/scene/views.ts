import { dimensions } from '../../mechanism/dimensions.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { SceneViewName } from '../../words/figures/scene.ts'
import type { View } from './engine/camera.ts'
import type { Section } from './engine/cut.ts'
import type { Extent } from './engine/extent.ts'
import type { ModelName } from './machine/models.ts'
import type { Layer, MachinePiece } from './machine/part.ts'
import { shape } from './machine/needles.ts'
import { bedLevels, carriageAt, columnAt, frontLegs, levels, needleAt, needleHalf } from './machine/places.ts'

/** A picture’s format: tall, with its labels at its sides, or flat, with its labels above and below. */
export type PictureFormat = 'tall' | 'flat'

/** A view of the machine: from where, and what is there to be seen. */
export interface SceneView {
  readonly view: View
  /** How the machine is laid out. */
  readonly model: ModelName
  readonly format: PictureFormat
  readonly layers: readonly Layer[]
  /** How far the retainer bar is drawn out to the right, in mm. */
  readonly drawnOut: number
  /** The part of the machine that fills the picture; all of it where it is null. What reaches further is cut off. */
  readonly filledBy: Extent | null
  /** Where the machine is cut open. */
  readonly sections: readonly Section[]
  /** Which of the needles, by their count in the stretch from 1, are shown; all where it is null. */
  readonly needles: ((order: number) => boolean) | null
  /** Kinds of part that are left out of these layers. */
  readonly without?: ReadonlySet<NumberedPart>
  /** What is named in the picture, as far as it is seen. */
  readonly named: readonly NumberedPart[]
}

/** The needle at which the bed is cut, by its count in the stretch from 1: it is that of the column of this number. */
const sectionNeedle = 11

const reader = ['pins', 'rockers', 'frame', 'plate', 'sweep', 'card'] as const satisfies readonly Layer[]
const bed = ['strips', 'needles', 'shanks', 'bed', 'retainer'] as const satisfies readonly Layer[]

const readerParts: readonly NumberedPart[] = [
  'card',
  'pin',
  'sweep',
  'rocker',
  'belt',
  'plate',
  'leaf-spring',
  'lift-spring',
  'draw-bar',
  'rail',
  'top-plate',
  'cheek',
  'wheel',
  'card-guide',
]

/** What views of the machine in its place have in common: nothing cut, drawn out or left out. */
export const everything = {
  model: 'stretch',
  format: 'tall',
  drawnOut: 0,
  filledBy: null,
  sections: [],
  needles: null,
} as const

/** The bed cut beside a needle, by its count in the stretch from 1, seen from the right end. */
export const sectionBeside = (order: number): Pick<SceneView, 'sections' | 'needles'> => ({
  sections: [
    { axis: 0, at: needleAt(dimensions.needles / 2 + order - 1) + needleHalf + 0.03, shows: 'before' },
  ],
  needles: (other) => other <= order,
})

/** What is left and right of these places is cut off. */
const between = (left: number, right: number): Section[] => [
  { axis: 0, at: left, shows: 'beyond' },
  { axis: 0, at: right, shows: 'before' },
]

/** How many columns or needles a picture that is seen squarely has on either side of those of which a step speaks, at least. */
const beside = { tips: 1.6, along: 1.1 } as const

/** How far from the middle of the first to that of the last, in columns or needles, such a picture reaches at least. */
const apartAtLeast = { tips: 3, along: 3.4 } as const

/** From where to where a picture reaches that shows columns or needles, by their counts from 1, squarely, in mm. */
const reachOf = (
  view: 'tips' | 'along',
  orders: readonly number[],
  further = 0,
): readonly [number, number] => {
  const [first, last] = [Math.min(...orders), Math.max(...orders)]
  const more = Math.max(0, apartAtLeast[view] - (last - first)) / 2 + beside[view] + further
  return [columnAt(first - more), columnAt(last + more)]
}

/** The tips of some pins squarely from the front: what is beside them and below the top plate is cut off. */
export const tipsOf = (columns: readonly number[]): Pick<SceneView, 'sections' | 'filledBy'> => {
  const [left, right] = reachOf('tips', columns)
  const [low, high] = [levels.topPlate[0], levels.belt[1] + 1.5]
  return {
    sections: [
      ...between(left, right),
      { axis: 2, at: low, shows: 'beyond' },
      { axis: 2, at: high, shows: 'before' },
    ],
    filledBy: { least: [left, frontLegs, low], most: [right, frontLegs, high] },
  }
}

/** How far to either side of its column a picture of a hole reaches, in columns, and between which levels it is. */
const aboutHole = { columns: 1.45, low: levels.topPlate[0] + 1.1, high: 9.9 } as const

/** A column's pin in its hole squarely from the front, with its neighbours. */
export const rowAt = (column: number): Pick<SceneView, 'sections' | 'filledBy'> => {
  const { columns, low, high } = aboutHole
  const [left, right] = [columnAt(column - columns), columnAt(column + columns)]
  return {
    sections: [...between(left, right), { axis: 2, at: low, shows: 'beyond' }],
    filledBy: { least: [left, frontLegs, low], most: [right, frontLegs, high] },
  }
}

/**
 * Some needles under the carriage squarely from behind: the bed is cut open behind them, and cut off at both sides, so many
 * needles further out than usual.
 */
export const alongOf = (orders: readonly number[], further = 0): Pick<SceneView, 'sections' | 'filledBy'> => {
  const [left, right] = reachOf('along', orders, further)
  const [low, high] = [bedLevels.floor + 3, carriageAt.high]
  return {
    sections: [
      ...between(left, right),
      { axis: 1, at: shape.spur + 0.1, shows: 'before' },
      { axis: 2, at: low, shows: 'beyond' },
      { axis: 2, at: high, shows: 'before' },
    ],
    filledBy: { least: [left, 0, low], most: [right, 0, high] },
  }
}

/** The views by their names. */
export const sceneViews: Readonly<Record<SceneViewName, SceneView>> = {
  front: {
    ...everything,
    view: { turned: 30, raised: 28, zoom: 100 },
    layers: [...reader, 'feed'],
    named: [...readerParts, 'drum', 'pawl'],
  },
  behind: {
    ...everything,
    view: { turned: -154, raised: 26, zoom: 100 },
    layers: reader,
    named: [...readerParts, 'lever'],
  },
  below: {
    ...everything,
    view: { turned: -154, raised: -35, zoom: 100 },
    layers: reader,
    named: readerParts,
  },
  bed: {
    ...everything,
    view: { turned: 32, raised: 40, zoom: 100 },
    drawnOut: 44,
    layers: bed,
    named: ['strip', 'needle', 'guide', 'bed', 'catch', 'spur', 'butt', 'retainer', 'return-spring'],
  },
  across: {
    model: 'stretch',
    format: 'flat',
    drawnOut: 0,
    filledBy: null,
    view: { turned: 90, raised: 0, zoom: 100 },
    layers: [...bed, 'deck', 'carriage', 'cams'],
    ...sectionBeside(sectionNeedle),
    // From the front to the back, as their labels are.
    named: [
      'needle',
      'retainer',
      'carriage',
      'gate.2',
      'butt',
      'presser',
      'gate.1',
      'spur',
      'butt-spring',
      'deck',
      'bed',
      'catch',
      'guide',
      'strip',
    ],
  },
  carriage: {
    ...everything,
    view: { turned: 22, raised: -40, zoom: 100 },
    layers: ['carriage', 'cams', 'needles'],
    needles: (order) => [3, 6, 8, 11, 14, 18].includes(order),
    named: ['presser', 'gate.1', 'gate.2', 'leading-cam', 'butt', 'carriage'],
  },
  together: {
    ...everything,
    view: { turned: 30, raised: 28, zoom: 100 },
    layers: [...reader, ...bed, 'feed', 'deck', 'carriage', 'cams'],
    named: [
      'card',
      'pin',
      'sweep',
      'rocker',
      'strip',
      'needle',
      'belt',
      'plate',
      'bed',
      'cheek',
      'carriage',
      'deck',
      'catch',
      'retainer',
      'drum',
    ],
  },
  tips: {
    ...everything,
    ...tipsOf([sectionNeedle]),
    view: { turned: 0, raised: 0, zoom: 100 },
    layers: reader,
    named: ['card', 'pin', 'sweep', 'belt', 'top-plate'],
  },
  row: {
    ...everything,
    ...rowAt(sectionNeedle),
    model: 'row',
    view: { turned: 0, raised: 0, zoom: 100 },
    layers: ['card', 'pins', 'frame'],
    named: ['card', 'pin', 'top-plate'],
  },
  along: {
    ...everything,
    ...alongOf([sectionNeedle]),
    view: { turned: 180, raised: 0, zoom: 100 },
    layers: ['strips', 'needles', 'shanks', 'bed', 'carriage', 'cams'],
    named: ['presser', 'gate.1', 'gate.2', 'butt', 'spur', 'catch', 'carriage', 'bed', 'butt-spring'],
  },
  apart: {
    ...everything,
    model: 'apart',
    view: { turned: 24, raised: 17, zoom: 100 },
    layers: [...reader, ...bed, 'feed', 'cams'],
    named: [
      'card',
      'belt',
      'sweep',
      'pin',
      'top-plate',
      'rocker',
      'plate',
      'strip',
      'catch',
      'presser',
      'gate.1',
      'gate.2',
      'butt',
      'needle',
      'bed',
    ],
  },
  whole: {
    ...everything,
    model: 'whole',
    format: 'flat',
    view: { turned: 15, raised: 28, zoom: 100 },
    layers: [...reader, ...bed, 'feed', 'deck', 'carriage', 'belt', 'cover', 'cheek'],
    // From the left to the right, as their labels are.
    named: [
      'turn-mark',
      'wheel',
      'retainer',
      'needle',
      'deck',
      'belt',
      'strip',
      'rocker',
      'card',
      'sweep',
      'carriage',
      'catch',
      'belt-cover',
      'bed',
    ],
  },
}

/** Whether a view shows a piece. */
export const isShownIn = (
  { layers, needles, without }: SceneView,
  { name, layer, order }: MachinePiece,
): boolean =>
  layers.includes(layer) &&
  without?.has(name) !== true &&
  (needles === null || order === null || needles(order) || !isOfNeedle(layer))

const isOfNeedle = (layer: Layer): boolean => ['needles', 'shanks', 'bed', 'strips'].includes(layer)
