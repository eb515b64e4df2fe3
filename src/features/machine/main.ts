import type { Trouble } from '../../link/troubles.ts'
import { addressed, followAddress } from '../../browser/address.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { createBreaker } from './breaker.ts'
import { dragInChain } from './drag-in-chain.ts'
import { bindWords, say } from './caption.ts'
import { bindControls } from './controls.ts'
import { required, dataOf } from '../../browser/dom.ts'
import { bindEmbedding } from './embed-figure.ts'
import { inspectParts } from './part-inspector.ts'
import { libraryOf } from '../../browser/library.ts'
import { dragInFigures } from './drag-in-figures.ts'
import { createPlayer, type Player, yieldToHand } from './play.ts'
import { createFigureView, type FigureView } from './figure-view.ts'
import { createMachineStore, type MachineStore } from '../../browser/machine-store.ts'
import { bindSaving } from './save-figure.ts'
import { createOwnPlace, type OwnPlace } from './own-place.ts'

/** A machine of the page, alive. */
export interface Machine {
  readonly store: MachineStore
  readonly stage: FigureView
  readonly player: Player
  /** Where column 1 is on the reader's own machine: the steps and links of a text go by it. */
  readonly ownPlace: OwnPlace
}

/** Makes one machine of the page, piece by piece: its state, the figure, then its controls, sentence and address. */
export const startMachine = async (root: HTMLElement): Promise<Machine> => {
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const home = dataOf(root, 'state')
  const { state, troubles } = addressed(home, library)
  const store = createMachineStore(state, library)
  const ownPlace = createOwnPlace(state)
  await yieldToBrowser()
  const figure = required(root, '.figure', HTMLElement)
  const stage = createFigureView(figure, store)
  await yieldToBrowser()
  const play = required(root, '.play', HTMLButtonElement)
  const writeWords = bindWords(root, store)
  const player = createPlayer(store, (isPlaying) => {
    root.toggleAttribute('data-playing', isPlaying)
    if (!isPlaying) writeWords()
    play.textContent = isPlaying ? 'Pause' : 'Play'
  })
  const breaker = createBreaker(root, store)
  bindControls(root, store, player, breaker, stage.seenFrom)
  inspectParts(stage, store, breaker)
  dragInChain(stage, store)
  dragInFigures(stage, store)
  bindSaving(root, stage, store)
  bindEmbedding(root, stage, store)
  const tell = (some: readonly Trouble[]): void => {
    say(root, some.map(({ sentence }) => sentence).join(' '))
  }
  tell(troubles)
  followAddress({ store, seenFrom: stage.seenFrom }, home, troubles.length === 0, (some) => {
    player.stop()
    ownPlace.set(store.now().state)
    tell(some)
  })
  yieldToHand(player)
  return { store, stage, player, ownPlace }
}

/** Shows that all on a machine's page can be used from now on. */
export const comeAlive = (root: HTMLElement): void => {
  root.setAttribute('data-live', '')
}
