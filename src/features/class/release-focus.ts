import { followStateLink, stateLinkOf } from '../machine/state-links.ts'
import { hasOwnKeys, isCommand, type Command } from './keys.ts'
import { askedBy, tieLetters } from './letter-keys.ts'
import type { Room } from './context.ts'
import { waits } from './class-lesson.ts'

/** Controls that a mouse lets go of at once, so that a clicker's keys go to the class and not to them. */
const lettingGo = 'button, a, input[type="range"], input[type="radio"]'

/** Keys of clickers and keyboards, buttons, links of the text, and choices: all that a hand does. */
export const followHands = (room: Room, order: (command: Command) => void): void => {
  const { root, machine, store, lesson, travel } = room
  tieLetters(root)
  document.addEventListener('keydown', (event) => {
    const held = document.activeElement
    if (event.key === 'Escape' && held instanceof HTMLElement) held.blur()
    const command = askedBy(event)
    const isAgain = command === 'help' && held?.closest('.class-help')
    if (!command || event.defaultPrevented || (hasOwnKeys(event.target) && !isAgain)) return
    event.preventDefault()
    order(command)
  })
  root.addEventListener('click', (event) => {
    const target = event.target instanceof Element ? event.target : null
    const command = target?.closest<HTMLElement>('[data-command]')?.dataset.command ?? ''
    if (isCommand(command)) {
      event.preventDefault()
      order(command)
    }
    const link = stateLinkOf(target)
    if (!link) return
    event.preventDefault()
    travel.stop()
    followStateLink(machine, link)
  })
  root.addEventListener('click', ({ detail }) => {
    const held = document.activeElement
    const isByPointer = detail > 0
    if (
      isByPointer &&
      held instanceof HTMLElement &&
      held.matches(lettingGo) &&
      !held.closest('dialog, [popover]')
    )
      held.blur()
  })
  for (const form of root.querySelectorAll<HTMLFormElement>('.predict')) {
    form.addEventListener('change', () => {
      if (waits(store.state(), lesson)) order('reveal')
    })
    form.addEventListener('submit', (event) => {
      event.preventDefault()
    })
  }
}
