import type { MarkedPart } from '../../drawings/marked-machine/marked-machine.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { rowsOf } from '../../link/state.ts'
import { defaultState } from '../../link/read.ts'
import { wholeBedOf } from '../../mechanism/bed.ts'
import { type Fault, partOfFault } from '../../mechanism/fault.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { type Scenario, soundScenario } from '../../mechanism/scenario.ts'
import { wrongName } from '../../words/case.ts'
import { distinctWays } from '../../words/finding.ts'
import { listed } from '../../words/lists.ts'
import { at, lastOf } from '../../mechanism/lookup.ts'
import { required } from '../../browser/dom.ts'
import type { Answer } from '../../find/messages.ts'
import { takeShape } from './picture.ts'
import type { FindStore } from './store.ts'

/** The most parts of one answer that are ringed: more of them would hide the machine. */
const mostParts = 3

/** Whether an answer has a part that can be shown on the machine. */
export const isOnMachine = ({ kind, ways }: Answer): boolean => kind === 'faults' && ways.length > 0

/** The parts of an answer's likeliest ways, a fault of each. */
const partsOf = ({ ways }: Answer): Fault[] => {
  const parts = new Map<string, Fault>()
  for (const way of distinctWays(ways))
    for (const fault of way) if (!parts.has(partOfFault(fault))) parts.set(partOfFault(fault), fault)
  return [...parts.values()].slice(0, mostParts)
}

/** Places in the ranking, as a balloon holds them: 2, or 2,3, or where there are more 2…5. */
const placesText = (places: readonly number[]): string =>
  places.length > 2 ? `${at(places, 0)}…${lastOf(places)}` : places.join(',')

/** What is ringed for a ranking: each part once, with the places in it of the answers that have to do with it. */
export const marksFor = (answers: readonly Answer[]): MarkedPart[] => {
  const parts = new Map<string, { fault: Fault; places: number[] }>()
  for (const [n, answer] of answers.entries())
    for (const fault of isOnMachine(answer) ? partsOf(answer) : []) {
      const found = parts.get(partOfFault(fault))
      if (found) found.places.push(n + 1)
      else parts.set(partOfFault(fault), { fault, places: [n + 1] })
    }
  return [...parts.values()].map(({ fault, places }) => ({ fault, number: placesText(places) }))
}

/** The same in words, for who does not see the picture. */
const marksWords = (marked: readonly MarkedPart[]): string =>
  `The machine. Ringed: ${listed(marked.map(({ fault, number }) => `${number}, ${wrongName(fault)}`))}.`

/** Keeps a picture of the machine in a figure that has an empty svg; the drawing is fetched when it is first needed. */
export const createMachinePicture = (
  figure: HTMLElement,
  store: FindStore,
  prefix: string,
): ((marked: readonly MarkedPart[], faults: readonly Fault[]) => void) => {
  const svg = required(figure, 'svg', SVGSVGElement)
  const narrow = matchMedia('screen and (max-width: 29.99rem)')
  let drawn = ''
  const show = async (key: string, scenario: Scenario, marked: readonly MarkedPart[]): Promise<void> => {
    const { drawMachine } = await import('./machine-picture.ts')
    if (key !== drawn) return
    const shape: Shape = narrow.matches ? 'narrow' : 'wide'
    takeShape(svg, shape)
    drawMachine(svg, {
      scenario,
      at: defaultState(store.library).at,
      marked,
      shape,
      isSmall: true,
      prefix: `${prefix}-${shape}`,
    })
  }
  return (marked, faults) => {
    figure.hidden = marked.length === 0
    const { card } = store.pass()
    const rows = rowsOf(card, store.library)
    const { columnOne, own } = store.now().session
    const key = JSON.stringify([marked, faults, rows, columnOne, own, narrow.matches])
    if (figure.hidden || key === drawn) return
    drawn = key
    svg.setAttribute('aria-label', marksWords(marked))
    void show(
      key,
      { ...soundScenario(rows), columnOne, own, bed: wholeBedOf(dimensionsOf(own).needles), faults },
      marked,
    )
  }
}
