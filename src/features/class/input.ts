import { followStateLink, stateLinkOf } from '../machine/index.ts'
import type { ClassView } from './context.ts'
import { type Command, hasOwnKeys, isCommand } from './shared/keys.ts'
import { bindLetterKeys, commandOfEvent } from './shared/letter-keys.ts'
import { awaitsAnswer } from './shared/position.ts'

/** Controls that lose the focus after a click, so that a clicker's keys go to the class and not to them. */
const released = 'button, a, input[type="range"], input[type="radio"]'

/** Runs `run` for keys of clickers and keyboards, for buttons and for choices, and follows links of the text. */
export const bindInput = (view: ClassView, run: (command: Command) => void): void => {
  const { root, machine, store, outline, travel } = view
  bindLetterKeys(root)
  document.addEventListener('keydown', (event) => {
    const focused = document.activeElement
    if (event.key === 'Escape' && focused instanceof HTMLElement) focused.blur()
    const command = commandOfEvent(event)
    const closesHelp = command === 'help' && focused?.closest('.class-help')
    if (!command || event.defaultPrevented || (hasOwnKeys(event.target) && !closesHelp)) return
    event.preventDefault()
    run(command)
  })
  root.addEventListener('click', (event) => {
    const target = event.target instanceof Element ? event.target : null
    const command = target?.closest<HTMLElement>('[data-command]')?.dataset['command']
    if (command !== undefined && isCommand(command)) {
      event.preventDefault()
      run(command)
    }
    const link = stateLinkOf(target)
    if (!link) return
    event.preventDefault()
    travel.stop()
    followStateLink(machine, link)
  })
  root.addEventListener('click', ({ detail }) => {
    const focused = document.activeElement
    const isByPointer = detail > 0
    if (
      isByPointer &&
      focused instanceof HTMLElement &&
      focused.matches(released) &&
      !focused.closest('dialog, [popover]')
    )
      focused.blur()
  })
  for (const form of root.querySelectorAll<HTMLFormElement>('.predict')) {
    form.addEventListener('change', () => {
      if (awaitsAnswer(store.state(), outline)) run('reveal')
    })
    form.addEventListener('submit', (event) => {
      event.preventDefault()
    })
  }
}
