import { type Fault, faultId } from '../../mechanism/fault.ts'
import { type FaultGroup, faultGroups } from '../../words/fault-groups.ts'
import { faultPhrase } from '../../words/faults.ts'
import { withUnit } from '../../words/lists.ts'
import { element, required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { Breaker } from './breaker.ts'
import { say } from './caption.ts'

const focusBreak = (root: HTMLElement): void => {
  root.querySelector<HTMLElement>('button.break')?.focus()
}

/** The faults of one phrase as a chip, which mends them when it is pressed. */
const chipOf = (root: HTMLElement, store: MachineStore, { phrase, faults }: FaultGroup): HTMLElement => {
  const chip = element(
    'button',
    { type: 'button', class: 'chip', 'data-fault': faults.map(faultId).join(' '), title: 'Mend it' },
    [phrase, element('span', { class: 'chip-mend' }, ['mend'])],
  )
  chip.addEventListener('click', () => {
    store.set({ faults: store.now().state.faults.filter((other) => !faults.includes(other)) })
    say(root, `Mended: ${phrase}.`)
    focusBreak(root)
  })
  return chip
}

/** What is said where no part is broken; a worn machine is worn in all its parts. */
const soundWords = (wear: number): string =>
  wear === 0 ? 'nothing' : `no one part; all of it is worn, ${withUnit(Math.round(100 * wear), '%')}`

/** What is broken, as chips that mend it, and the buttons that break a part and mend all. */
export const bindFaults = (root: HTMLElement, store: MachineStore, breaker: Breaker): void => {
  const chips = required(root, '.chips', HTMLElement)
  const mend = required(root, '.mend', HTMLButtonElement)
  required(root, 'button.break', HTMLButtonElement).addEventListener('click', () => {
    breaker.open(null)
  })
  mend.addEventListener('click', () => {
    store.set({ faults: [] })
    say(root, 'Everything is mended.')
    focusBreak(root)
  })
  root.addEventListener('broken', (event) => {
    if (event instanceof CustomEvent) say(root, String(event.detail))
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.faults === state.faults && before.state.wear === state.wear) return
    mend.hidden = state.faults.length === 0
    const isNew = (fault: Fault): boolean => before !== null && !before.state.faults.includes(fault)
    const short = state.faults.find((fault) => fault.kind === 'turn.short' && isNew(fault))
    if (short) say(root, `${faultPhrase(short)}: the card keeps its row.`)
    const groups = faultGroups(state.faults)
    const isSound = groups.length === 0
    chips.replaceChildren(
      ...(isSound
        ? [element('span', { class: 'sound' }, [soundWords(state.wear)])]
        : groups.map((group) => chipOf(root, store, group))),
    )
  })
}
