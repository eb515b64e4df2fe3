import { at } from '../../mechanism/lookup.ts'
import { dataOf, required } from '../../browser/dom.ts'
import { takeFromFragment } from '../../browser/address.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import {
  comeAlive,
  followStateLink,
  followView,
  type Machine,
  showState,
  startMachine,
  stateLinkOf,
} from '../machine/index.ts'
import { keepPlaceInLinks, withPlace } from './place-links.ts'
import { bindPartWords } from './part-words.ts'
import { bindPredictions } from './predictions.ts'
import { leadThroughSteps } from './steps.ts'

/** The chapter that explains a part of the machine seen whole. */
const chapterOfPart: Readonly<Record<string, number>> = {
  card: 2,
  pin: 3,
  sweep: 4,
  belt: 4,
  rocker: 5,
  strip: 5,
  presser: 6,
  gate: 7,
  needle: 8,
}

/** In the picture of the whole machine, pressing a part goes to its chapter. */
const bindPlaces = (root: HTMLElement, { ownPlace }: Machine): void => {
  const addresses = JSON.parse(dataOf(root, 'addresses')) as Record<string, string>
  root.querySelector('.drawing[data-figure="place"]')?.addEventListener('click', (event) => {
    const part =
      event.target instanceof Element
        ? event.target.closest<SVGElement>('[data-part]')?.dataset.part
        : undefined
    const chapter = part === undefined ? undefined : chapterOfPart[at(part.split('.'), 0)]
    const address = chapter === undefined ? undefined : addresses[chapter]
    if (address !== undefined) location.assign(withPlace(address, ownPlace.now()))
  })
}

/** Where the screen is small the controls wait folded: at its foot on a phone, below the figure where it is low. */
const foldControls = (root: HTMLElement): void => {
  const controls = required(root, '.more-controls', HTMLDetailsElement)
  const small = matchMedia('screen and (max-width: 63.99rem), screen and (max-height: 50rem)')
  const fold = (): void => {
    controls.open = !small.matches
  }
  small.addEventListener('change', fold)
  fold()
}

/** Brings a chapter's page to life. */
export const startChapter = async (root: HTMLElement): Promise<void> => {
  // From where the machine is seen is no part of its state.
  const view = takeFromFragment('view')
  foldControls(root)
  const machine = await startMachine(root)
  await yieldToBrowser()
  leadThroughSteps(root, machine)
  followView(root, machine.stage, view)
  bindPredictions(root, machine)
  bindPartWords(root, machine.stage)
  bindPlaces(root, machine)
  keepPlaceInLinks(root, machine)
  root.addEventListener('click', (event) => {
    const link = stateLinkOf(event.target)
    if (!link) return
    event.preventDefault()
    followStateLink(machine, link)
  })
  root.addEventListener('show', (event) => {
    if (!(event instanceof CustomEvent)) return
    const { state, figure } = event.detail as { state: string; figure?: string }
    showState(machine, state, figure)
  })
  comeAlive(root)
}
