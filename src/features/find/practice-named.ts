import { element } from '../../browser/dom.ts'
import { kindAndPlace } from '../../find/query.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../../words/faults.ts'

/** What was named so far of a machine with several faults, each in a line from which it can be taken back. */
export interface NamedFaults {
  readonly all: () => readonly Fault[]
  /** Adds a fault, unless one of its kind and place is named. */
  readonly add: (fault: Fault) => void
  readonly clear: () => void
}

/** Shows the named faults in a list. `takenBack` is called after one is gone, and the keyboard with it. */
export const createNamedFaults = (list: HTMLElement, takenBack: () => void): NamedFaults => {
  let named: readonly Fault[] = []
  const name = (faults: readonly Fault[]): void => {
    named = faults
    list.replaceChildren(...faults.map(line))
  }
  const line = (fault: Fault): HTMLElement => {
    const drop = element('button', { type: 'button' }, ['Take back'])
    drop.setAttribute('aria-label', `Take back: ${faultPhrase(fault)}`)
    drop.addEventListener('click', () => {
      name(named.filter((other) => other !== fault))
      takenBack()
    })
    return element('li', {}, [faultPhrase(fault), ' ', drop])
  }
  return {
    all: () => named,
    add: (fault) => {
      if (named.every((other) => kindAndPlace(other) !== kindAndPlace(fault))) name([...named, fault])
    },
    clear: () => {
      name([])
    },
  }
}
