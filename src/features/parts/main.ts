import { required } from '../../browser/dom.ts'
import { followHands } from '../../browser/scene/hand.ts'
import type { TurnKey } from '../../browser/scene/turns.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { bindSaving } from './save-figure.ts'
import type { Turner } from './turning.ts'

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
  followHands(stage, load)
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
  bindSaving(bench, load)
  bench.setAttribute('data-live', '')
  if (location.hash.includes('=')) void load()
}
