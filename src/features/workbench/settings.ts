import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { withFault } from '../../mechanism/fault-list.ts'
import { faultKinds } from '../../mechanism/fault-kinds.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import type { State } from '../../link/state.ts'
import { oilOf, withOil } from '../../mechanism/oil.ts'
import { amountText } from '../../words/faults.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { withUnit } from '../../words/lists.ts'
import { bindBedSettings } from './bed-settings.ts'

/** The thickest oil that the slider gives, as a time constant in ms; and fresh oil in this machine. */
const thickest = faultKinds['strip.slow'].amount?.most ?? dimensions.stripReturnThick
const freshOf = ({ own }: State): number => dimensionsOf(own).stripReturn

/** The slider's share, 0 to 1, for a time constant: even steps are even ratios, as oil thickens with cold. */
const shareOf = (ms: number, fresh: number): number => Math.log(ms / fresh) / Math.log(thickest / fresh)
const msOf = (share: number, fresh: number): number => Math.round(fresh * (thickest / fresh) ** share)

const bindWear = (root: HTMLElement, store: MachineStore): void => {
  const wear = required(root, '.wear', HTMLInputElement)
  const readout = required(root, '.wear-readout', HTMLOutputElement)
  const seed = required(root, '.seed-readout', HTMLElement)
  const next = required(root, '.seed-next', HTMLButtonElement)
  wear.addEventListener('input', () => {
    store.set({ wear: Number(wear.value) })
  })
  next.addEventListener('click', () => {
    store.set({ seed: (store.now().state.seed + 1) % 0x100000000 })
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.wear === state.wear && before.state.seed === state.seed) return
    wear.value = String(state.wear)
    const words =
      state.wear === 0
        ? 'as new'
        : state.wear === 1
          ? 'worn out'
          : withUnit(Math.round(100 * state.wear), '%')
    readout.textContent = words
    wear.setAttribute('aria-valuetext', words)
    seed.textContent = `no. ${state.seed}`
    next.disabled = state.wear === 0
    next.title = state.wear === 0 ? 'Machines as new are all the same.' : ''
  })
}

const bindOil = (root: HTMLElement, store: MachineStore): void => {
  const oil = required(root, '.oil', HTMLInputElement)
  const readout = required(root, '.oil-readout', HTMLOutputElement)
  oil.addEventListener('input', () => {
    const { state } = store.now()
    const fresh = freshOf(state)
    store.set({ faults: withOil(state.faults, msOf(Number(oil.value), fresh), fresh) })
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.faults === state.faults && before.state.own === state.own) return
    const fresh = freshOf(state)
    const ms = oilOf(state.faults, fresh)
    // Rounded times would make the slider's handle creep under the hand.
    if (msOf(Number(oil.value), fresh) !== ms) oil.value = String(shareOf(ms, fresh))
    const words = ms <= fresh ? 'fresh' : withUnit(ms, 'ms')
    readout.textContent = words
    oil.setAttribute('aria-valuetext', words)
  })
}

const bindTiming = (root: HTMLElement, store: MachineStore): void => {
  const timing = required(root, '.timing', HTMLInputElement)
  const readout = required(root, '.timing-readout', HTMLOutputElement)
  timing.addEventListener('input', () => {
    const amount = Number(timing.value)
    const fault: Fault = { kind: 'belt.timing', at: [], amount }
    const { faults } = store.now().state
    store.set({
      faults: amount === 0 ? faults.filter(({ kind }) => kind !== 'belt.timing') : withFault(faults, fault),
    })
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.faults === state.faults) return
    const amount = state.faults.find(({ kind }) => kind === 'belt.timing')?.amount ?? 0
    timing.value = String(amount)
    const words = amount === 0 ? 'in step' : amountText('belt.timing', amount)
    readout.textContent = words
    timing.setAttribute('aria-valuetext', words)
  })
}

/** Binds the workbench's further settings: wear, oil, timing, needles in use, needle of column 1. */
export const bindSettings = (root: HTMLElement, store: MachineStore): void => {
  bindWear(root, store)
  bindOil(root, store)
  bindTiming(root, store)
  bindBedSettings(root, store)
}
