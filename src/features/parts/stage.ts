import { required } from '../../browser/dom.ts'
import { drawSceneLabels, followed, labelsIn, type SceneLabel } from '../../drawings/scene/draw-labels.ts'
import type { View } from '../../drawings/scene/engine/camera.ts'
import { canvasPen, type Inks } from '../../drawings/scene/engine/canvas-pen.ts'
import { type SceneLayout, sceneLayouts } from '../../drawings/scene/layout.ts'
import {
  cameraFor,
  drawScene,
  inkScene,
  machineRoom,
  placesOf,
  type Scene,
} from '../../drawings/scene/scene.ts'
import { sceneViews } from '../../drawings/scene/views.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { into } from '../../drawings/shared/svg.ts'
import { describeScene, type SceneViewName } from '../../words/figures/scene.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'

/** Where the machine is drawn: as a picture at rest, and on a canvas while it turns. */
export interface Stage {
  readonly isTurning: () => boolean
  readonly begin: (scene: Scene, view: View, lit: NumberedPart | null) => void
  readonly turn: (scene: Scene, view: View, lit: NumberedPart | null) => void
  readonly rest: (name: SceneViewName, scene: Scene, view: View, lit: NumberedPart | null) => void
  /** Takes the labels away: what is shown next has others. */
  readonly clear: () => void
  /** What one sees at a point of the screen. */
  readonly at: <Found>(x: number, y: number, seen: (x: number, y: number) => Found | null) => Found | null
}

const svgName = 'http://www.w3.org/2000/svg'

/** Reads the colours of the drawing from the styles, by samples that nobody sees. */
const readInks = (place: Element): { inks: Inks; tonesOf: (look: string) => readonly string[] } => {
  const sample = (look: string): CSSStyleDeclaration => {
    const path = document.createElementNS(svgName, 'path')
    path.setAttribute('class', look)
    place.append(path)
    const { fill, stroke, strokeWidth } = getComputedStyle(path)
    path.remove()
    return { fill, stroke, strokeWidth } as CSSStyleDeclaration
  }
  const line = (look: string): { colour: string; width: number } => {
    const { stroke, strokeWidth } = sample(look)
    return { colour: stroke, width: Number.parseFloat(strokeWidth) }
  }
  const known = new Map<string, readonly string[]>()
  return {
    inks: {
      lines: {
        outline: line('l-outline'),
        crease: line('l-crease'),
        mark: line('l-mark'),
        hatching: line('l-hatching'),
        wrong: line('l-wrong'),
      },
      marks: {
        hole: sample('m-hole').fill,
        opening: sample('m-opening').fill,
        blocked: sample('m-blocked').fill,
      },
    },
    tonesOf: (look) => {
      const found = known.get(look) ?? [0, 1, 2, 3, 4].map((tone) => sample(`${look} t${tone}`).fill)
      known.set(look, found)
      return found
    },
  }
}

/** Makes the stage of a bench. */
export const createStage = (bench: HTMLElement): Stage => {
  const stage = required(bench, '.parts-stage', HTMLElement)
  const canvas = required(stage, '.parts-canvas', HTMLCanvasElement)
  const context = canvas.getContext('2d')
  if (!context) throw new Error('this browser draws on no canvas')
  let colours: ReturnType<typeof readInks> | null = null
  let tones: readonly string[] = []
  /** The picture on the screen, while the machine turns. */
  let turned: SVGSVGElement | null = null
  let labels = new Map<SVGSVGElement, SceneLabel[]>()
  const layoutOf = (svg: SVGSVGElement): SceneLayout =>
    sceneLayouts[(svg.dataset['layout'] ?? 'wide') as Shape]
  const drawLabels = (svg: SVGSVGElement, drawn: readonly SceneLabel[], lit: NumberedPart | null): void => {
    drawSceneLabels(into(required(svg, '.scene-words', SVGGElement)), layoutOf(svg), drawn, lit)
  }
  const shown = (): SVGSVGElement =>
    [...stage.querySelectorAll<SVGSVGElement>('.scene-picture')].find(
      (svg) => getComputedStyle(svg).display !== 'none',
    ) ?? required(stage, '.scene-picture', SVGSVGElement)
  const placeOf = (svg: SVGSVGElement): DOMMatrix => {
    const matrix = required(svg, '.scene-place', SVGGElement).getScreenCTM()
    if (!matrix) throw new Error('the picture is not on the page')
    return matrix
  }
  const point = (): void => {
    turned = shown()
    const { a: scale, e, f } = placeOf(turned)
    const box = stage.getBoundingClientRect()
    const fine = Math.min(devicePixelRatio, 2)
    canvas.width = Math.round(machineRoom.width * scale * fine)
    canvas.height = Math.round(machineRoom.height * scale * fine)
    Object.assign(canvas.style, {
      left: `${e - box.left}px`,
      top: `${f - box.top}px`,
      width: `${machineRoom.width * scale}px`,
      height: `${machineRoom.height * scale}px`,
    })
    context.setTransform(scale * fine, 0, 0, scale * fine, 0, 0)
  }
  const turn: Stage['turn'] = (scene, view, lit) => {
    colours ??= readInks(required(stage, '.scene-machine', SVGGElement))
    const { inks, tonesOf } = colours
    context.clearRect(0, 0, machineRoom.width, machineRoom.height)
    context.lineJoin = 'round'
    context.lineCap = 'round'
    const camera = cameraFor(scene, view)
    const pen = canvasPen(context, inks, camera.line, () => tones)
    inkScene(scene, camera, pen, lit, (look) => {
      tones = tonesOf(look)
    })
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
      colours = null
      point()
      canvas.hidden = false
      turn(scene, view, lit)
      bench.setAttribute('data-turning', '')
    },
    rest: (name, scene, view, lit) => {
      const camera = cameraFor(scene, view)
      const places = placesOf(scene, camera, sceneViews[name].named)
      const seen = places.flatMap(({ name: part, points }) => (points.length > 0 ? [part] : []))
      for (const svg of stage.querySelectorAll<SVGSVGElement>('.scene-picture')) {
        const place = required(svg, '.scene-place', SVGGElement)
        place.querySelector('image')?.remove()
        svg.setAttribute('aria-label', describeScene(name, view, seen))
        drawScene(into(required(place, '.scene-machine', SVGGElement)), scene, camera, lit)
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
      const { a: scale, e, f } = placeOf(shown())
      return seen((x - e) / scale, (y - f) / scale)
    },
  }
}
