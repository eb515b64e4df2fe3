import { gsap } from 'gsap'
import { chain } from '../../drawings/chain.ts'
import { type Layout, layouts, windowFrom } from '../../drawings/chain/layout.ts'
import type { Moment, Store } from './store.ts'

/** The figure on the page: which of its two pictures is shown, where its window is, and how to draw it. */
export interface Stage {
  readonly root: HTMLElement
  readonly layout: () => Layout
  readonly svg: () => SVGSVGElement
  /** First needle of the window now. */
  readonly from: () => number
  /** Holds the window still while a hand drags the carriage, or lets it follow again. */
  readonly holdWindow: (from: number | null) => void
}

const reduced = matchMedia('(prefers-reduced-motion: reduce)')

/** Draws the figure on every change of the state, at most once a picture of the screen. */
export const createStage = (root: HTMLElement, store: Store): Stage => {
  const small = matchMedia('(max-width: 44.99rem)')
  const find = (name: string): SVGSVGElement => {
    const svg = root.querySelector<SVGSVGElement>(`svg[data-layout="${name}"]`)
    if (!svg) throw new Error(`the figure has no ${name} picture`)
    return svg
  }
  const pictures = { wide: find('wide'), narrow: find('narrow') }
  const layout = (): Layout => layouts[small.matches ? 'narrow' : 'wide']
  const follow = ({ frame }: Moment): number => windowFrom(layout(), frame.x, frame.pass.way)

  // What only the view knows: how far the window lags behind its place, and the card behind its row.
  const view = { lag: 0, roll: 0 }
  let held: number | null = null
  let waiting = false
  const from = (): number => held ?? follow(store.now()) + view.lag

  const draw = (): void => {
    waiting = false
    const { run, frame } = store.now()
    const { name } = layout()
    chain.draw(pictures[name], run, frame, { shape: name, prefix: name, from: from(), roll: view.roll })
  }
  const ask = (): void => {
    if (waiting) return
    waiting = true
    requestAnimationFrame(draw)
  }
  const ease = (change: { lag?: number; roll?: number }, seconds: number): void => {
    gsap.killTweensOf(view)
    Object.assign(view, change)
    if (reduced.matches) Object.assign(view, { lag: 0, roll: 0 })
    else gsap.to(view, { lag: 0, roll: 0, duration: seconds, ease: 'power2.out', onUpdate: ask })
    ask()
  }

  store.subscribe((moment, before) => {
    if (before && held === null && moment.state.pass !== before.state.pass) {
      const stepped = moment.frame.pass.row !== before.frame.pass.row
      ease({ lag: follow(before) - follow(moment), roll: stepped ? 1 : 0 }, 0.45)
    }
    ask()
  })
  small.addEventListener('change', ask)
  return {
    root,
    layout,
    svg: () => pictures[layout().name],
    from,
    holdWindow: (place) => {
      const last = from()
      held = place
      if (place === null) ease({ lag: last - follow(store.now()) }, 0.35)
    },
  }
}
