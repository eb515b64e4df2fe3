import { setQuery } from '../../browser/address.ts'
import { namesState } from '../../browser/names-state.ts'
import { formerSteps } from '../../browser/former-steps.ts'
import { required } from '../../browser/dom.ts'
import { prefersReducedMotion } from '../../browser/tween.ts'
import { type NamedStep, readStepName } from '../../link/step-link.ts'
import { type Machine, say, sayToo, showOwnPlace } from '../machine/index.ts'
import { focusStep, linkStepsWithMachine } from './machine-links.ts'
import { readSteps, type Step } from './step.ts'
import { createStepBar } from './step-bar.ts'
import { scrollToStep, watchScroll, watchSteps } from './step-scroll.ts'
import { createStepTravel } from './step-travel.ts'

/** The step that the address names, as a place of the page or by `?step=`; the first where it names none. */
const addressedStep = (steps: readonly Step[]): NamedStep => {
  const ids = steps.map(({ id }) => id)
  const former = formerSteps(steps.map(({ element }) => element))
  const placed = readStepName(location.hash.slice(1), ids, former)
  if (location.hash !== '' && placed.trouble === null) return placed
  return readStepName(new URL(location.href).searchParams.get('step'), ids, former)
}

/** Alt with a Page key goes a step on or back, and the keyboard goes along, so that Tab goes on in the step that is read. */
const turnByKeys = (turn: (by: number) => Step | undefined): void => {
  document.addEventListener('keydown', (event) => {
    if (!event.altKey || (event.key !== 'PageDown' && event.key !== 'PageUp')) return
    event.preventDefault()
    const step = turn(event.key === 'PageDown' ? 1 : -1)
    if (step) focusStep(step, { preventScroll: true })
  })
}

/** Leads a reader through a chapter's steps by scroll, button, key and link, each with its exact state. */
export const leadThroughSteps = (root: HTMLElement, machine: Machine): void => {
  const { store } = machine
  const steps = readSteps(root, store.library)
  let current = -1
  const stepAt = (index: number): Step | null => steps[index] ?? null
  const stepNow = (): Step | null => stepAt(current)

  const enter = (index: number, isStill = false): void => {
    const step = steps[index]
    if (!step || index === current) return
    // What is said of the link that opened the page is not yet read then.
    if (current >= 0) say(root, '')
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
  const again = (): void => {
    const step = stepNow()
    if (!step) return
    say(root, '')
    travel.go(step, true)
  }
  const bar = createStepBar(root, turn, again)
  const travel = createStepTravel(machine, (follows) => {
    bar.offerReturn(!follows)
  })
  showOwnPlace(machine, required(root, '.happening', HTMLElement), again)
  turnByKeys(turn)
  linkStepsWithMachine(root, steps, enter)

  const { step: first, trouble } = addressedStep(steps)
  const opening = first > 0 ? stepAt(first) : null
  if (opening) scrollToStep(opening, 'auto')
  // A link's exact state wins over its step's own; the step only says where in the text one is.
  const linked = namesState() ? store.now().state : null
  enter(first, true)
  if (linked) travel.leave(linked)
  if (trouble !== null) sayToo(root, trouble)
  watchSteps(steps, opening, enter)
  watchScroll(() => (travel.follows() ? stepNow() : null), travel.scrub)
}
