import { writeAddress } from '../class/address.ts'
import { hasOwnKeys } from '../class/keys.ts'
import { askedBy, tieLetters } from '../class/letter-keys.ts'
import { createPointer } from '../class/pointer.ts'
import { takeOver, tieLink } from '../class/link.ts'
import { openClass } from '../class/open-class.ts'
import { samePlace } from '../class/context.ts'
import { session } from '../class/session.ts'
import { breathe } from '../../browser/yield-to-browser.ts'
import { required, tell } from '../../browser/dom.ts'
import { comeAlive } from '../machine/main.ts'
import { followStateLink, stateLinkOf } from '../machine/state-links.ts'
import { channelTrouble, joinClass } from '../class/channel.ts'
import { startClock } from './clock.ts'
import { obey, type SpeakerCommand, speakerCommands } from './actions.ts'
import { goToChapter } from '../class/class-windows.ts'
import { enter, showAnswers, showPlace, type SpeakerWindow } from './show.ts'

/** How long another window has to answer before this one says that none does, in ms. */
const patience = 1500

/** Makes the window of the class that the address names, at the place that it names. */
const createWindow = async (root: HTMLElement): Promise<SpeakerWindow> => {
  const opening = await openClass(root)
  const { machine, store } = opening
  const follow = tieLink(machine, store, (target) => {
    takeOver(machine.store, target)
  })
  return { root, ...opening, follow }
}

/** Follows the class's state, wherever it is changed, and keeps it in the address. */
const followClass = (window: SpeakerWindow, id: string): void => {
  const { steps, store, machine, follow } = window
  const ids = steps.map(({ id }) => id)
  let last = store.state()
  store.subscribe((state, from) => {
    const before = last
    last = state
    if (state.chapter !== before.chapter) {
      goToChapter(id, state.chapter)
      return
    }
    showPlace(window)
    if (!samePlace(state, before)) {
      history.replaceState(history.state, '', writeAddress(location.href, state, ids))
      void enter(window)
    } else if (from === 'there' && state.link !== before.link) follow(machine.store.now().state)
  })
}

/**
 * Obeys the buttons and the keys, the same as the class view's, from when the window knows where the class is: what is
 * asked for sooner is done then.
 */
const bindCommands = ({ root, lesson, machine, store }: SpeakerWindow, answered: Promise<void>): void => {
  const said = required(root, '.speaker-said', HTMLElement)
  const movePointer = createPointer(root, store, machine.stage.svg)
  const order = async (command: SpeakerCommand): Promise<void> => {
    await answered
    if (command === 'pointer') movePointer()
    tell(said, command === 'pointer' || obey(command, store, lesson) ? '' : 'There is nothing more that way.')
  }
  tieLetters(root)
  document.addEventListener('keydown', (event) => {
    const command = speakerCommands.find((name) => name === askedBy(event))
    if (!command || event.defaultPrevented || hasOwnKeys(event.target)) return
    event.preventDefault()
    void order(command)
  })
  root.addEventListener('click', (event) => {
    const target = event.target instanceof Element ? event.target : null
    const button = target?.closest<HTMLElement>('[data-command]')
    const command = speakerCommands.find((name) => name === button?.dataset.command)
    if (command) void order(command)
    const link = stateLinkOf(target)
    if (!link) return
    event.preventDefault()
    followStateLink(machine, link)
  })
}

/** Joins the class, and says whether its other windows are there. Gives when that is known. */
const join = ({ root, store }: SpeakerWindow, id: string): Promise<void> => {
  const heard = required(root, '.speaker-heard', HTMLElement)
  const view = required(root, '.speaker-class', HTMLAnchorElement)
  const address = new URL(view.href)
  address.searchParams.set('class', id)
  view.href = address.href
  const trouble = channelTrouble()
  return new Promise((resolve) => {
    const silent = setTimeout(
      () => {
        tell(heard, trouble ?? 'No other window of this class has answered yet.')
        resolve()
      },
      trouble ? 0 : patience,
    )
    joinClass(store, id, {
      heard: () => {
        clearTimeout(silent)
        tell(heard, 'In step with the class.')
        resolve()
      },
    })
  })
}

/** Brings a speaker's window to life. */
const startSpeaker = async (root: HTMLElement): Promise<void> => {
  const id = session()
  const window = await createWindow(root)
  await breathe()
  showAnswers(root)
  followClass(window, id)
  startClock(root)
  await breathe()
  showPlace(window)
  void enter(window)
  bindCommands(window, join(window, id))
  comeAlive(root, window.machine)
}

for (const root of document.querySelectorAll<HTMLElement>('.speaker-view')) void startSpeaker(root)
