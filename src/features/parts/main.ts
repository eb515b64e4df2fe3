import { required } from '../../browser/dom.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { Turner, TurnKey } from './turning.ts'

/** Which way each key turns. */
const keys: Readonly<Record<string, TurnKey>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  '+': 'in',
  '-': 'out',
  Home: 'back',
}

/** How far a hand may move between press and release for a press, in pixels. */
const still = 5

/** Follows a hand that drags the machine, and one that presses a part. */
const followHand = (stage: HTMLElement, load: () => Promise<Turner>): void => {
  let held: { pointer: number; x: number; y: number; isDragged: boolean } | null = null
  stage.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || held) return
    held = { pointer: event.pointerId, x: event.clientX, y: event.clientY, isDragged: false }
    void load().then((turner) => turner.take())
  })
  stage.addEventListener('pointermove', (event) => {
    if (held?.pointer !== event.pointerId) return
    const [right, down] = [event.clientX - held.x, event.clientY - held.y]
    if (!held.isDragged && Math.hypot(right, down) < still) return
    if (!held.isDragged) stage.setPointerCapture(event.pointerId)
    held.isDragged = true
    void load().then((turner) => turner.drag(right, down))
  })
  for (const end of ['pointerup', 'pointercancel'] as const)
    stage.addEventListener(end, (event) => {
      if (held?.pointer !== event.pointerId) return
      const { isDragged } = held
      held = null
      if (isDragged) void load().then((turner) => turner.release())
      else if (end === 'pointerup')
        void load().then((turner) => turner.press(event.clientX, event.clientY, event.target))
    })
  stage.addEventListener('dblclick', () => void load().then((turner) => turner.turn('back')))
  stage.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey) return
      event.preventDefault()
      void load().then((turner) => turner.turn(event.deltaY < 0 ? 'in' : 'out'))
    },
    { passive: false },
  )
}

/**
 * Brings the page of the parts to life: what draws the machine is fetched when somebody turns it, chooses a view or a
 * part, or comes by a link that says from where it is seen.
 */
export const startParts = (bench: HTMLElement): void => {
  let coming: Promise<Turner> | null = null
  const load = (): Promise<Turner> =>
    (coming ??= import('./turning.ts').then(({ createTurner }) => createTurner(bench)))
  const stage = required(bench, '.parts-stage', HTMLElement)
  stage.tabIndex = 0
  stage.setAttribute('role', 'group')
  stage.setAttribute('aria-label', 'The machine: arrow keys turn it, Home brings it back')
  stage.addEventListener('keydown', (event) => {
    const key = keys[event.key]
    if (!key || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    void load().then((turner) => turner.turn(key))
  })
  followHand(stage, load)
  for (const button of bench.querySelectorAll<HTMLElement>('[data-turn]'))
    button.addEventListener(
      'click',
      () => void load().then((turner) => turner.turn(button.dataset['turn'] as TurnKey)),
    )
  for (const button of bench.querySelectorAll<HTMLElement>('button[data-view], a[data-view]'))
    button.addEventListener('click', (event) => {
      event.preventDefault()
      void load().then((turner) => turner.go(button.dataset['view'] ?? ''))
    })
  for (const item of bench.querySelectorAll<HTMLElement>('.parts-list > li'))
    required(item, 'details', HTMLDetailsElement).addEventListener('toggle', () => {
      const isOpen = item.querySelector('details[open]') !== null
      void load().then((turner) => turner.light(item.dataset['name'] as NumberedPart, isOpen))
    })
  bench.setAttribute('data-live', '')
  if (location.hash.includes('=')) void load()
}
