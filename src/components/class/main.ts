import { required } from '../machine/dom.ts'
import { startMachine } from '../machine/main.ts'
import { joinClass } from '../speaker/channel.ts'
import { goToChapter } from '../speaker/open.ts'
import { readAddress } from './address.ts'
import { coverScreen } from './cover.ts'
import { followHands } from './hands.ts'
import { linkOf } from './link.ts'
import { createOrders } from './orders.ts'
import type { Room } from './room.ts'
import { keepAwake } from './screen.ts'
import { showPlaces } from './show.ts'
import { session } from './session.ts'
import { classStore } from './state.ts'
import { classStep } from './step.ts'
import { createTravel } from './travel.ts'

/** Goes to the class view of another chapter where another window of the class has gone there. */
const followChapter = ({ root, store, id }: Room): void => {
  const known = root.dataset.chapters?.split(' ') ?? []
  store.subscribe(({ chapter }) => {
    if (chapter !== root.dataset.slug && known.includes(chapter)) goToChapter(id, chapter)
  })
}

/** Brings a class view to life. */
const startClass = (root: HTMLElement): void => {
  const hasState = location.hash.includes('=')
  const id = session()
  const machine = startMachine(root)
  // The sentence about the machine stands by its controls: the figure and the text have the rest of the screen.
  required(root, '.class-machine', HTMLElement).append(required(root, '.happening', HTMLElement))
  const steps = [...root.querySelectorAll<HTMLElement>('.step')].map((element) =>
    classStep(element, machine.store.library),
  )
  const lesson = { asks: steps.map(({ asks }) => asks), questions: Number(root.dataset.questions) }
  const ids = steps.map((step) => step.id)
  const store = classStore({
    chapter: root.dataset.slug ?? '',
    part: 0,
    parts: 1,
    link: hasState ? linkOf(machine) : '',
    blank: false,
    pointer: undefined,
    qr: false,
    ...readAddress(location.search, ids, lesson.questions),
  })
  const said = required(root, '.class-said', HTMLElement)
  const room: Room = {
    id,
    root,
    machine,
    store,
    steps,
    lesson,
    travel: createTravel(machine.store),
    tell: (words) => {
      said.textContent = words
    },
  }
  const parts = showPlaces(room)
  coverScreen(room)
  followHands(room, createOrders(room, parts))
  followChapter(room)
  keepAwake((isAwake) => {
    required(root, '.class-awake', HTMLElement).textContent = isAwake
      ? 'The screen stays on while this page is seen.'
      : 'This browser can’t keep the screen on: set the computer not to sleep.'
  })
  joinClass(store, id)
}

for (const root of document.querySelectorAll<HTMLElement>('.class-view')) startClass(root)
