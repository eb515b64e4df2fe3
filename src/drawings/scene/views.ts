import { dimensions } from '../../mechanism/dimensions.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { SceneViewName } from '../../words/figures/scene.ts'
import type { View } from './engine/camera.ts'
import type { Plane } from './engine/cut.ts'
import type { Layer, MachinePiece } from './machine/part.ts'
import { needleAt, needleHalf } from './machine/places.ts'

/** A view of the machine: from where, and what is there to be seen. */
export interface SceneView {
  readonly view: View
  readonly layers: readonly Layer[]
  /** Where the machine is cut, and only what is before the plane is shown. */
  readonly section: Plane | null
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

const everything = { section: null, needles: null } as const

/** The bed cut beside a needle, by its count in the stretch from 1, seen from the right end. */
export const sectionBeside = (order: number): Pick<SceneView, 'section' | 'needles'> => ({
  section: { axis: 0, at: needleAt(dimensions.needles / 2 + order - 1) + needleHalf + 0.03 },
  needles: (other) => other <= order,
})

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
    named: readerParts,
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
    layers: bed,
    named: ['strip', 'needle', 'guide', 'bed', 'catch', 'spur', 'butt', 'retainer', 'return-spring'],
  },
  across: {
    view: { turned: 90, raised: 0, zoom: 100 },
    layers: [...bed, 'deck', 'carriage', 'cams'],
    ...sectionBeside(sectionNeedle),
    named: [
      'strip',
      'presser',
      'gate.1',
      'gate.2',
      'needle',
      'bed',
      'carriage',
      'deck',
      'catch',
      'spur',
      'butt',
      'retainer',
      'butt-spring',
      'guide',
    ],
  },
  carriage: {
    ...everything,
    view: { turned: 22, raised: -40, zoom: 100 },
    layers: ['carriage', 'cams', 'needles'],
    needles: (order) => [3, 6, 8, 11, 14, 18].includes(order),
    named: ['presser', 'gate.1', 'gate.2', 'leading-cam', 'butt', 'carriage'],
  },
  whole: {
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
