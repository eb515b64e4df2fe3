import { required, setText } from '../../browser/dom.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import {
  bindLetterKeys,
  bindMachine,
  channelTrouble,
  createPointer,
  goToChapter,
  isSamePosition,
  joinClass,
  leadByKeys,
  openClass,
  session,
  setMachine,
  writeAddress,
} from '../class/index.ts'
import { comeAlive, followStateLink, say, stateLinkOf } from '../machine/index.ts'
import { runCommand, type SpeakerCommand, speakerCommands } from './actions.ts'
import { startClock } from './clock.ts'
import { enterPosition, showAnswers, showPosition, type SpeakerWindow } from './view.ts'

/** How long another window has to answer before this one shows that none does, in ms. */
const answerTimeout = 3000

/** Makes the window of the class in the address, at the position in the address. */
const createWindow = async (root: HTMLElement): Promise<SpeakerWindow> => {
  const opened = await openClass(root)
  const { machine, store } = opened
  const follow = bindMachine(machine, store, (target) => {
    setMachine(machine.store, target)
  })
  return { root, ...opened, follow }
}

/** Follows the class's state, whichever window changes it, and keeps it in the address. */
const followClass = (window: SpeakerWindow, id: string): void => {
  const { steps, store, machine, follow } = window
  const ids = steps.map(({ id }) => id)
  let previous = store.state()
  store.subscribe((state, origin) => {
    const before = previous
    previous = state
    if (state.chapter !== before.chapter) {
      goToChapter(id, state.chapter)
      return
    }
    showPosition(window)
    if (!isSamePosition(state, before) || state.first !== before.first) {
      history.replaceState(history.state, '', writeAddress(location.href, state, ids))
      say(window.root, '')
      void enterPosition(window)
    } else if (origin === 'remote' && state.link !== before.link) follow(machine.store.now().state)
  })
}

/**
 * Runs the commands of buttons and keys, the same as the class view's. Commands given before the window knows where the
 * class is wait until it does (`joined`).
 */
const bindCommands = ({ root, outline, machine, store }: SpeakerWindow, joined: Promise<void>): void => {
  const message = required(root, '.speaker-said', HTMLElement)
  const togglePointer = createPointer(root, store, machine.stage.svg)
  const run = async (command: SpeakerCommand): Promise<void> => {
    await joined
    if (command === 'pointer') togglePointer()
    setText(
      message,
      command === 'pointer' || runCommand(command, store, outline) ? '' : 'There is nothing more that way.',
    )
  }
  bindLetterKeys(root)
  leadByKeys((pressed) => {
    const command = speakerCommands.find((name) => name === pressed)
    if (command) void run(command)
    return command !== undefined
  })
  root.addEventListener('click', (event) => {
    const target = event.target instanceof Element ? event.target : null
    const button = target?.closest<HTMLElement>('[data-command]')
    const command = speakerCommands.find((name) => name === button?.dataset['command'])
    if (command) void run(command)
    const link = stateLinkOf(target)
    if (!link) return
    event.preventDefault()
    followStateLink(machine, link)
  })
}

/** Where the screen shows little at a time, the buttons that are pressed least are folded away behind one. */
const bindMore = (root: HTMLElement): void => {
  const more = required(root, '.speaker-more', HTMLButtonElement)
  more.addEventListener('click', () => {
    more.setAttribute('aria-expanded', String(more.getAttribute('aria-expanded') !== 'true'))
  })
}

/** Joins the class, and shows whether its other windows answer. Resolves once that is known. */
const join = ({ root, store }: SpeakerWindow, id: string): Promise<void> => {
  const heard = required(root, '.speaker-heard', HTMLElement)
  const view = required(root, '.speaker-class', HTMLAnchorElement)
  const address = new URL(view.href)
  address.searchParams.set('class', id)
  view.href = address.href
  const trouble = channelTrouble()
  return new Promise((resolve) => {
    const timer = setTimeout(
      () => {
        setText(heard, trouble ?? 'No other window of this class has answered yet.')
        resolve()
      },
      trouble ? 0 : answerTimeout,
    )
    joinClass(store, id, {
      heard: () => {
        clearTimeout(timer)
        setText(heard, 'In step with the class.')
        resolve()
      },
    })
  })
}

/** Starts a speaker's window. */
const startSpeaker = async (root: HTMLElement): Promise<void> => {
  const id = session()
  const window = await createWindow(root)
  await yieldToBrowser()
  showAnswers(root)
  followClass(window, id)
  startClock(root)
  bindMore(root)
  await yieldToBrowser()
  showPosition(window)
  void enterPosition(window)
  bindCommands(window, join(window, id))
  comeAlive(root)
}

for (const root of document.querySelectorAll<HTMLElement>('.speaker-view')) void startSpeaker(root)
