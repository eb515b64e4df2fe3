import { cameraFor, machineRoom, machineRooms } from '../drawings/scene/cameras.ts'
import { type Marked, drawSeen, stillTimes, unmarked } from '../drawings/scene/draw-scene.ts'
import { placesOf } from '../drawings/scene/sight.ts'
import { type Scene, sceneOf } from '../drawings/scene/scene.ts'
import { drawSceneLabels, labelsIn } from '../drawings/scene/draw-labels.ts'
import { writeTree } from '../drawings/scene/engine/tree-text.ts'
import type { Camera } from '../drawings/scene/engine/camera.ts'
import { machineTree } from '../drawings/scene/grown.ts'
import { stepLayouts } from '../drawings/scene/step-layout.ts'
import { drawStepWords, pictureOf } from '../drawings/scene/step-picture.ts'
import { sceneLayouts } from '../drawings/scene/layout.ts'
import { type ModelName, modelNames } from '../drawings/scene/machine/models.ts'
import { poseOf } from '../drawings/scene/machine/pose.ts'
import sceneStyles from '../drawings/scene/scene.css?raw'
import { sceneViews } from '../drawings/scene/views.ts'
import type { Shape } from '../drawings/shared/figure-contract.ts'
import { drawGroup, type Group, into } from '../drawings/shared/svg.ts'
import { exampleOf } from '../find/battery.ts'
import { defaultState } from '../link/read.ts'
import { base } from '../link/site-path.ts'
import { write } from '../link/write.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import tokens from '../styles/tokens.css?raw'
import { partsViewNames, type SceneViewName } from '../words/figures/scene.ts'
import { describeScene } from '../words/figures/standpoint.ts'
import { type NumberedPart, numberedNames, numberedParts } from '../words/numbered-parts.ts'
import { siteLibrary } from './cards.ts'
import { drawnMarkup } from './drawn-markup.ts'
import { machineInState } from './machine-state.ts'
import { readSceneStep, type SceneAttributes } from '../words/figures/scene-step.ts'
import { stepName } from './stills.ts'
import { minified, withShortStyles } from './minify-svg.ts'

/** The state in which the machine is drawn: one column alone has a hole there, and its needle is under the presser. */
export const sceneState = 'pass=17&at=R10.8'

/** Where the carriage is in the pictures of a fault, in needles: at the needle that examples are about. */
const faultAt = 110.8

const { run, frame } = machineInState(sceneState)
const pose = poseOf(run, frame)

/** The tree of a model as a page carries it, so that a browser need not search for it. */
export const sceneTree = (model: ModelName): string => writeTree(machineTree(model))

/** The trees of all models as a page carries them. */
export const sceneTrees = (): string =>
  JSON.stringify(Object.fromEntries(modelNames.map((model) => [model, sceneTree(model)])))

const made = new Map<SceneViewName, Scene>()
const sceneIn = (name: SceneViewName): Scene => {
  const view = sceneViews[name]
  const found = made.get(name) ?? sceneOf(machineTree(view.model), pose, view)
  made.set(name, found)
  return found
}

/** The address of the picture of a view, which has no words in it. */
export const scenePicture = (name: SceneViewName): string => `${base}/scene/${name}.svg`

/** A drawing of the machine as an SVG file of this size, with its styles in it, and `more` after them. */
export const sceneStill = (
  { width, height }: { readonly width: number; readonly height: number },
  draw: (group: Group) => void,
  more = '',
): string => {
  const drawing = minified(
    drawnMarkup((svg) => {
      draw(drawGroup(into(svg), 'scene-machine'))
    }),
  )
  const styles = [tokens, sceneStyles, more].join('\n').replaceAll(':root', 'svg')
  const box = `viewBox="0 0 ${width * stillTimes} ${height * stillTimes}"`
  return withShortStyles(`${box} width="${width}" height="${height}"`, styles, drawing)
}

/** A view's machine as an SVG file, with its styles in it, and `more` after them. */
export const sceneFile = (name: SceneViewName, more = ''): string => {
  const { view } = sceneViews[name]
  const scene = sceneIn(name)
  return fileOf(scene, cameraFor(scene, view), unmarked, more)
}

/** A scene as an SVG file, with its styles in it. */
const fileOf = (scene: Scene, camera: Camera, marked: Marked, more = ''): string => {
  const room = machineRooms[scene.format]
  return sceneStill(
    room,
    (group) => {
      drawSeen(group, scene, camera, room, marked)
    },
    more,
  )
}

/** A step's machine as an SVG file, without its words. */
export const stepFile = (state: string, attributes: SceneAttributes): string => {
  const { run: ownRun, frame: ownFrame } = machineInState(state)
  const { scene, camera, marked } = pictureOf(ownRun, ownFrame, readSceneStep(attributes))
  return fileOf(scene, camera, marked)
}

/** The address of a step's machine as a file. */
const stepAddress = (state: string, attributes: SceneAttributes): string =>
  `${base}/scene/${stepName(state, attributes)}.svg`

/** A step's picture as markup: the machine as a file, with its words over it. */
export const stepMarkup = (state: string, attributes: SceneAttributes, shape: Shape): string => {
  const key = `${shape} ${stepName(state, attributes)} ${attributes.hand ?? ''}`
  const markup = stepMarkups.get(key) ?? drawStepMarkup(state, attributes, shape)
  stepMarkups.set(key, markup)
  return markup
}

const stepMarkups = new Map<string, string>()

const drawStepMarkup = (state: string, attributes: SceneAttributes, shape: Shape): string => {
  const { run: ownRun, frame: ownFrame } = machineInState(state)
  const { width, height } = machineRoom
  const layout = stepLayouts[shape]
  const { x, y, scale } = layout.machine
  const words = drawnMarkup((svg) => {
    drawStepWords(
      drawGroup(into(svg), `scene-words ${shape}`),
      layout,
      pictureOf(ownRun, ownFrame, readSceneStep(attributes)),
    )
  })
  return (
    `<g class="scene-place" transform="translate(${x} ${y}) scale(${scale})">` +
    `<image href="${stepAddress(state, attributes)}" width="${width}" height="${height}"/>` +
    `<g class="scene-machine"/></g>${words}`
  )
}

/** The labels of a view, as markup for over its picture. */
export const sceneLabels = (name: SceneViewName, shape: Shape): string => {
  const { view, named } = sceneViews[name]
  const scene = sceneIn(name)
  const places = placesOf(scene, cameraFor(scene, view), named)
  return drawnMarkup((svg) => {
    const layout = sceneLayouts[scene.format][shape]
    drawSceneLabels(into(svg), layout, labelsIn(layout, places), null)
  })
}

const seenParts = new Map<SceneViewName, readonly NumberedPart[]>()

/** The parts that are seen in a view, and so have a label in its picture. */
export const seenIn = (name: SceneViewName): readonly NumberedPart[] => {
  const known = seenParts.get(name)
  if (known) return known
  const { view, named } = sceneViews[name]
  const scene = sceneIn(name)
  const seen = placesOf(scene, cameraFor(scene, view), named).flatMap(({ name: part, points }) =>
    points.length > 0 ? [part] : [],
  )
  seenParts.set(name, seen)
  return seen
}

/** A view's picture in words. */
export const sceneDescription = (name: SceneViewName): string =>
  describeScene(name, sceneViews[name].view, seenIn(name))

/** The view in which the part that a kind of fault breaks is seen; null where it breaks none that has a number. */
export const partView = (kind: FaultKindName): SceneViewName | null => {
  const part = numberedNames.find((name) => numberedParts[name].faults.some((each) => each === kind))
  return (part && partsViewNames.find((name) => seenIn(name).includes(part))) ?? null
}

/** The page of the parts with an example of a kind of fault on it, from where its part is seen; null where it has none. */
export const partAddress = (kind: FaultKindName): string | null => {
  const view = partView(kind)
  if (!view) return null
  const state = write({ ...defaultState(siteLibrary), at: faultAt, faults: [exampleOf(kind)] }, siteLibrary)
  return `${base}/parts/#${state}&view=${view}`
}
