import { parseHTML } from 'linkedom'
import { expect } from 'vitest'
import type { Figure } from '@/drawings/shared/figure-contract.ts'
import type { Shape } from '@/drawings/shared/figure-contract.ts'
import type { Card } from '@/mechanism/card.ts'
import { type Frame, frameAt } from '@/mechanism/frame.ts'
import type { Run } from '@/mechanism/pass.ts'
import type { Scenario } from '@/mechanism/scenario.ts'
import { machine } from '../mechanism/make.ts'
import type { SceneStep } from '@/words/figures/scene-step.ts'
import { toNeedle } from '@/mechanism/indices.ts'

/** A machine stopped somewhere. */
export interface State {
  readonly run: Run
  readonly frame: Frame
}

/** Rows of every kind: scattered holes, long gaps, all holes and none. */
export const mixedCard: Card = [0xa53c96, 0x1f07e8, 0x800001, 0x5b6d13, 0xffffff, 0, 0x74d80b, 0x000800]

export const stateOf = (
  faults: readonly string[],
  pass: number,
  at: number,
  more: Partial<Scenario> = {},
): State => {
  const run = machine(mixedCard, faults, more)
  return { run, frame: frameAt(run, pass, at) }
}

/** Healthy and broken machines, both ways, within the bed and beyond its ends. */
export const states: readonly State[] = [
  stateOf([], 1, -12),
  stateOf([], 17, 104),
  stateOf([], 18, 96.3),
  stateOf(['strip.3.seized', 'pin.5.low', 'rocker.7.dead'], 9, 88.25),
  stateOf(['strip.4.over', 'needle.L5.gone', 'catch.R3.broken'], 12, 131.5),
  stateOf(['card.reversed', 'card.torn.3.4', 'card.blocked.1.1', 'pawl.left'], 10, 60),
  stateOf(['card.skew=0.2', 'card.side=0.9', 'belt.timing=3', 'belt.slack=1.5'], 7, 199.75),
  stateOf(['strip.3.slow', 'retainer.worn=20', 'gate.1.high=0.3'], 6, 42, { speed: 1600, wear: 0.5 }),
  stateOf(['presser.right.worn=1', 'sweep.worn=0.9', 'pin.9.over', 'strip.1.seized'], 5, 120, { wear: 1 }),
  stateOf([], 4, 211, { card: null, wear: 0.8, seed: 7 }),
  stateOf(['gate.1.low=1.5', 'needle.R4.bent', 'turn.short.3'], 3, 100, {
    bed: { first: toNeedle(90), last: toNeedle(109) },
  }),
]

export const emptySheet = (): SVGSVGElement => {
  const { document } = parseHTML('<html><body></body></html>')
  return document.createElementNS('http://www.w3.org/2000/svg', 'svg')
}

/** Draws a state on a sheet. */
const drawOn = (
  sheet: SVGSVGElement,
  figure: Figure,
  { run, frame }: State,
  shape: Shape,
  scene?: SceneStep,
): string => {
  figure.draw(sheet, run, frame, { shape, prefix: 'test', ...(scene && { scene }) })
  return sheet.outerHTML
}

/** Draws a state on an empty sheet and hands back the sheet; the machine in three dimensions as a step shows it. */
export const drawn = (figure: Figure, state: State, shape: Shape, scene?: SceneStep): SVGSVGElement => {
  const sheet = emptySheet()
  drawOn(sheet, figure, state, shape, scene)
  return sheet
}

/**
 * Every state drawn twice, and over every other, gives the markup that it gives on an empty sheet. With a prime number
 * of states, a walk round them in steps of each size meets every pair.
 */
export const expectSameOverAll = (figure: Figure, shape: Shape): void => {
  const fresh = states.map((state) => drawn(figure, state, shape).outerHTML)
  const sheet = emptySheet()
  let last = 0
  for (let step = 0; step < states.length; step++)
    for (let walked = 0; walked <= states.length; walked++) {
      const next = (walked * step) % states.length
      const markup = drawOn(sheet, figure, states[next]!, shape)
      expect(markup === fresh[next], `state ${next} over state ${last}`).toBe(true)
      last = next
    }
}

/** No number in the markup has come to nothing. */
export const expectSound = (figure: Figure, shape: Shape): void => {
  for (const state of states)
    expect(/NaN|undefined|Infinity|null|\de-\d/.exec(drawn(figure, state, shape).outerHTML)).toBeNull()
}

/** Texts of a class in a drawing. */
export const textsOf = (sheet: SVGSVGElement, selector: string): string[] =>
  [...sheet.querySelectorAll(selector)].map(({ textContent }) => textContent)
