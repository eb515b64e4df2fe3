import { type Bed, canonicalPlace, needleName, withinPass } from '../../mechanism/bed.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { cardPlaceWords } from '../../words/card-place.ts'
import { say } from '../machine/index.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

const bindNeedles = (root: HTMLElement, store: MachineStore): void => {
  const form = required(root, '.setting-needles', HTMLFormElement)
  const first = required(form, '.needle-first', HTMLInputElement)
  const last = required(form, '.needle-last', HTMLInputElement)
  const show = (bed: Bed): void => {
    first.value = needleName(bed.first)
    last.value = needleName(bed.last)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const { needles } = dimensionsOf(store.now().state.own)
    const from = readNeedle(first.value, needles)
    const to = readNeedle(last.value, needles)
    if (typeof from === 'string') {
      say(root, from)
      first.focus()
      return
    }
    if (typeof to === 'string') {
      say(root, to)
      last.focus()
      return
    }
    if (from > to) {
      say(root, `${needleName(from)} lies to the right of ${needleName(to)}. Name the left one first.`)
      first.focus()
      return
    }
    const bed = { first: from, last: to }
    const { at, pass } = store.now().state
    store.set({ bed, at: withinPass(at, pass, bed) })
    say(root, `${to - from + 1} needles are in use, ${needleName(from)} to ${needleName(to)}.`)
  })
  store.subscribe(({ state }, before) => {
    if (!before || before.state.bed !== state.bed) show(state.bed)
  })
}

const bindCardPlace = (root: HTMLElement, store: MachineStore): void => {
  const form = required(root, '.setting-card-place', HTMLFormElement)
  const input = required(form, '.column-one', HTMLInputElement)
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const needle = readNeedle(input.value, dimensionsOf(store.now().state.own).needles)
    if (typeof needle === 'string') {
      say(root, needle)
      input.focus()
      return
    }
    store.set(canonicalPlace({ columnOne: needle }))
    say(root, cardPlaceWords(needle))
  })
  store.subscribe(({ state }, before) => {
    if (!before || before.state.columnOne !== state.columnOne) input.value = needleName(state.columnOne)
  })
}

/** Binds what there is to set of the bed: the needles in use, and the needle of column 1. */
export const bindBedSettings = (root: HTMLElement, store: MachineStore): void => {
  bindNeedles(root, store)
  bindCardPlace(root, store)
}
