import { required } from '../../browser/dom.ts'
import type { ClassView } from './context.ts'
import { keepAwake, toggleFullScreen } from './presentation-mode.ts'
import { channelTrouble } from './shared/channel.ts'
import type { Command } from './shared/keys.ts'
import { back, forward, reveal, toQuestion, toStep } from './shared/navigation.ts'
import { createPointer } from './shared/pointer.ts'
import { newSeed } from './shared/session.ts'
import type { ClassState } from './shared/state.ts'
import { openSpeaker } from './shared/windows.ts'

/** Makes what runs the commands of keys and buttons. `parts` gives how many parts the text has on this screen. */
export const createActions = (view: ClassView, parts: () => number): ((command: Command) => void) => {
  const { id, root, machine, store, steps, outline, travel, notify } = view
  const help = required(root, '.class-help', HTMLDialogElement)
  const panel = required(root, '.class-machine', HTMLElement)
  const togglePointer = createPointer(root, store, machine.stage.svg)

  keepAwake((isAwake) => {
    required(help, '.class-awake', HTMLElement).textContent = isAwake
      ? 'The screen stays on while this page is seen.'
      : 'This browser can’t keep the screen on: set the computer not to sleep.'
  })

  /** Changes what is shown; where something covers the screen, it only uncovers it. */
  const move = (to: Partial<ClassState> | undefined, none = ''): void => {
    const { blank, qr } = store.state()
    panel.hidden = true
    if (blank || qr) store.set({ blank: false, qr: false }, 'local')
    else if (to) store.set(to, 'local')
    else notify(none)
  }
  const here = (): ClassState => ({ ...store.state(), parts: parts() })
  const actions: Readonly<Record<Command, () => void>> = {
    forward: () => {
      move(forward(here(), outline, newSeed()), 'This is the end of the chapter.')
    },
    back: () => {
      move(back(here(), outline), 'This is the beginning of the chapter.')
    },
    first: () => {
      move(toStep(store.state(), outline, 0))
    },
    last: () => {
      move(toStep(store.state(), outline, steps.length - 1))
    },
    quiz: () => {
      move(toQuestion(store.state(), newSeed(), 0))
    },
    reveal: () => {
      move(reveal(store.state(), outline), 'Nothing is hidden here.')
    },
    blank: () => {
      store.set({ blank: !store.state().blank }, 'local')
    },
    code: () => {
      store.set({ qr: !store.state().qr }, 'local')
    },
    pointer: togglePointer,
    machine: () => {
      panel.hidden = !panel.hidden
    },
    speaker: () => {
      const isOpen = openSpeaker(id, store.state().chapter)
      notify(isOpen ? (channelTrouble() ?? '') : 'The browser did not let the speaker’s window open.')
    },
    full: () => {
      toggleFullScreen(notify)
    },
    help: () => {
      help.showModal()
    },
  }
  return (command) => {
    const wasOpen = help.open
    notify('')
    help.close()
    travel.stop()
    if (command !== 'help' || !wasOpen) actions[command]()
  }
}
