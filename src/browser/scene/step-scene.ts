import { followed, type SceneLabel } from '../../drawings/scene/draw-labels.ts'
import type { View } from '../../drawings/scene/engine/camera.ts'
import { readTree } from '../../drawings/scene/engine/tree-text.ts'
import { plantTree } from '../../drawings/scene/grown.ts'
import { cameraFor, onTheWay, standingFor } from '../../drawings/scene/cameras.ts'
import { modelNames } from '../../drawings/scene/machine/models.ts'
import { drawScene } from '../../drawings/scene/draw-scene.ts'
import { partSeenAt } from '../../drawings/scene/sight.ts'
import type { SceneSeen } from '../../drawings/scene/step-frames.ts'
import { stepLayouts } from '../../drawings/scene/step-layout.ts'
import {
  drawWords,
  pictureOf,
  type StepPicture,
  type StepWords,
  wordsOf,
} from '../../drawings/scene/step-picture.ts'
import { viewOfStep } from '../../drawings/scene/step-view.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { drawGroup, into } from '../../drawings/shared/svg.ts'
import {
  describeStep,
  readSceneStep,
  type SceneAttributes,
  type SceneStep,
} from '../../words/figures/scene-step.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { readView, writeView } from '../../link/scene-view.ts'
import { sceneViews } from '../../drawings/scene/views.ts'
import { sceneViewNames } from '../../words/figures/scene.ts'
import { required } from '../dom.ts'
import type { Moment } from '../machine-store.ts'
import { moveTo, prefersReducedMotion, stopMoving } from '../tween.ts'
import { createMachineCanvas, placeOnScreen } from './canvas.ts'
import type { Hand } from './hand.ts'
import { asWritten, draggedBy, nearerWay, travelSeconds, turnedBy, zoomedBy } from './turns.ts'

/** The machine of a step, alive: on a canvas while anything moves, and as a picture at rest. */
export interface StepScene extends Hand {
  /** Shows a step; from what is shown the camera travels there. */
  readonly show: (step: SceneAttributes, moment: Moment) => void
  /** Shows the machine as it is now. */
  readonly draw: (moment: Moment) => void
  /**
   * Turns it to what a link's `view` says: a view by its name, or a place of its own; back where it is null. Gives what could
   * not be read of it.
   */
  readonly follow: (text: string | null) => string | null
  /** The picture in words. */
  readonly describe: () => string
  /** How the machine is seen now, beside the step. */
  readonly seen: () => Omit<SceneSeen, 'step'>
  /** Lights a part, or none. */
  readonly light: (part: NumberedPart | null) => void
}

/** How long after the last movement the picture comes to rest, in ms. */
const quiet = 160

/** During which part of the way what is there goes over into what will be there. */
const over = { from: 0.15, to: 0.75 } as const

const same = (one: View, other: View): boolean =>
  one.turned === other.turned && one.raised === other.raised && one.zoom === other.zoom

/** A view as a link has it: by its name where it has one. */
const linkOf = (view: View): string => {
  const text = writeView(asWritten(view))
  return sceneViewNames.find((name) => writeView(sceneViews[name].view) === text) ?? text
}

/** Whether two steps show the same pieces of the machine. */
const showsSame = (one: SceneStep, other: SceneStep): boolean => JSON.stringify(one) === JSON.stringify(other)

/** The figure's element, the pictures that it has, and who hears what happens on it. */
export interface SceneDrawing {
  readonly drawing: HTMLElement
  /** The picture that the page's width asks for, and its shape. */
  readonly svg: () => SVGSVGElement
  readonly shape: () => Shape
  /** Called with a part that is pressed. */
  readonly pressed: (part: NumberedPart) => void
  /** Called with a link's `view` where the machine is turned from its step's own, or null where it is not. */
  readonly turned: (view: string | null) => void
}

/** Brings a figure of the machine to life, beginning with a step. */
export const createStepScene = (
  { drawing, svg, shape, pressed, turned }: SceneDrawing,
  first: SceneAttributes,
  firstMoment: Moment,
): StepScene => {
  for (const { dataset, text } of document.querySelectorAll<HTMLScriptElement>('script.scene-tree')) {
    const model = modelNames.find((name) => name === dataset['model'])
    if (model) plantTree(model, readTree(text))
  }
  const element = document.createElement('canvas')
  element.className = 'scene-canvas'
  element.hidden = true
  drawing.append(element)
  /** The groups of the picture shown, made where the build has not drawn it. */
  const groups = (): { place: SVGGElement; machine: SVGGElement; words: SVGGElement } => {
    const picture = svg()
    const { x, y, scale } = stepLayouts[shape()].machine
    if (!picture.querySelector('.scene-place')) {
      const place = drawGroup(into(picture), 'scene-place', {
        transform: `translate(${x} ${y}) scale(${scale})`,
      })
      drawGroup(place, 'scene-machine')
      drawGroup(into(picture), `scene-words ${shape()}`)
    }
    return {
      place: required(picture, '.scene-place', SVGGElement),
      machine: required(picture, '.scene-machine', SVGGElement),
      words: required(picture, '.scene-words', SVGGElement),
    }
  }
  const canvas = createMachineCanvas(element, () => groups().machine)

  let step = readSceneStep(first)
  let moment = firstMoment
  let lit: NumberedPart | null = null
  /** Where it is seen from; null at the step's own place. */
  let view: View | null = null
  let picture: StepPicture | null = null
  let words: StepWords = { labels: [], flags: [], hands: [], way: null }
  let shown: SVGSVGElement | null = null
  let taken: View = viewOfStep(step).view
  let timer: ReturnType<typeof setTimeout> | undefined
  let isAsked = false
  /** The way that the camera goes: from which picture, and how much of it is done. */
  let way: { readonly from: StepPicture; readonly start: View } | null = null
  const done = { share: 1 }

  const home = (): View => viewOfStep(step).view
  const viewNow = (): View => view ?? home()
  const make = (): StepPicture => pictureOf(moment.run, moment.frame, step, viewNow(), lit)
  const writeWords = (over: StepPicture, labels: readonly SceneLabel[]): void => {
    drawWords(into(groups().words), stepLayouts[shape()], over, { ...words, labels })
  }
  const rest = (): void => {
    clearTimeout(timer)
    stopMoving(done)
    way = null
    picture = make()
    shown = svg()
    const { place, machine } = groups()
    drawScene(into(machine), picture.scene, picture.camera, picture.marked)
    place.querySelector('image')?.remove()
    words = wordsOf(picture, stepLayouts[shape()], words.labels)
    writeWords(picture, words.labels)
    drawing.removeAttribute('data-turning')
    drawing.setAttribute('data-drawn', '')
    element.hidden = true
  }
  const restSoon = (): void => {
    clearTimeout(timer)
    timer = setTimeout(rest, quiet)
  }
  /** Draws one picture of the way, or of the machine as it moves. */
  const paint = (): void => {
    isAsked = false
    if (!picture) return
    if (way) {
      const share = done.share
      const from = standingFor(way.from.scene, way.start, way.from.camera)
      const to = standingFor(picture.scene, nearerWay(way.start, picture.view), picture.camera)
      const now = onTheWay(from, to, share)
      const shareOver = Math.min(1, Math.max(0, (share - over.from) / (over.to - over.from)))
      if (showsSame(way.from.step, step)) canvas.draw(picture, now.camera)
      else canvas.blend(way.from, picture, shareOver, now.camera)
      writeWords({ ...picture, ...now }, [])
    } else {
      canvas.draw(picture, picture.camera)
      writeWords(picture, followed(stepLayouts[shape()], picture.camera, words.labels))
    }
  }
  const begin = (): void => {
    canvas.layOver(groups().place)
    paint()
    element.hidden = false
    drawing.setAttribute('data-turning', '')
  }
  const ask = (): void => {
    if (element.hidden) begin()
    else if (!isAsked) {
      isAsked = true
      requestAnimationFrame(paint)
    }
  }
  /** Goes from what is shown to what is to be shown. */
  const travel = (from: StepPicture, start: View): void => {
    clearTimeout(timer)
    stopMoving(done)
    picture = make()
    if (prefersReducedMotion() || !drawing.checkVisibility()) {
      rest()
      return
    }
    way = { from, start }
    words = { ...wordsOf(picture, stepLayouts[shape()]), labels: [] }
    done.share = 0
    ask()
    moveTo(done, {
      share: 1,
      duration: travelSeconds,
      ease: 'power2.inOut',
      onUpdate: ask,
      onComplete: restSoon,
    })
  }
  /** Turns it, without a word to the link: while a hand turns the machine, that waits for its rest. */
  const turnBy = (next: View | null): void => {
    const isHome = next === null || same(asWritten(next), home())
    view = isHome ? null : next
  }
  const setView = (next: View | null): void => {
    turnBy(next)
    turned(view && linkOf(view))
  }
  const handTurns = (next: View): void => {
    clearTimeout(timer)
    turnBy(next)
    const last = picture ?? make()
    picture = { ...last, view: viewNow(), camera: cameraFor(last.scene, viewNow()) }
    ask()
  }
  const turnTo = (next: View): void => {
    const [from, start] = [picture ?? make(), viewNow()]
    setView(next)
    travel(from, start)
  }
  rest()
  return {
    show: (attributes, now) => {
      const next = readSceneStep(attributes)
      const [from, start, isSame] = [picture ?? make(), viewNow(), showsSame(step, next) && view === null]
      step = next
      moment = now
      if (isSame) return
      setView(null)
      travel(from, start)
    },
    draw: (now) => {
      const isMoved = now.frame !== moment.frame || now.run !== moment.run
      moment = now
      if (svg() !== shown) {
        rest()
        return
      }
      if (!isMoved) return
      picture = make()
      ask()
      if (!way) restSoon()
    },
    follow: (text) => {
      if (text === null) {
        turnTo(home())
        return null
      }
      const reading = readView(text, sceneViewNames)
      if (reading.kind === 'refused') {
        setView(view)
        return reading.reason
      }
      turnTo(reading.kind === 'named' ? sceneViews[reading.name].view : reading.view)
      return reading.kind === 'turned' ? reading.remark : null
    },
    describe: () => describeStep(moment.run, moment.frame, step),
    seen: () => ({ view, lit }),
    light: (part) => {
      if (part === lit) return
      lit = part
      if (!way) rest()
    },
    turn: (key) => {
      turnTo(turnedBy(viewNow(), key, home()))
    },
    take: () => {
      if (way) rest()
      taken = viewNow()
    },
    drag: (right, down) => {
      handTurns(draggedBy(taken, right, down))
    },
    zoom: (factor) => {
      handTurns(zoomedBy(taken, factor))
    },
    release: () => {
      setView(view)
      rest()
    },
    press: (x, y, target) => {
      const label = target instanceof Element ? target.closest<SVGElement>('[data-name]') : null
      const { a, e, f } = placeOnScreen(groups().place)
      const { scene, camera } = picture ?? make()
      const part =
        (label?.dataset['name'] as NumberedPart | undefined) ??
        partSeenAt(scene, camera)((x - e) / a, (y - f) / a)
      if (part) pressed(part)
    },
  }
}
