import {
  cameraFor,
  drawScene,
  machineRoom,
  placesOf,
  type Scene,
  sceneOf,
  treeOfMachine,
} from '../drawings/scene/scene.ts'
import { drawSceneLabels, labelsIn } from '../drawings/scene/draw-labels.ts'
import type { Tree } from '../drawings/scene/engine/tree.ts'
import { sceneLayouts } from '../drawings/scene/layout.ts'
import { poseOf } from '../drawings/scene/machine/pose.ts'
import sceneStyles from '../drawings/scene/scene.css?raw'
import { sceneViews } from '../drawings/scene/views.ts'
import type { Shape } from '../drawings/shared/figure-contract.ts'
import { drawGroup, into } from '../drawings/shared/svg.ts'
import { base } from '../link/site-path.ts'
import tokens from '../styles/tokens.css?raw'
import { describeScene, type SceneViewName } from '../words/figures/scene.ts'
import type { NumberedPart } from '../words/numbered-parts.ts'
import { drawnMarkup } from './drawn-markup.ts'
import { machineInState } from './machine-state.ts'
import { minified, withStyles } from './minify-svg.ts'

/** The state in which the machine is drawn: one column alone has a hole there, and its needle is under the presser. */
export const sceneState = 'pass=17&at=R10.8'

/** The tree takes a second to find, and is the same for every picture. */
let grown: Tree = null
const { run, frame } = machineInState(sceneState)
const pose = poseOf(run, frame)
const treeOnce = (): Tree => (grown ??= treeOfMachine(pose))

/** The machine's tree as a page carries it, so that a browser need not search for it. */
export const sceneTree = (): string =>
  JSON.stringify(treeOnce(), (_, value: unknown) =>
    typeof value === 'number' ? Math.round(value * 1e4) / 1e4 : value,
  )

const made = new Map<SceneViewName, Scene>()
const sceneIn = (name: SceneViewName): Scene => {
  const found = made.get(name) ?? sceneOf(treeOnce(), pose, sceneViews[name])
  made.set(name, found)
  return found
}

/** The address of the picture of a view, which has no words in it. */
export const scenePicture = (name: SceneViewName): string => `${base}/scene/${name}.svg`

/** A view's machine as an SVG file, with its styles in it. */
export const sceneFile = (name: SceneViewName): string => {
  const { view } = sceneViews[name]
  const scene = sceneIn(name)
  const drawing = minified(
    drawnMarkup((svg) => {
      const group = drawGroup(into(svg), 'scene-machine')
      drawScene(group, scene, cameraFor(scene, view), null)
    }),
  )
  const { width, height } = machineRoom
  const styles = [tokens, sceneStyles].join('\n').replaceAll(':root', 'svg')
  return withStyles(`viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`, styles, drawing)
}

/** The labels of a view, as markup for over its picture. */
export const sceneLabels = (name: SceneViewName, shape: Shape): string => {
  const { view, named } = sceneViews[name]
  const scene = sceneIn(name)
  const places = placesOf(scene, cameraFor(scene, view), named)
  return drawnMarkup((svg) => {
    const layout = sceneLayouts[shape]
    drawSceneLabels(into(svg), layout, labelsIn(layout, places), null)
  })
}

/** The parts that are seen in a view, and so have a label in its picture. */
export const seenIn = (name: SceneViewName): NumberedPart[] => {
  const { view, named } = sceneViews[name]
  const scene = sceneIn(name)
  return placesOf(scene, cameraFor(scene, view), named).flatMap(({ name: part, points }) =>
    points.length > 0 ? [part] : [],
  )
}

/** A view's picture in words. */
export const sceneDescription = (name: SceneViewName): string =>
  describeScene(name, sceneViews[name].view, seenIn(name))
