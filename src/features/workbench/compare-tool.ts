import { layouts, windowFrom } from '../../drawings/chain/layout.ts'
import { figure as chain } from '../../drawings/chain/figure.ts'
import { read } from '../../link/read.ts'
import { type CardChoice, scenarioOf, type State } from '../../link/state.ts'
import { write } from '../../link/write.ts'
import { frameAt } from '../../mechanism/frame.ts'
import { type Run, startRun } from '../../mechanism/pass.ts'
import { bedWithin, wholeBedOf } from '../../mechanism/bed.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { comparisonWords, keptTitle, stateTitle } from '../../words/machine-comparison.ts'
import { counted, withUnit } from '../../words/lists.ts'
import { dataOf, element, required } from '../../browser/dom.ts'
import type { FigureView } from '../machine/index.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { Tool } from './tools.ts'

/** The same card, needles and speed on a machine as new with nothing broken. */
const soundOf = (state: State): State => ({ ...state, faults: [], wear: 0, seed: 1, note: '' })

/** The state that was kept, which the browser's history carries over a reload. */
const keptText = (): string | null => {
  const value: unknown = (history.state as Record<string, unknown> | null)?.kept
  return typeof value === 'string' ? value : null
}

/** Two machines side by side on one carriage, on a phone one above the other: this one, and the sound one or one that was kept. */
export const createCompareTool = (panel: HTMLElement, stage: FigureView, store: MachineStore): Tool => {
  const [sound, kept] = [...panel.querySelectorAll<HTMLInputElement>('input[type="radio"]')]
  const keep = required(panel, '.keep', HTMLButtonElement)
  const swap = required(panel, '.swap', HTMLButtonElement)
  const words = required(panel, '.compare-words', HTMLElement)
  const keptName = required(panel, '.kept-name', HTMLElement)
  if (!sound || !kept) throw new Error('the comparison lacks its choices')
  const picture = required(stage.root, '.picture', HTMLElement)
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  svg.setAttribute('role', 'img')
  const mine = element('p', { class: 'compare-title', hidden: '' })
  const theirs = element('p', { class: 'compare-title', hidden: '' })
  const other = element('div', { class: 'other', hidden: '' }, [svg])
  picture.before(mine)
  picture.after(theirs, other)
  let state: State | null = null
  let run: Run | null = null
  let isOpen = false
  let waiting = false

  const cardTitle = (card: CardChoice): string => {
    if (card.kind === 'own') return `Own card of ${counted(card.rows.length, 'row')}`
    const id = card.kind === 'none' ? card.kind : card.id
    return dataOf(
      required(document, `input[name="card"][value="${CSS.escape(id)}"]`, HTMLInputElement),
      'title',
    )
  }
  const otherState = (): State => (kept.checked && state ? state : soundOf(store.now().state))
  const otherRun = (): Run => {
    const now = store.now()
    const scenario = scenarioOf(otherState(), store.library)
    // The same needles on both as far as the other has them, or the carriage would be beyond the ends of one.
    const bed = bedWithin(now.state.bed, dimensionsOf(scenario.own).needles)
    return startRun({ ...scenario, bed })
  }
  const draw = (): void => {
    waiting = false
    if (!isOpen || !run) return
    const { state: now, frame } = store.now()
    const shape = stage.shape()
    if (svg.dataset.shape !== shape) svg.replaceChildren()
    svg.dataset.shape = shape
    svg.style.setProperty('--view', String(layouts[shape].width))
    const from = windowFrom(
      layouts[shape],
      frame.x,
      frame.pass.way,
      wholeBedOf(frame.condition.dimensions.needles),
    )
    const below = otherState()
    const theirFrame = frameAt(run, now.pass, now.at)
    chain.draw(svg, run, theirFrame, { shape, prefix: 'other', from })
    svg.setAttribute('aria-label', chain.describe(run, theirFrame))
    // The two differ by speed only where it was changed.
    const titleOf = (place: string, some: State): string =>
      `${stateTitle(place, some)}${now.speed === below.speed ? '' : `; ${withUnit(some.speed, 'mm/s')}`}`
    mine.textContent = titleOf('This machine', now)
    theirs.textContent = titleOf('The other', below)
    const compared = comparisonWords(frame.pass, theirFrame.pass)
    if (words.textContent !== compared) words.textContent = compared
  }
  const ask = (): void => {
    if (waiting || !isOpen) return
    waiting = true
    requestAnimationFrame(draw)
  }
  const renew = (): void => {
    run = otherRun()
    ask()
  }
  const keepState = (text: string): void => {
    history.replaceState({ ...(history.state as object | null), kept: text }, '')
    state = read(text, store.library).state
    kept.disabled = swap.disabled = false
    keptName.textContent = `the state kept: ${keptTitle(cardTitle(state.card), state)}`
  }
  keep.addEventListener('click', () => {
    keepState(write(store.now().state, store.library))
    kept.checked = true
    words.textContent = 'Kept. Change the machine now, and see the two side by side.'
    run = otherRun()
  })
  swap.addEventListener('click', () => {
    if (!state) return
    const now = store.now().state
    const back = state
    keepState(write(now, store.library))
    kept.checked = true
    store.set({ ...back, pass: now.pass, at: now.at, bed: now.bed })
    renew()
  })
  for (const choice of [sound, kept]) choice.addEventListener('change', renew)
  store.subscribe((moment, before) => {
    if (!isOpen) return
    if (!before || moment.run !== before.run) renew()
    else ask()
  })
  const text = keptText()
  if (text !== null) keepState(text)
  return {
    open: () => {
      isOpen = true
      stage.root.setAttribute('data-compare', '')
      for (const part of [mine, theirs, other]) part.hidden = false
      stage.redraw()
      renew()
    },
    close: () => {
      isOpen = false
      stage.root.removeAttribute('data-compare')
      for (const part of [mine, theirs, other]) part.hidden = true
      stage.redraw()
    },
  }
}
