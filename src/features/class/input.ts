import { followStateLink, stateLinkOf } from '../machine/index.ts'
import type { ClassView } from './context.ts'
import { leadByKeys } from './shared/key-owner.ts'
import { type Command, isCommand } from './shared/keys.ts'
import { bindLetterKeys } from './shared/letter-keys.ts'
import { awaitsAnswer } from './shared/position.ts'

/** Runs `run` for keys of clickers and keyboards, for buttons and for choices, and follows links of the text. */
export const bindInput = (view: ClassView, run: (command: Command) => void): void => {
  const { root, machine, store, outline, travel } = view
  bindLetterKeys(root)
  leadByKeys((command) => {
    run(command)
    return true
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
  for (const form of root.querySelectorAll<HTMLFormElement>('.predict')) {
    form.addEventListener('change', () => {
      if (awaitsAnswer(store.state(), outline)) run('reveal')
    })
    form.addEventListener('submit', (event) => {
      event.preventDefault()
    })
  }
}
