import { writeCarriagePosition } from '../../link/carriage-position.ts'
import { needleName, passEnds } from '../../mechanism/bed.ts'
import { isNeedle } from '../../mechanism/indices.ts'
import { wayWord } from '../../words/frame-description.ts'
import { required, setText } from '../../browser/dom.ts'
import type { MachineStore, Moment } from '../../browser/machine-store.ts'
import { slideTo } from './slide-carriage.ts'

/** The carriage's position as people say it: by the nearest needle, or beyond the ends. */
const positionWords = (x: number): string => {
  const nearest = Math.round(x)
  return isNeedle(nearest) ? needleName(nearest) : writeCarriagePosition(nearest)
}

/** The carriage as a slider: arrows a quarter of a needle, Page keys eight needles, Home and End the bed's ends. */
export const bindSlider = (root: HTMLElement, store: MachineStore): void => {
  const slider = required(root, '.carriage-slider', HTMLInputElement)
  const readout = required(root, '.carriage-readout', HTMLElement)
  let isJump = false
  slider.addEventListener('keydown', (event) => {
    isJump = event.key === 'Home' || event.key === 'End'
    if (event.key !== 'PageUp' && event.key !== 'PageDown') return
    event.preventDefault()
    slideTo(store, store.now().state.at + (event.key === 'PageUp' ? 8 : -8))
  })
  const show = ({ state, frame }: Moment): void => {
    const { start, end } = passEnds(state.pass, state.bed)
    const [least, most] = [String(Math.min(start, end)), String(Math.max(start, end))]
    if (slider.min !== least) slider.min = least
    if (slider.max !== most) slider.max = most
    slider.value = String(state.at)
    const position = positionWords(frame.x)
    const words = `${position}, moving ${wayWord(frame)}`
    if (readout.textContent === words) return
    setText(readout, words)
    slider.setAttribute('aria-valuetext', `${position}, pass ${state.pass}, moving ${wayWord(frame)}`)
  }
  slider.addEventListener('input', () => {
    const { state } = store.now()
    const { start } = passEnds(state.pass, state.bed)
    const value = Number(slider.value)
    if (isJump && value === start) store.set({ at: start })
    else slideTo(store, value)
    isJump = false
    show(store.now())
  })
  store.subscribe(show)
}
