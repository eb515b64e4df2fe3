import { required } from '../../browser/dom.ts'
import { channelTrouble } from './channel.ts'
import { openSpeaker } from './class-windows.ts'
import type { Command } from './keys.ts'
import { createPointer } from './pointer.ts'
import type { Room } from './context.ts'
import { keepAwake, toggleFullScreen } from './screen.ts'
import { newSeed } from './session.ts'
import type { ClassState } from './state.ts'
import { back, forward, reveal, toQuestion, toStep } from './navigation.ts'

/** What does as a key or a button says. `parts` tells how many parts the text has on this screen. */
export const createOrders = (room: Room, parts: () => number): ((command: Command) => void) => {
  const { id, root, machine, store, steps, lesson, travel, tell } = room
  const help = required(root, '.class-help', HTMLDialogElement)
  const panel = required(root, '.class-machine', HTMLElement)
  const movePointer = createPointer(root, store, machine.stage.svg)

  keepAwake((isAwake) => {
    required(help, '.class-awake', HTMLElement).textContent = isAwake
      ? 'The screen stays on while this page is seen.'
      : 'This browser can’t keep the screen on: set the computer not to sleep.'
  })

  /** Goes somewhere; where something covers the screen, it only uncovers it. */
  const move = (to: Partial<ClassState> | undefined, none = ''): void => {
    const { blank, qr } = store.state()
    panel.hidden = true
    if (blank || qr) store.set({ blank: false, qr: false }, 'here')
    else if (to) store.set(to, 'here')
    else tell(none)
  }
  const here = (): ClassState => ({ ...store.state(), parts: parts() })
  const obey: Readonly<Record<Command, () => void>> = {
    forward: () => {
      move(forward(here(), lesson, newSeed()), 'This is the end of the chapter.')
    },
    back: () => {
      move(back(here(), lesson), 'This is the beginning of the chapter.')
    },
    first: () => {
      move(toStep(store.state(), lesson, 0))
    },
    last: () => {
      move(toStep(store.state(), lesson, steps.length - 1))
    },
    quiz: () => {
      move(toQuestion(store.state(), newSeed(), 0))
    },
    reveal: () => {
      move(reveal(store.state(), lesson), 'Nothing is hidden here.')
    },
    blank: () => {
      store.set({ blank: !store.state().blank }, 'here')
    },
    code: () => {
      store.set({ qr: !store.state().qr }, 'here')
    },
    pointer: movePointer,
    machine: () => {
      panel.hidden = !panel.hidden
    },
    speaker: () => {
      const isOpen = openSpeaker(id, store.state().chapter)
      tell(isOpen ? (channelTrouble() ?? '') : 'The browser did not let the speaker’s window open.')
    },
    full: () => {
      toggleFullScreen(tell)
    },
    help: () => {
      help.showModal()
    },
  }
  return (command) => {
    const wasOpen = help.open
    tell('')
    help.close()
    travel.stop()
    if (command !== 'help' || !wasOpen) obey[command]()
  }
}
