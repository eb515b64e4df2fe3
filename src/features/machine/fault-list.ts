import { faultKinds, type FaultKindName, stages } from '../../mechanism/fault-kinds.ts'
import { faultWords, stageTitles } from '../../words/faults.ts'
import { element } from '../../browser/dom.ts'

/** The faults of the panel, each a button, part by part from card to gates. */
export interface FaultList {
  /** Shows those that have every word of a search, of the allowed ones where some are; gives how many. */
  readonly show: (search: string, allowed: readonly FaultKindName[] | null) => number
  readonly shown: () => readonly HTMLButtonElement[]
}

const kinds = Object.keys(faultKinds) as FaultKindName[]

/** All words by which a kind is found: its own, its stage’s, its name in links, and “eighth” as a figure, too. */
const wordsOf = (kind: FaultKindName): string => {
  const { title, shows } = faultWords[kind]
  const { stage, pattern } = faultKinds[kind]
  return [title, shows, shows.replaceAll('eighth', '8th'), stageTitles[stage], pattern]
    .join(' ')
    .toLowerCase()
}

const buttonOf = (kind: FaultKindName, choose: (kind: FaultKindName) => void): HTMLButtonElement => {
  const { title, shows } = faultWords[kind]
  const button = element('button', { type: 'button', 'data-kind': kind }, [
    element('span', {}, [title]),
    element('span', { class: 'shows' }, [shows]),
  ])
  button.addEventListener('click', () => {
    choose(kind)
  })
  return button
}

/** Puts the list into its place, when it is first shown: every page has one, and few are opened. */
export const createFaultList = (place: HTMLElement, choose: (kind: FaultKindName) => void): FaultList => {
  const buttons = new Map<FaultKindName, HTMLButtonElement>()
  const groups: HTMLElement[] = []
  const make = (): void => {
    for (const stage of stages) {
      const own = kinds.filter((kind) => faultKinds[kind].stage === stage)
      for (const kind of own) buttons.set(kind, buttonOf(kind, choose))
      groups.push(
        element('div', { role: 'group', 'aria-label': stageTitles[stage] }, [
          element('h3', {}, [stageTitles[stage]]),
          ...own.flatMap((kind) => buttons.get(kind) ?? []),
        ]),
      )
    }
    place.append(...groups)
  }
  const shown = (): HTMLButtonElement[] => [...buttons.values()].filter(({ hidden }) => !hidden)
  return {
    shown,
    show: (search, allowed) => {
      if (buttons.size === 0) make()
      const words = search.toLowerCase().split(/\s+/).filter(Boolean)
      for (const [kind, button] of buttons) {
        const text = wordsOf(kind)
        button.hidden = !words.every((word) => text.includes(word)) || allowed?.includes(kind) === false
      }
      for (const group of groups) group.hidden = group.querySelector('button:not([hidden])') === null
      return shown().length
    },
  }
}
