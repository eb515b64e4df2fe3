import { dataOf } from '../../browser/dom.ts'
import { setQuery } from '../../browser/address.ts'
import { quote } from '../../link/troubles.ts'

/** A tool beside the machine, with what it does when it is opened and closed. */
export interface Tool {
  readonly open: () => void
  readonly close: () => void
}

const key = 'beside'

/** The tool that a wide page opens with, where the address names none. */
const usual = 'fabric'

/** As in the styles: where the tools have a column of their own, which would be empty without one. */
const wide = '(min-width: 75rem)'

/** The tool that the address names. */
const addressed = (): string | null => new URLSearchParams(location.search).get(key)

/**
 * Opens one tool at a time by its button; pressing the button again closes it. A wide page begins with the fabric where
 * the address names no tool, and only a choice is written to the address. `unknown` says that the address names none of
 * them.
 */
export const bindTools = (
  side: HTMLElement,
  tools: Readonly<Record<string, Tool>>,
  unknown: (words: string) => void,
): void => {
  const buttons = [...side.querySelectorAll<HTMLButtonElement>('[data-tool]')]
  let current: string | null = null
  const show = (id: string | null): void => {
    if (current !== null) tools[current]?.close()
    current = id
    side.toggleAttribute('data-open', id !== null)
    for (const button of buttons) {
      const isOpen = button.dataset.tool === id
      button.setAttribute('aria-expanded', String(isOpen))
      side.querySelector(`#tool-${dataOf(button, 'tool')}`)?.toggleAttribute('hidden', !isOpen)
    }
    if (id !== null) tools[id]?.open()
  }
  for (const button of buttons)
    button.addEventListener('click', () => {
      const id = button.dataset.tool ?? null
      show(id === current ? null : id)
      setQuery(key, current)
    })
  const named = addressed()
  if (named === null || named === '') {
    if (matchMedia(wide).matches) show(usual)
  } else if (Object.hasOwn(tools, named)) show(named)
  else unknown(`The workbench has no tool ${quote(named)}, so none is open.`)
}
