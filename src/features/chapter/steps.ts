import { prefersReducedMotion } from '../../browser/reduced-motion.ts'
import { read } from '../../link/read.ts'
import type { State } from '../../link/state.ts'
import { readCarriagePosition } from '../../link/carriage-position.ts'
import { moveTo, stopMoving } from '../../browser/tween.ts'
import { type Machine, say } from '../machine/index.ts'
import { required } from '../../browser/dom.ts'

/** A named stop of a chapter. */
interface Step {
  readonly id: string
  readonly title: string
  readonly element: HTMLElement
  readonly figure: string
  readonly state: State
  /** Where the carriage goes while the step is scrolled through; where it stands if it does not. */
  readonly to: number
}

/** On a phone the figure fills the upper half, and the text is read below it. */
const small = matchMedia('screen and (max-width: 63.99rem)')

/** The line of the screen, as a share of its height, at which a step is being read. */
const readingLine = (): number => (small.matches ? 0.72 : 0.5)

/** Leads a reader through a chapter's steps by scroll, button, key and link, each with its exact state. */
export const leadThroughSteps = (root: HTMLElement, machine: Machine): void => {
  const { store, stage, player } = machine
  const steps: Step[] = [...root.querySelectorAll<HTMLElement>('.step')].map((element) => {
    const { state } = read(element.dataset.state ?? '', store.library)
    return {
      id: element.id,
      title: element.querySelector('h2')?.textContent ?? '',
      element,
      figure: element.dataset.figure ?? '',
      state,
      to: readCarriagePosition(element.dataset.to ?? '') ?? state.at,
    }
  })
  const bar = required(root, '.step-bar', HTMLElement)
  const name = required(bar, '.step-name', HTMLElement)
  const back = required(bar, '.step-back', HTMLButtonElement)
  const forward = required(bar, '.step-forward', HTMLButtonElement)
  const again = required(bar, '.step-again', HTMLButtonElement)
  let current = -1
  /** Whether the machine follows the scroll; a hand on the machine ends that until the next step. */
  let follows = false

  const change = (part: Partial<State>): void => {
    store.set(part, 'step')
  }
  const shareOf = (step: Step): number => {
    const box = step.element.getBoundingClientRect()
    return Math.min(1, Math.max(0, (innerHeight * readingLine() - box.top) / Math.max(1, box.height)))
  }
  const travel = { at: 0 }
  const apply = (step: Step, isStill: boolean): void => {
    player.stop()
    say(root, '')
    stopMoving(travel)
    const before = store.now().state
    const share = prefersReducedMotion() || isStill ? 0 : shareOf(step)
    const at = step.state.at + share * (step.to - step.state.at)
    stage.show(step.figure)
    const canTravel =
      !prefersReducedMotion() && before.pass === step.state.pass && Math.abs(before.at - at) < 60
    change({ ...step.state, note: before.note, at: canTravel ? before.at : at })
    follows = true
    again.hidden = true
    if (!canTravel || before.at === at) return
    travel.at = before.at
    moveTo(travel, {
      at,
      duration: 0.7,
      ease: 'power2.inOut',
      onUpdate: () => {
        change({ at: travel.at })
      },
    })
  }
  const enter = (index: number, isStill = false): void => {
    const step = steps[index]
    if (!step || index === current) return
    current = index
    apply(step, isStill)
    name.textContent = `Step ${index + 1} of ${steps.length}: ${step.title}`
    back.disabled = index === 0
    forward.disabled = index === steps.length - 1
    for (const other of steps) other.element.toggleAttribute('data-current', other === step)
    root.dispatchEvent(new CustomEvent('step', { detail: { id: step.id, index, count: steps.length } }))
    const url = new URL(location.href)
    url.searchParams.set('step', step.id)
    history.replaceState(history.state, '', url)
  }
  /** Scrolls so that a step is read: below the figure on a phone, in the middle of the screen elsewhere. */
  const bring = (step: Step, behavior: ScrollBehavior): void => {
    const { top, height } = step.element.getBoundingClientRect()
    const above = small.matches
      ? 0.56 * innerHeight
      : Math.max(0.12 * innerHeight, (innerHeight - height) / 2)
    scrollTo({ top: scrollY + top - above, behavior })
  }
  const go = (index: number): void => {
    const step = steps[index]
    if (!step) return
    bring(step, prefersReducedMotion() ? 'auto' : 'smooth')
    enter(index)
  }

  store.subscribe((_, before, by) => {
    if (!before || by === 'step' || current < 0) return
    stopMoving(travel)
    follows = false
    again.hidden = false
  })
  back.addEventListener('click', () => {
    go(current - 1)
  })
  forward.addEventListener('click', () => {
    go(current + 1)
  })
  again.addEventListener('click', () => {
    const step = steps[current]
    if (step) apply(step, true)
    forward.focus()
  })
  document.addEventListener('keydown', (event) => {
    if (!event.altKey || (event.key !== 'PageDown' && event.key !== 'PageUp')) return
    event.preventDefault()
    const to = current + (event.key === 'PageDown' ? 1 : -1)
    go(to)
    // The keyboard goes along, so that Tab goes on in the step that is read.
    const heading = steps[to]?.element.querySelector('h2')
    heading?.setAttribute('tabindex', '-1')
    heading?.focus({ preventScroll: true })
  })

  const asked = new URL(location.href).searchParams.get('step')
  const first = Math.max(
    0,
    steps.findIndex(({ id }) => id === asked || `#${id}` === location.hash),
  )
  const hasState = location.hash.includes('=')
  const opening = steps[first]
  if (opening && first > 0) bring(opening, 'auto')
  if (hasState) {
    // A link's exact state wins over its step's own; the step only says where in the text one is.
    const kept = store.now().state
    enter(first, true)
    stopMoving(travel)
    store.set(kept)
  } else enter(first, true)

  const observer = new IntersectionObserver(
    (entries) => {
      for (const entry of entries)
        if (entry.isIntersecting) enter(steps.findIndex(({ element }) => element === entry.target))
    },
    { rootMargin: `-${100 * readingLine() - 5}% 0px -${95 - 100 * readingLine()}% 0px` },
  )
  // The first sight of the page is settled above; from then on the scroll decides.
  requestAnimationFrame(() => {
    for (const { element } of steps) observer.observe(element)
  })
  let waiting = false
  addEventListener(
    'scroll',
    () => {
      const step = steps[current]
      if (waiting || !follows || !step || step.to === step.state.at || prefersReducedMotion()) return
      waiting = true
      requestAnimationFrame(() => {
        waiting = false
        if (!follows || steps[current] !== step) return
        stopMoving(travel)
        change({ at: step.state.at + shareOf(step) * (step.to - step.state.at) })
      })
    },
    { passive: true },
  )
}
