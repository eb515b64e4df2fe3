import { at } from '../../mechanism/lookup.ts'
import { wholeBedOf, type Bed } from '../../mechanism/bed.ts'
import { dataOf } from '../../browser/dom.ts'
import { moveTo, prefersReducedMotion, stopMoving } from '../../browser/tween.ts'
import { type ChainLayout, layouts, windowFrom } from '../../drawings/chain/layout.ts'
import type { Figure, Shape } from '../../drawings/shared/figure-contract.ts'
import { drawnDown } from '../../drawings/shared/turn.ts'
import type { SeenFrom } from '../../browser/address.ts'
import { createStore } from '../../browser/store.ts'
import { loadFigure } from '../../browser/load-figure.ts'
import type { Moment, MachineStore } from '../../browser/machine-store.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { stepsAtTurn } from '../../mechanism/turn.ts'
import { withDrawBar } from '../../mechanism/draw-bar.ts'
import type { SceneAttributes } from '../../words/figures/scene-step.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { createSceneInFigure, type SceneShown } from './scene-in-figure.ts'

/** The figures on the page: which is shown, in which of its two shapes, where its window is, and how to draw it. */
export interface FigureView {
  readonly root: HTMLElement
  /** The figure shown; null while it is on its way. */
  readonly figure: () => Figure | null
  readonly shape: () => Shape
  /** Layout of the whole chain, in the shape shown. */
  readonly layout: () => ChainLayout
  /** The machine's first and last needle, in use or not. */
  readonly whole: () => Bed
  /** The picture shown now. */
  readonly svg: () => SVGSVGElement
  /** First needle of the window now. */
  readonly from: () => number
  /** Holds the window still while a hand drags the carriage, or lets it follow again. */
  readonly holdWindow: (from: number | null) => void
  /** Draws again, where something that decides the shape has changed. */
  readonly redraw: () => void
  /** Shows another of the page's figures; how it shows the machine in three dimensions goes with it. */
  readonly show: (id: string, scene?: SceneAttributes) => void
  /** From where the machine in three dimensions is seen where a hand or a link has turned it. */
  readonly seenFrom: SeenFrom
  /** Turns the machine in three dimensions to what a link's `view` says, where it is shown, and gives what could not be read. */
  readonly follow: (view: string | null) => Promise<string | null>
  /** The id of the figure shown. */
  readonly shown: () => string
  /** How the machine in three dimensions is seen, where that is shown; else null. */
  readonly sceneSeen: () => SceneShown | null
  /** Lights a part of the machine in three dimensions, where that is shown. */
  readonly light: (part: NumberedPart | null) => void
}

/** The beats of a turn: the pins go down, the card steps, the pins come up; and how long they take together, in s. */
const beats = 3
const turnTime = 0.9

/** How far a turn is: its beat, by how many rows the card steps, and the machine before it. */
interface Turning {
  beat: number
  rows: number
  before: Frame | null
}

/** How high the draw bar lets the pins rise at a beat of a turn, in mm, where they rise as high as `pinHigh` without it. */
const drawBarAt = (beat: number, pinHigh: number): number =>
  drawnDown + (pinHigh - drawnDown) * Math.max(0, Math.abs(beat - 1.5) - 0.5)

/** How much of its way the card has still to go at a beat of a turn, where it steps. */
const rollAt = ({ beat, rows, before }: Turning): number =>
  rows > 0 && before ? Math.min(1, Math.max(0, 2 - beat)) : 0

/** A frame at a beat of a turn: the draw bar meets the high pins first; each pin comes up again as far as the next row lets it. */
const atTurn = (frame: Frame, { beat, before }: Turning): Frame => {
  if (beat >= beats || !before) return frame
  const { pinHeights } = beat < 1 ? before : frame
  return withDrawBar({ ...frame, pinHeights }, drawBarAt(beat, frame.condition.dimensions.pinHigh))
}

/** How long after the last drawing the figure is described again, in ms. */
const quiet = 500

/** Draws the figure shown on every change of the state, at most once a picture of the screen. */
export const createFigureView = (root: HTMLElement, store: MachineStore): FigureView => {
  // The styles show the narrow shape on phones, beside a chapter's text where that leaves little width, and before a
  // class: its labels are the largest for its height.
  const always = root.closest('.class-view, .speaker-view') ? ', screen' : ''
  const beside = root.closest('.chapter') ? ', screen and (min-width: 64rem) and (max-width: 74.99rem)' : ''
  const small = matchMedia(`screen and (max-width: 44.99rem)${beside}${always}`)
  const drawings = [...root.querySelectorAll<HTMLElement>('.drawing')]
  const description = root.querySelector('#figure-words')
  let current = dataOf(at(drawings, 0), 'figure')
  const figures = new Map<string, Figure>()
  const figure = (): Figure | null => figures.get(current) ?? null
  // Two machines side by side have half the width each.
  const shape = (): Shape => (small.matches || root.hasAttribute('data-compare') ? 'narrow' : 'wide')
  const svg = (): SVGSVGElement => {
    const found = root.querySelector<SVGSVGElement>(
      `[data-figure="${current}"] svg[data-layout="${shape()}"]`,
    )
    if (!found) throw new Error(`figure ${current} has no ${shape()} picture`)
    return found
  }
  const layout = (): ChainLayout => layouts[shape()]
  const whole = (): Bed => wholeBedOf(store.now().frame.condition.dimensions.needles)
  const follow = ({ frame }: Moment): number => windowFrom(layout(), frame.x, frame.pass.way, whole())
  const endOfWindow = (x: number): number => windowFrom(layout(), x, 1, whole())
  /** A place for the window that keeps it with the bed. */
  const alongBed = (place: number): number =>
    Math.min(endOfWindow(Infinity), Math.max(endOfWindow(-Infinity), place))

  // What only the view knows: how far the window lags behind its place, and the card behind its row.
  const view = { lag: 0 }
  const turning: Turning = { beat: beats, rows: 0, before: null }
  const seenFrom: SeenFrom = createStore<string | null, 'hand' | 'link'>(null, 'hand')
  const scene = createSceneInFigure(root, store, shape, seenFrom)
  let held: number | null = null
  let waiting = false
  let describing: ReturnType<typeof setTimeout> | undefined
  const from = (): number => held ?? follow(store.now()) + view.lag

  const draw = (): void => {
    waiting = false
    if (current === 'scene') scene?.draw(inTurn(store.now()))
    else drawFigure()
    clearTimeout(describing)
    describing = setTimeout(() => {
      const { run, frame } = store.now()
      const words = current === 'scene' ? scene?.describe() : figure()?.describe(run, frame)
      if (description && words) description.textContent = words
    }, quiet)
  }
  /** The machine in three dimensions at a beat of a turn: the row before is there until the pins are down, then the card goes on. */
  const inTurn = (moment: Moment): Moment => {
    const { beat, before } = turning
    if (beat < 1 && before) return { ...moment, frame: atTurn(before, turning) }
    const [frame, cardRoll] = [atTurn(moment.frame, turning), turning.rows * rollAt(turning)]
    return cardRoll > 0 ? { ...moment, frame: { ...frame, cardRoll } } : { ...moment, frame }
  }
  const drawFigure = (): void => {
    const shown = figure()
    if (!shown) return
    const { run, frame: now } = store.now()
    const prefix = `${current}-${shape()}`
    // Only the whole chain's window can lag behind the carriage; the others have windows of their own.
    const window = current === 'chain' ? { from: from() } : {}
    const frame = atTurn(now, turning)
    const options = { shape: shape(), prefix, roll: rollAt(turning), ...window }
    shown.draw(svg(), run, frame, options)
  }
  /** Draws the figure shown as soon as it is here; until then its built picture is shown. */
  const bring = async (): Promise<void> => {
    const id = current
    if (!figures.has(id) && id !== 'scene') figures.set(id, await loadFigure(id))
    if (id === current) draw()
  }
  const ask = (): void => {
    if (waiting) return
    waiting = true
    requestAnimationFrame(draw)
  }
  const ease = (lag: number, seconds: number): void => {
    stopMoving(view)
    view.lag = prefersReducedMotion() ? 0 : lag
    if (view.lag !== 0) moveTo(view, { lag: 0, duration: seconds, ease: 'power2.out', onUpdate: ask })
    ask()
  }
  const turn = ({ frame }: Moment, before: Moment): void => {
    stopMoving(turning)
    turning.beat = beats
    if (prefersReducedMotion()) return
    const { pass } = frame.pass
    const isNext = pass === before.frame.pass.pass + 1
    const isOther = frame.pass.row !== before.frame.pass.row
    // Where somebody goes to another pass than the next one, the card goes on by a row.
    const rows = isOther ? (isNext ? stepsAtTurn(frame.condition, pass) : 1) : 0
    Object.assign(turning, { beat: 0, rows, before: before.frame })
    moveTo(turning, { beat: beats, duration: turnTime, ease: 'none', onUpdate: ask })
  }

  store.subscribe((moment, before) => {
    if (before && held === null && moment.state.pass !== before.state.pass) {
      turn(moment, before)
      ease(follow(before) - follow(moment), 0.45)
    }
    ask()
  })
  small.addEventListener('change', ask)
  root.dataset.shown = current
  void bring()
  return {
    root,
    layout,
    whole,
    svg,
    figure,
    shape,
    from,
    redraw: ask,
    seenFrom,
    holdWindow: (place) => {
      const last = from()
      held = place === null ? null : alongBed(place)
      if (place === null) ease(last - follow(store.now()), 0.35)
    },
    follow: async (text) => (current === 'scene' && scene ? scene.follow(text) : null),
    shown: () => current,
    sceneSeen: () => (current === 'scene' ? (scene?.seen() ?? null) : null),
    light: (part) => scene?.light(part),
    show: (id, attributes = {}) => {
      root.dataset.subject = attributes.subject ?? ''
      if (id === 'scene') scene?.show(attributes)
      if (id === current || !drawings.some(({ dataset }) => dataset.figure === id)) return
      current = id
      for (const drawing of drawings) drawing.hidden = drawing.dataset.figure !== id
      for (const key of root.closest('.machine')?.querySelectorAll<HTMLElement>('[data-key]') ?? [])
        key.hidden = key.dataset.key !== id
      root.dataset.shown = id
      void bring()
    },
  }
}
