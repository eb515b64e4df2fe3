import { dataOf, required } from '../../browser/dom.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { comeAlive } from '../machine/index.ts'
import { createTravel } from './carriage-travel.ts'
import type { ClassView } from './context.ts'
import { bindInput } from './input.ts'
import { joinLazily } from './lazy-join.ts'
import { bindScreenCovers } from './screen-covers.ts'
import type { Command } from './shared/keys.ts'
import { openClass } from './shared/open-class.ts'
import { session } from './shared/session.ts'
import { startStepView } from './step-view.ts'

/** Goes to the class view of another chapter where another window of the class has gone there. */
const followChapter = ({ root, store, id }: ClassView): void => {
  const chapters = dataOf(root, 'chapters').split(' ')
  const own = dataOf(root, 'slug')
  store.subscribe(({ chapter }) => {
    if (chapter === own || !chapters.includes(chapter)) return
    void import('./shared/windows.ts').then(({ goToChapter }) => {
      goToChapter(id, chapter)
    })
  })
}

/** Runs commands. Their code is fetched once somebody moves a pointer or gives a command, here or in another window. */
const lazyActions = (view: ClassView, parts: () => number): ((command: Command) => void) => {
  let actions: Promise<(command: Command) => void> | undefined
  const fetched = (): Promise<(command: Command) => void> =>
    (actions ??= import('./actions.ts').then(({ createActions }) => createActions(view, parts)))
  addEventListener('pointermove', () => void fetched(), { once: true })
  view.store.subscribe(({ pointer }) => {
    if (pointer) void fetched()
  })
  return (command) => {
    void fetched().then((run) => {
      run(command)
    })
  }
}

/** Starts a class view. */
const startClass = async (root: HTMLElement): Promise<void> => {
  const id = session()
  const opened = await openClass(root)
  // The sentence about the machine moves to its controls: the figure and the text need the rest of the screen.
  required(root, '.class-machine', HTMLElement).append(required(root, '.happening', HTMLElement))
  const message = required(root, '.class-said', HTMLElement)
  const view: ClassView = {
    ...opened,
    id,
    root,
    travel: createTravel(opened.machine.store),
    notify: (words) => {
      message.textContent = words
    },
  }
  await yieldToBrowser()
  const parts = startStepView(view)
  await yieldToBrowser()
  bindScreenCovers(view)
  bindInput(view, lazyActions(view, parts))
  followChapter(view)
  joinLazily(view.store, id)
  comeAlive(root)
}

for (const root of document.querySelectorAll<HTMLElement>('.class-view')) void startClass(root)
