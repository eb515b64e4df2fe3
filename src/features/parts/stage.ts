import { required } from '../../browser/dom.ts'
import { createMachineCanvas, placeOnScreen } from '../../browser/scene/canvas.ts'
import { drawSceneLabels, followed, labelsIn, type SceneLabel } from '../../drawings/scene/draw-labels.ts'
import type { View } from '../../drawings/scene/engine/camera.ts'
import { type SceneLayout, sceneLayouts } from '../../drawings/scene/layout.ts'
import { cameraFor, machineRooms } from '../../drawings/scene/cameras.ts'
import { drawScene, unmarked } from '../../drawings/scene/draw-scene.ts'
import { placesOf } from '../../drawings/scene/sight.ts'
import type { Scene } from '../../drawings/scene/scene.ts'
import { type PictureFormat, sceneViews } from '../../drawings/scene/views.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { into } from '../../drawings/shared/svg.ts'
import type { SceneViewName } from '../../words/figures/scene.ts'
import { describeScene } from '../../words/figures/standpoint.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'

/** Where the machine is drawn: as a picture at rest, and on a canvas while it turns. */
export interface MachineStage {
  readonly isTurning: () => boolean
  readonly begin: (scene: Scene, view: View, lit: NumberedPart | null) => void
  readonly turn: (scene: Scene, view: View, lit: NumberedPart | null) => void
  readonly rest: (name: SceneViewName, scene: Scene, view: View, lit: NumberedPart | null) => void
  /** Takes the labels away: what is shown next has others. */
  readonly clear: () => void
  /** What one sees at a point of the screen. */
  readonly at: <Found>(x: number, y: number, seen: (x: number, y: number) => Found | null) => Found | null
}

/** Makes the stage of a bench. */
export const createMachineStage = (bench: HTMLElement): MachineStage => {
  const stage = required(bench, '.parts-stage', HTMLElement)
  const canvas = required(stage, '.parts-canvas', HTMLCanvasElement)
  const drawing = createMachineCanvas(canvas, () => required(shown(), '.scene-machine', SVGGElement))
  /** The picture on the screen, while the machine turns. */
  let turned: SVGSVGElement | null = null
  let labels = new Map<SVGSVGElement, SceneLabel[]>()
  let format: PictureFormat = 'tall'
  const layoutOf = (svg: SVGSVGElement): SceneLayout =>
    sceneLayouts[format][(svg.dataset['layout'] ?? 'wide') as Shape]
  const drawLabels = (svg: SVGSVGElement, drawn: readonly SceneLabel[], lit: NumberedPart | null): void => {
    drawSceneLabels(into(required(svg, '.scene-words', SVGGElement)), layoutOf(svg), drawn, lit)
  }
  /** Gives the pictures the format of a scene. */
  const fit = (scene: Scene): void => {
    format = scene.format
    for (const svg of stage.querySelectorAll<SVGSVGElement>('.scene-picture')) {
      const { width, height, machine } = layoutOf(svg)
      svg.setAttribute('viewBox', `0 0 ${width} ${height}`)
      svg.style.aspectRatio = `${width} / ${height}`
      const place = `translate(${machine.x} ${machine.y}) scale(${machine.scale})`
      required(svg, '.scene-place', SVGGElement).setAttribute('transform', place)
    }
  }
  const shown = (): SVGSVGElement =>
    [...stage.querySelectorAll<SVGSVGElement>('.scene-picture')].find(
      (svg) => getComputedStyle(svg).display !== 'none',
    ) ?? required(stage, '.scene-picture', SVGSVGElement)
  const placeOf = (svg: SVGSVGElement): SVGGElement => required(svg, '.scene-place', SVGGElement)
  const turn: MachineStage['turn'] = (scene, view, lit) => {
    const camera = cameraFor(scene, view)
    drawing.draw({ scene, marked: { ...unmarked, lit } }, camera)
    if (turned) drawLabels(turned, followed(layoutOf(turned), camera, labels.get(turned) ?? []), lit)
    stand(view)
  }
  const stand = ({ turned: angle }: View): void => {
    required(bench, '.stand-you', SVGPathElement).setAttribute('transform', `rotate(${-angle} 32 32)`)
  }
  return {
    isTurning: () => bench.hasAttribute('data-turning'),
    turn,
    begin: (scene, view, lit) => {
      fit(scene)
      turned = shown()
      drawing.layOver(placeOf(turned), machineRooms[format])
      canvas.hidden = false
      turn(scene, view, lit)
      bench.setAttribute('data-turning', '')
    },
    rest: (name, scene, view, lit) => {
      fit(scene)
      const camera = cameraFor(scene, view)
      const places = placesOf(scene, camera, sceneViews[name].named)
      const seen = places.flatMap(({ name: part, points }) => (points.length > 0 ? [part] : []))
      for (const svg of stage.querySelectorAll<SVGSVGElement>('.scene-picture')) {
        const place = placeOf(svg)
        place.querySelector('image')?.remove()
        svg.setAttribute('aria-label', describeScene(name, view, seen))
        drawScene(into(required(place, '.scene-machine', SVGGElement)), scene, camera, { ...unmarked, lit })
        const placed = labelsIn(layoutOf(svg), places, labels.get(svg))
        labels.set(svg, placed)
        drawLabels(svg, placed, lit)
      }
      stand(view)
      canvas.hidden = true
      bench.removeAttribute('data-turning')
    },
    clear: () => {
      for (const svg of labels.keys()) drawLabels(svg, [], null)
      labels = new Map()
    },
    at: (x, y, seen) => {
      const { a: scale, e, f } = placeOnScreen(placeOf(shown()))
      return seen((x - e) / scale, (y - f) / scale)
    },
  }
}
