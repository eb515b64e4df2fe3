import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import { required } from '../../browser/dom.ts'
import { createFaultList } from './fault-list.ts'

/** Finding a fault by typing, among those that the panel was opened for. */
export interface FaultSearch {
  /** Begins with an empty search, among the allowed kinds; null allows all. */
  readonly open: (allowed: readonly FaultKindName[] | null) => void
  /** Goes on with the same words, among all kinds. */
  readonly resume: () => void
  readonly hide: () => void
  readonly focus: () => void
  readonly focusFirst: () => void
}

/** Makes the search; `own` are the kinds that the page is about, null where it is about all, and `choose` takes the chosen one. */
export const createFaultSearch = (
  dialog: HTMLElement,
  own: readonly FaultKindName[] | null,
  choose: (kind: FaultKindName) => void,
): FaultSearch => {
  const search = required(dialog, 'input[type="search"]', HTMLInputElement)
  const label = required(dialog, '.breaker-search', HTMLElement)
  const list = required(dialog, '.breaker-list', HTMLElement)
  const none = required(dialog, '.breaker-none', HTMLElement)
  const all = required(dialog, '.breaker-all', HTMLButtonElement)
  const faults = createFaultList(list, choose)

  const filter = (allowed: readonly FaultKindName[] | null): void => {
    all.hidden = allowed === null
    none.hidden = faults.show(search.value, allowed) > 0
  }
  search.addEventListener('input', () => {
    filter(search.value === '' ? own : null)
  })
  all.addEventListener('click', () => {
    filter(null)
    search.focus()
  })
  search.addEventListener('keydown', (event) => {
    const [only, ...others] = faults.shown()
    if (event.key === 'Enter' && only && others.length === 0) {
      event.preventDefault()
      only.click()
    }
  })
  const show = (allowed: readonly FaultKindName[] | null): void => {
    list.hidden = label.hidden = false
    filter(allowed)
  }
  return {
    open: (allowed) => {
      search.value = ''
      show(allowed)
    },
    resume: () => {
      show(null)
      search.focus()
    },
    hide: () => {
      list.hidden = label.hidden = all.hidden = none.hidden = true
    },
    focus: () => {
      search.focus()
    },
    focusFirst: () => {
      faults.shown()[0]?.focus()
    },
  }
}
