import { breathe } from '../../browser/yield-to-browser.ts'
import { required } from '../../browser/dom.ts'
import { comeAlive } from '../machine/main.ts'
import { coverScreen } from './cover.ts'
import { followHands } from './release-focus.ts'
import { joinLate } from './replay-channel.ts'
import type { Command } from './keys.ts'
import { openClass } from './open-class.ts'
import type { Room } from './context.ts'
import { showPlaces } from './show-step.ts'
import { session } from './session.ts'
import { createTravel } from './carriage-travel.ts'

/** Goes to the class view of another chapter where another window of the class has gone there. */
const followChapter = ({ root, store, id }: Room): void => {
  const known = root.dataset.chapters?.split(' ') ?? []
  store.subscribe(({ chapter }) => {
    if (chapter === root.dataset.slug || !known.includes(chapter)) return
    void import('./class-windows.ts').then(({ goToChapter }) => {
      goToChapter(id, chapter)
    })
  })
}

/** What does as a key or a button says: fetched at the first sign of a hand, here or in another window. */
const lateOrders = (room: Room, parts: () => number): ((command: Command) => void) => {
  let orders: Promise<(command: Command) => void> | undefined
  const fetched = (): Promise<(command: Command) => void> =>
    (orders ??= import('./actions.ts').then(({ createOrders }) => createOrders(room, parts)))
  addEventListener('pointermove', () => void fetched(), { once: true })
  room.store.subscribe(({ pointer }) => {
    if (pointer) void fetched()
  })
  return (command) => {
    void fetched().then((obey) => {
      obey(command)
    })
  }
}

/** Brings a class view to life. */
const startClass = async (root: HTMLElement): Promise<void> => {
  const id = session()
  const opening = await openClass(root)
  // The sentence about the machine stands by its controls: the figure and the text have the rest of the screen.
  required(root, '.class-machine', HTMLElement).append(required(root, '.happening', HTMLElement))
  const said = required(root, '.class-said', HTMLElement)
  const room: Room = {
    ...opening,
    id,
    root,
    travel: createTravel(opening.machine.store),
    tell: (words) => {
      said.textContent = words
    },
  }
  await breathe()
  const parts = showPlaces(room)
  await breathe()
  coverScreen(room)
  followHands(room, lateOrders(room, parts))
  followChapter(room)
  joinLate(room.store, id)
  comeAlive(root, room.machine)
}

for (const root of document.querySelectorAll<HTMLElement>('.class-view')) void startClass(root)
