import type { Command } from './keys.ts'
import { commandOfEvent } from './letter-keys.ts'

/** What has the focus: nothing with keys of its own; a field to type in; a control, a dialog or the figure's parts. */
export type FocusedKind = 'nothing' | 'field' | 'control'

/** What decides who gets the keys: the last walk by Tab, press of a pointer, Esc, or opening of the keys' list by its key. */
export type HandInput = 'tab' | 'pointer' | 'escape' | 'help'

/**
 * Whether what has the focus keeps a key, so that it doesn't lead the class. A control does only where it was walked to by
 * Tab, or opened by a key: pressed with a mouse, it gives the keys back, or a clicker's next press would be lost on it.
 * A field to type in does however it was reached, but for the page keys, which most clickers send and no field needs.
 */
export const keepsKey = (focused: FocusedKind, last: HandInput | undefined, key: string): boolean => {
  switch (focused) {
    case 'nothing':
      return false
    case 'field':
      return last === 'tab' || (key !== 'PageDown' && key !== 'PageUp')
    case 'control':
      return last === 'tab' || last === 'help'
  }
}

const controls =
  'button, a[href], input, select, textarea, summary, dialog, [popover], [role="application"], [contenteditable]'

const fields =
  'textarea, [contenteditable], input:not([readonly], [type="button"], [type="checkbox"], [type="radio"], [type="range"])'

/** The kind of what a key is aimed at. */
const kindOf = (target: EventTarget | null): FocusedKind => {
  if (!(target instanceof Element)) return 'nothing'
  if (target.matches(fields)) return 'field'
  return target.closest(controls) ? 'control' : 'nothing'
}

/** Takes the focus from what has it, and closes the popover that it was in. */
const letGo = (): void => {
  const { activeElement } = document
  if (!(activeElement instanceof HTMLElement)) return
  activeElement.closest<HTMLElement>('[popover]')?.hidePopover()
  activeElement.blur()
}

/**
 * Leads a class by keys: `run` gets the command of each key that nothing keeps, and returns false where the window has no
 * such command. Esc lets go of whatever has the keys, and so does the click of a mouse.
 */
export const leadByKeys = (run: (command: Command) => boolean): void => {
  let last: HandInput | undefined
  const listen = <Kind extends 'pointerdown' | 'click' | 'keydown'>(
    kind: Kind,
    heard: (event: WindowEventMap[Kind]) => void,
  ): void => {
    // Before the controls themselves: one that gives its keys back must not see the next.
    addEventListener(kind, heard, { capture: true })
  }
  listen('pointerdown', () => {
    last = 'pointer'
  })
  listen('click', ({ detail }) => {
    const { activeElement } = document
    // What a click opens gives the focus back to what had it, once it closes. A choice would close without its focus.
    if (
      detail > 0 &&
      kindOf(activeElement) === 'control' &&
      !activeElement?.closest('select, dialog, [popover]')
    )
      letGo()
  })
  listen('keydown', (event) => {
    if (event.key === 'Tab') last = 'tab'
    if (event.key === 'Escape') {
      last = 'escape'
      letGo()
    }
    const command = commandOfEvent(event)
    const closesHelp = command === 'help' && document.activeElement?.closest('.class-help')
    if (!command || (keepsKey(kindOf(event.target), last, event.key) && !closesHelp)) return
    if (!run(command)) return
    if (command === 'help') last = 'help'
    event.preventDefault()
    event.stopPropagation()
    letGo()
  })
}
