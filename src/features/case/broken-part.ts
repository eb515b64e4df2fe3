import { drawSceneLabels, labelsIn } from '../../drawings/scene/draw-labels.ts'
import { drawSeen } from '../../drawings/scene/draw-scene.ts'
import { readTree } from '../../drawings/scene/engine/tree-text.ts'
import { faultSceneOf } from '../../drawings/scene/fault-scene.ts'
import { faultLayouts, faultRoom } from '../../drawings/scene/layout.ts'
import { type ModelName, modelNames } from '../../drawings/scene/machine/models.ts'
import { poseOf } from '../../drawings/scene/machine/pose.ts'
import type { Trees } from '../../drawings/scene/scene.ts'
import { shapes } from '../../drawings/shared/figure-contract.ts'
import { drawGroup, into } from '../../drawings/shared/svg.ts'
import { type CardLibrary, scenarioOf, type State } from '../../link/state.ts'
import { needleName } from '../../mechanism/bed.ts'
import { at } from '../../mechanism/lookup.ts'
import { frameAt } from '../../mechanism/frame.ts'
import { startRun } from '../../mechanism/pass.ts'
import { brokenName, describeFaultPicture, drawnElsewhere } from '../../words/figures/fault-scene.ts'
import { required, setText } from '../../browser/dom.ts'
import { picturedOf } from './pictured.ts'
import type { CloseUp } from './close-up.ts'
import { showTurned } from './ways-to-turn.ts'

/** The trees of the models as the page carries them, by their names. */
const treesIn = (root: HTMLElement): Trees => {
  const texts = JSON.parse(required(root, '.scene-trees', HTMLScriptElement).text) as Record<
    ModelName,
    string
  >
  return Object.fromEntries(modelNames.map((model) => [model, readTree(texts[model])])) as Trees
}

/** Draws the first broken part of a state as it is, with its labels, in the place of the picture of its kind. */
export const drawBrokenPart = (
  root: HTMLElement,
  shown: State,
  { fault, caption, view }: CloseUp,
  library: CardLibrary,
): void => {
  const pictured = picturedOf(fault, shown, library)
  if (!pictured) return
  const { state, needle } = pictured
  const drawn = at(state.faults, 0)
  const run = startRun(scenarioOf(state, library))
  const found = faultSceneOf(treesIn(root), poseOf(run, frameAt(run, state.pass, state.at)), drawn)
  if (!found) return
  const { scene, camera, broken, places } = found
  const elsewhere = needle === null ? '' : drawnElsewhere(needle)
  const said = required(root, '.case-drawn', HTMLElement)
  // What was said of the example keeps its room, so that nothing moves.
  said.toggleAttribute('data-past', needle === null)
  if (needle !== null) setText(said, elsewhere)
  const described = describeFaultPicture(
    `${caption} ${elsewhere}`.trim(),
    fault,
    broken,
    places.map(({ name }) => name),
  )
  for (const shape of shapes) {
    const svg = required(root, `.case-broken-picture[data-layout="${shape}"]`, SVGSVGElement)
    const layout = faultLayouts[shape]
    const room = required(svg, '.case-room', SVGSVGElement)
    drawSeen(drawGroup(into(room), 'scene-machine'), scene, camera, faultRoom)
    required(room, 'image', SVGImageElement).removeAttribute('href')
    const labels = into(required(svg, '.case-labels', SVGGElement))
    drawSceneLabels(labels, layout, labelsIn(layout, places), null, {
      name: broken,
      words: brokenName(fault),
    })
    svg.setAttribute('aria-label', described)
  }
  const link = required(root, '.case-broken .case-turn', HTMLAnchorElement)
  setText(link, needle === null ? 'See where it is, and turn it' : `Turn it, at ${needleName(needle)}`)
  showTurned(root, { ...state, faults: needle === null ? shown.faults : state.faults }, view, library)
}
