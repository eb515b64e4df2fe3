import { required } from '../../browser/dom.ts'
import { takeFromFragment } from '../../browser/address.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import {
  comeAlive,
  followStateLink,
  followView,
  showState,
  startMachine,
  stateLinkOf,
} from '../machine/index.ts'
import { keepPlaceInLinks } from './place-links.ts'
import { bindPartWords } from './part-words.ts'
import { bindPredictions } from './predictions.ts'
import { leadThroughSteps } from './steps.ts'

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
