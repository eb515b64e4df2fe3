import type { SeenFrom } from '../../browser/address.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore, Moment } from '../../browser/machine-store.ts'
import { followHands } from '../../browser/scene/hand.ts'
import type { StepScene } from '../../browser/scene/step-scene.ts'
import type { SceneSeen } from '../../drawings/scene/step-frames.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { read } from '../../link/read.ts'
import { write } from '../../link/write.ts'
import type { SceneAttributes } from '../../words/figures/scene-step.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'

/** How the machine in three dimensions is seen, with the step as its text has it. */
export interface SceneShown extends Omit<SceneSeen, 'step'> {
  readonly step: SceneAttributes
}

/** The machine in three dimensions among the figures of a page: what draws it is fetched when there is something to draw. */
export interface SceneInFigure {
  /** Shows how a step sees the machine. */
  readonly show: (step: SceneAttributes) => void
  readonly draw: (moment: Moment) => void
  readonly light: (part: NumberedPart | null) => void
  /** Turns it to what a link's `view` says, or back where it says nothing, and gives what could not be read of it. */
  readonly follow: (view: string | null) => Promise<string | null>
  /** The picture in words; null while it is as it was built. */
  readonly describe: () => string | null
  /** How the machine is seen now. */
  readonly seen: () => SceneShown
}

/** What a reader does first who goes on to read a page. */
const firstActs = ['pointermove', 'pointerdown', 'keydown', 'scroll'] as const

/** Does something once, as soon as a reader does anything. */
const atFirstAct = (does: () => void): void => {
  const first = new AbortController()
  for (const act of firstActs)
    addEventListener(
      act,
      () => {
        first.abort()
        does()
      },
      { passive: true, signal: first.signal },
    )
}

/** Makes the figure's machine, where the page has one. */
export const createSceneInFigure = (
  root: HTMLElement,
  store: MachineStore,
  shape: () => Shape,
  seenFrom: SeenFrom,
): SceneInFigure | null => {
  const drawing = root.querySelector<HTMLElement>('.drawing[data-figure="scene"]')
  if (!drawing) return null
  // Its own pictures: the one that the page shows may be another figure's by the time that this one comes to rest.
  const svg = (): SVGSVGElement => required(drawing, `svg[data-layout="${shape()}"]`, SVGSVGElement)
  const { view, layers, subject, also, hand } = drawing.dataset
  let step: SceneAttributes = { view, layers, subject, also, hand }
  let live: StepScene | null = null
  let coming: Promise<StepScene> | null = null
  /** The state and the step of the picture that was built into the page; null where it is drawn later. */
  const built = drawing.dataset['built']
  const builtState = built === undefined ? null : write(read(built, store.library).state, store.library)
  const isAsBuilt = (): boolean =>
    builtState !== null &&
    view === step.view &&
    layers === step.layers &&
    subject === step.subject &&
    also === step.also &&
    hand === step.hand &&
    write(store.now().state, store.library) === builtState
  const load = (): Promise<StepScene> =>
    (coming ??= import('../../browser/scene/step-scene.ts').then(({ createStepScene }) => {
      live = createStepScene(
        {
          drawing,
          svg,
          shape,
          pressed: (name) => root.dispatchEvent(new CustomEvent('part', { detail: { name }, bubbles: true })),
          turned: (view) => {
            seenFrom.set(view)
          },
        },
        step,
        store.now(),
      )
      return live
    }))
  drawing.tabIndex = 0
  drawing.setAttribute('role', 'group')
  drawing.setAttribute('aria-label', 'The machine: arrow keys turn it, Home brings it back')
  followHands(drawing, load)
  // It is at hand by the time somebody goes on or turns it, but never before the page itself is.
  atFirstAct(() => void import('../../browser/scene/step-scene.ts'))
  return {
    show: (next) => {
      step = next
      if (live) live.show(step, store.now())
      else if (!isAsBuilt()) void load()
    },
    draw: (moment) => {
      if (live) live.draw(moment)
      else if (!isAsBuilt()) void load()
    },
    light: (part) => {
      if (live ?? part) void load().then((scene) => scene.light(part))
    },
    follow: async (text) => (await load()).follow(text),
    describe: () => live?.describe() ?? null,
    seen: () => ({ step, ...(live?.seen() ?? { view: null, lit: null }) }),
  }
}
