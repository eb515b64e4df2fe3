import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { FigureView } from '../machine/index.ts'

/** How far beside its word an explanation is, and from the edges of the screen, in pixels. */
const [beside, edge] = [8, 8]

/** Puts the explanation of a word below it, or above where there is no room below. */
const placeBeside = (word: HTMLElement, words: HTMLElement): void => {
  const { left, top, bottom } = word.getBoundingClientRect()
  const { offsetWidth: width, offsetHeight: height } = words
  const isBelow = bottom + beside + height < innerHeight - edge
  Object.assign(words.style, {
    margin: '0',
    inset: 'auto',
    left: `${Math.max(edge, Math.min(left, innerWidth - width - edge))}px`,
    top: `${Math.max(edge, isBelow ? bottom + beside : top - beside - height)}px`,
  })
}

/**
 * Ties the words of a text to the parts of the machine: a word under the pointer, with the focus or with its explanation
 * open lights its part, and a part that is pressed lights its word and opens the explanation beside it.
 */
export const bindPartWords = (root: HTMLElement, stage: FigureView): void => {
  for (const word of root.querySelectorAll<HTMLButtonElement>('.story button.term')) {
    const words = root.querySelector<HTMLElement>(`#${word.getAttribute('popovertarget') ?? ''}`)
    const part = word.dataset['part'] as NumberedPart | undefined
    const light = (isLit: boolean): void => {
      word.toggleAttribute('data-lit', isLit)
      if (part !== undefined) stage.light(isLit ? part : null)
    }
    const leave = (): void => {
      light(words?.matches(':popover-open') ?? false)
    }
    word.addEventListener('pointerenter', () => {
      light(true)
    })
    word.addEventListener('focus', () => {
      light(true)
    })
    word.addEventListener('pointerleave', leave)
    word.addEventListener('blur', leave)
    words?.addEventListener('toggle', ({ newState }) => {
      if (newState === 'open') placeBeside(word, words)
      light(newState === 'open')
    })
  }
  root.addEventListener('part', (event) => {
    if (!(event instanceof CustomEvent)) return
    const { name } = event.detail as { name: NumberedPart }
    const own = `.step[data-current] button.term[data-part="${name}"]`
    const word = root.querySelector<HTMLButtonElement>(own)
    if (!word) {
      stage.light(name)
      return
    }
    word.scrollIntoView({ block: 'nearest' })
    const words = root.querySelector<HTMLElement>(`#${word.getAttribute('popovertarget') ?? ''}`)
    // The press itself would close it again, as one beside it.
    setTimeout(() => words?.showPopover())
  })
}
