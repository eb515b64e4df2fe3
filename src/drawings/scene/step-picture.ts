import type { SceneViewName } from '../../words/figures/scene.ts'
import { partsOf, type SceneStep } from '../../words/figures/scene-step.ts'
import { flagWords } from '../../words/subject.ts'
import type { Condition } from '../../mechanism/condition.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Part } from '../../mechanism/part.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { PicturePoint } from '../shared/paths.ts'
import type { Group } from '../shared/svg.ts'
import { inLayout, drawSceneLabels, labelsIn, type SceneLabel } from './draw-labels.ts'
import {
  drawHands,
  handBox,
  type HandInPicture,
  handPlace,
  type HandPlace,
  liftPlaces,
} from './draw-hands.ts'
import { drawDatums, placeDatums } from './draw-datums.ts'
import { drawWay, wayBoxes, type WayPlace, wayPlace } from './draw-way.ts'
import { drawMeasures } from './draw-measures.ts'
import { type Line, placeMeasures, roomOfMeasures } from './place-measures.ts'
import { drawFlags, drawNames, drawStand, type Flag, longPole, shortPole } from './draw-step.ts'
import { type Camera, project, type View } from './engine/camera.ts'
import type { Vector } from './engine/vector.ts'
import { machineTree } from './grown.ts'
import { poseOf } from './machine/pose.ts'
import { restLine } from './along-measures.ts'
import type { Datum, Measure } from './measure.ts'
import { measuresOf } from './measures.ts'
import { anywhere, placesOf, sightOf } from './sight.ts'
import { cameraFor, isBetweenLabels } from './cameras.ts'
import type { Marked } from './draw-scene.ts'
import { type Scene, sceneOf } from './scene.ts'
import type { StepLayout } from './step-layout.ts'
import { viewOfStep } from './step-view.ts'
import { flagPlace, type FlagPlace, isOnPath } from './subject.ts'
import type { SceneView } from './views.ts'

/** A step's picture of the machine, before it is drawn in one shape or the other. */
export interface StepPicture {
  readonly step: SceneStep
  readonly shown: SceneView
  readonly scene: Scene
  readonly view: View
  readonly camera: Camera
  readonly marked: Marked
  readonly condition: Condition
  readonly frame: Frame
  readonly measures: readonly Measure[]
  readonly datums: readonly Datum[]
}

/** Whether a point is on the sides that a view's sections show. */
const isShown = ({ sections }: SceneView, point: Vector): boolean =>
  sections.every(({ axis, at, shows }) => (shows === 'before' ? point[axis] <= at : point[axis] >= at))

/** The picture of a step in a frame: from the step's own view, or from another place; `lit` is the part that is lit. */
export const pictureOf = (
  run: Run,
  frame: Frame,
  step: SceneStep,
  from: View | null = null,
  lit: NumberedPart | null = null,
): StepPicture => {
  const shown = viewOfStep(step)
  const view = from ?? shown.view
  const scene = sceneOf(machineTree(shown.model), poseOf(run, frame), shown)
  const path = step.subject ? isOnPath(step.subject, frame.condition) : null
  return {
    step,
    shown,
    scene,
    view,
    camera: cameraFor(scene, view),
    marked: { lit, path },
    condition: frame.condition,
    frame,
    measures: measuresOf(step, frame).filter(({ from, to }) => isShown(shown, from) && isShown(shown, to)),
    datums: step.view === 'along' && shown.filledBy ? [restLine(shown.filledBy)] : [],
  }
}

/** How high a flag's pole is in a view: what is cut open is all around the subject. */
const poleIn = (view: SceneViewName): number =>
  view === 'across' || view === 'along' || view === 'tips' ? longPole : shortPole

/** Whether a part's flag hangs below it, as in views for measuring: what is measured of it is above. */
const hangs = (view: SceneViewName, { kind }: Part): boolean =>
  (view === 'along' && (kind === 'needle' || kind === 'catch')) ||
  ((view === 'tips' || view === 'row') && kind === 'pin')

/** What is written over a picture: its labels, each with the point of the machine that it names, and the flags' places. */
export interface StepWords {
  readonly labels: readonly SceneLabel[]
  /** The subject's flag first, then what else the step speaks of; null for what is not in the picture. */
  readonly flags: readonly (FlagPlace | null)[]
  /** Where hands push; null where what they push is not in the picture. */
  readonly hands: readonly (HandPlace | null)[]
  /** The arrow on the carriage: which way that goes; null where no plate of it is seen. */
  readonly way: WayPlace | null
}

/** The lines from labels to what they name. */
const leadersOf = (labels: readonly SceneLabel[]): Line[] => labels.map(({ x, y, to }) => [[x, y], to])

/** Finds what is written over a picture; labels keep the margin at which they were `before`. */
export const wordsOf = (
  picture: StepPicture,
  layout: StepLayout,
  before: readonly SceneLabel[] = [],
): StepWords => {
  const { step, shown, scene, camera, condition, marked } = picture
  const sight = sightOf(scene, camera)
  const { path } = marked
  const here = { ...anywhere, isPoint: (point: PicturePoint) => isBetweenLabels(shown.format, point) }
  // A label points at what is on the path, where one sees that.
  const places = shown.named.flatMap((name) => {
    const [onPath] = path ? placesOf(scene, camera, [name], { ...here, isPiece: path }, sight) : []
    return onPath && onPath.points.length > 0 ? [onPath] : placesOf(scene, camera, [name], here, sight)
  })
  const labels = labelsIn(layout, places, before)
  return {
    labels,
    flags: partsOf(step).map((part) => flagPlace(scene, camera, part, condition, sight, here.isPoint)),
    hands: [
      ...step.hands.map((hand) => handPlace(scene, camera, hand, sight)),
      ...(step.isLifted ? liftPlaces(scene, picture.frame, sight) : []),
    ],
    way: step.isLifted ? null : wayPlace(layout, picture, sight, leadersOf(labels)),
  }
}

/** Draws what is written over a picture, as it is seen from a camera. */
export const drawWords = (
  group: Group,
  layout: StepLayout,
  {
    step,
    marked,
    view,
    camera,
    measures,
    datums,
  }: Pick<StepPicture, 'step' | 'marked' | 'view' | 'camera' | 'measures' | 'datums'>,
  { labels, flags, hands, way }: StepWords,
): void => {
  const measured = placeMeasures(layout, camera, measures, leadersOf(labels))
  const levels = placeDatums(layout, camera, datums, roomOfMeasures(measured))
  drawSceneLabels(group, layout, labels, marked.lit)
  drawNames(group, layout, labels, marked.lit)
  const parts = partsOf(step)
  const planted = flags.flatMap((flag, n): Flag[] =>
    flag
      ? [
          {
            words: flagWords(parts[n]!),
            at: inLayout(layout, project(camera, flag.at)),
            isSeen: flag.isSeen,
            isSubject: n === 0 && step.subject !== null,
            isHanging: hangs(step.view, parts[n]!),
          },
        ]
      : [],
  )
  const pushing = hands.flatMap((hand): HandInPicture[] =>
    hand
      ? [
          {
            at: inLayout(layout, project(camera, hand.at)),
            toward: inLayout(layout, project(camera, hand.toward)),
            isLifting: hand.isLifting,
          },
        ]
      : [],
  )
  drawWay(group, layout, camera, way)
  drawHands(group, layout, pushing)
  drawFlags(group, layout, planted, poleIn(step.view), [
    ...roomOfMeasures(measured),
    ...levels.map(({ box }) => box),
    ...pushing.map((hand, n) => handBox(layout, hand, n)),
    ...(way ? wayBoxes(layout, camera, way) : []),
  ])
  drawDatums(group, levels)
  drawMeasures(group, measured)
  drawStand(group, layout, view)
}

/** Finds and draws what is written over a picture. */
export const drawStepWords = (group: Group, layout: StepLayout, picture: StepPicture): void => {
  drawWords(group, layout, picture, wordsOf(picture, layout))
}
