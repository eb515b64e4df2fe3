import { setQuery } from '../../browser/address.ts'
import { prefersReducedMotion } from '../../browser/tween.ts'
import type { Machine } from '../machine/index.ts'
import { readSteps, type Step } from './step.ts'
import { createStepBar } from './step-bar.ts'
import { scrollToStep, watchScroll, watchSteps } from './step-scroll.ts'
import { createStepTravel } from './step-travel.ts'

/** The step that the address names, by `?step=` or as a place of the page; the first where it names none. */
const addressedStep = (steps: readonly Step[]): number => {
  const named = new URL(location.href).searchParams.get('step')
  return Math.max(
    0,
    steps.findIndex(({ id }) => id === named || `#${id}` === location.hash),
  )
}

/** Alt with a Page key goes a step on or back, and the keyboard goes along, so that Tab goes on in the step that is read. */
const turnByKeys = (turn: (by: number) => Step | undefined): void => {
  document.addEventListener('keydown', (event) => {
    if (!event.altKey || (event.key !== 'PageDown' && event.key !== 'PageUp')) return
    event.preventDefault()
    const heading = turn(event.key === 'PageDown' ? 1 : -1)?.element.querySelector('h2')
    heading?.setAttribute('tabindex', '-1')
    heading?.focus({ preventScroll: true })
  })
}

/** Leads a reader through a chapter's steps by scroll, button, key and link, each with its exact state. */
export const leadThroughSteps = (root: HTMLElement, machine: Machine): void => {
  const { store } = machine
  const steps = readSteps(root, store.library)
  let current = -1
  const stepNow = (): Step | null => steps[current] ?? null

  const enter = (index: number, isStill = false): void => {
    const step = steps[index]
    if (!step || index === current) return
    current = index
    travel.go(step, isStill)
    bar.show(index, steps)
    for (const other of steps) other.element.toggleAttribute('data-current', other === step)
    root.dispatchEvent(new CustomEvent('step', { detail: { id: step.id, index, count: steps.length } }))
    setQuery('step', step.id)
  }
  const turn = (by: number): Step | undefined => {
    const index = current + by
    const step = steps[index]
    if (!step) return undefined
    scrollToStep(step, prefersReducedMotion() ? 'auto' : 'smooth')
    enter(index)
    return step
  }
  const bar = createStepBar(root, turn, () => {
    const step = stepNow()
    if (step) travel.go(step, true)
  })
  const travel = createStepTravel(root, machine, (follows) => {
    bar.offerReturn(!follows)
  })
  turnByKeys(turn)

  const first = addressedStep(steps)
  const opening = steps[first]
  if (opening && first > 0) scrollToStep(opening, 'auto')
  // A link's exact state wins over its step's own; the step only says where in the text one is.
  const linked = location.hash.includes('=') ? store.now().state : null
  enter(first, true)
  if (linked) travel.leave(linked)
  watchSteps(steps, enter)
  watchScroll(() => (travel.follows() ? stepNow() : null), travel.scrub)
}
