import type { SeenFrom } from '../../browser/address.ts'
import { type CardChoice, limits } from '../../link/state.ts'
import { passEnds } from '../../mechanism/bed.ts'
import { entry } from '../../mechanism/lookup.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { required, setText } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { Breaker } from './breaker.ts'
import { bindNote, say } from './caption.ts'
import { faultsOnCard } from './card-faults.ts'
import { bindSlider } from './carriage-slider.ts'
import { bindFaults } from './fault-chips.ts'
import type { Player } from './play.ts'
import { bindLink } from './share-link.ts'
import { withUnit } from '../../words/lists.ts'

const [firstPass, mostPasses] = limits.pass

const bindRows = (root: HTMLElement, store: MachineStore): void => {
  const readout = required(root, '.row-readout', HTMLElement)
  const back = required(root, '.row-back', HTMLButtonElement)
  const forward = required(root, '.row-forward', HTMLButtonElement)
  const go = (by: number): void => {
    const { state } = store.now()
    const pass = Math.max(firstPass, state.pass + by)
    store.set({ pass, at: passEnds(pass, state.bed).start })
    // A button that can't be pressed again would drop the keyboard.
    if (back.disabled) forward.focus()
    if (forward.disabled) back.focus()
  }
  back.addEventListener('click', () => {
    go(-1)
  })
  forward.addEventListener('click', () => {
    go(1)
  })
  store.subscribe(({ state, frame }) => {
    back.disabled = state.pass === firstPass
    forward.disabled = state.pass === mostPasses
    setText(
      readout,
      `Pass ${state.pass}, ${frame.pass.row === null ? 'no card' : `card row ${frame.pass.row}`}`,
    )
  })
}

const bindCards = (root: HTMLElement, store: MachineStore): void => {
  const name = required(root, '.card-readout', HTMLElement)
  const choice = required(root, '.card-choice', HTMLElement)
  const radios = [...choice.querySelectorAll<HTMLInputElement>('input[name="card"]')]
  choice.addEventListener('click', (event) => {
    const isByPointer = event.detail > 0
    if (isByPointer && event.target instanceof HTMLInputElement) choice.hidePopover()
  })
  for (const radio of radios)
    radio.addEventListener('change', () => {
      const card: CardChoice = radio.value === 'none' ? { kind: 'none' } : { kind: 'site', id: radio.value }
      const rows = card.kind === 'site' ? entry(store.library.cards, card.id).length : Infinity
      const { faults, said } = faultsOnCard(store.now().state.faults, rows)
      store.set({ card, faults })
      if (said !== '') say(root, said)
    })
  store.subscribe(({ state }, before) => {
    if (before && before.state.card === state.card) return
    const value = state.card.kind === 'site' ? state.card.id : state.card.kind
    for (const radio of radios) radio.checked = radio.value === value
    const chosen = radios.find((radio) => radio.checked)
    name.textContent = state.card.kind === 'own' ? 'a card of its own' : (chosen?.dataset.title ?? '')
  })
}

const bindSpeed = (root: HTMLElement, store: MachineStore, player: Player): void => {
  const speed = required(root, '.speed', HTMLInputElement)
  const readout = required(root, '.speed-readout', HTMLElement)
  speed.addEventListener('input', () => {
    store.set({ speed: Number(speed.value) })
  })
  required(root, '.slowness', HTMLSelectElement).addEventListener('change', (event) => {
    if (event.target instanceof HTMLSelectElement) player.setSlowness(Number(event.target.value))
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.speed === state.speed) return
    speed.value = String(state.speed)
    readout.textContent = withUnit(state.speed, 'mm/s')
  })
}

/** How far it is from needle to needle on the machine shown, in the note on dimensions that most pages have. */
const bindPitch = (root: HTMLElement, store: MachineStore): void => {
  const place = root.querySelector('.pitch')
  if (place)
    store.subscribe(({ state }) => {
      setText(place, withUnit(dimensionsOf(state.own).pitch, 'mm'))
    })
}

/** Binds every control of the machine's page to the state. */
export const bindControls = (
  root: HTMLElement,
  store: MachineStore,
  player: Player,
  breaker: Breaker,
  seenFrom: SeenFrom,
): void => {
  bindSlider(root, store)
  bindRows(root, store)
  bindCards(root, store)
  bindSpeed(root, store, player)
  bindPitch(root, store)
  bindFaults(root, store, breaker)
  bindLink(root, store, seenFrom)
  bindNote(root, store)
  required(root, '.play', HTMLButtonElement).addEventListener('click', () => {
    player.toggle()
  })
}
