import type { PartHit } from '../../drawings/chain/part-at.ts'
import { faultKinds, type FaultKindName } from '../../mechanism/fault-kinds.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { createFaultForm } from './fault-form.ts'
import { createFaultSearch } from './fault-search.ts'
import { faultsOfPart } from './faults-of-part.ts'

/** The panel in which a part is chosen and broken. */
export interface Breaker {
  /** Takes a part picked in the drawing; true where the open form wanted it. */
  readonly picked: (hit: PartHit) => boolean
  /** Opens the panel for a part, or for all that the page is about. */
  readonly open: (hit: PartHit | null) => void
}

/** The kinds of fault that a page is about, by the beginnings of their names; null where it is about all of them. */
const kindsOfPage = ({ dataset }: HTMLElement): FaultKindName[] | null => {
  const starts = (dataset.breaks ?? '').split(' ').filter(Boolean)
  if (starts.length === 0) return null
  return (Object.keys(faultKinds) as FaultKindName[]).filter((name) =>
    starts.some((start) => name === start || name.startsWith(`${start}.`)),
  )
}

/** Sets up the panel: find a fault by typing, choose its numbers (in the drawing too), break it. */
export const createBreaker = (root: HTMLElement, store: MachineStore): Breaker => {
  const dialog = required(root, '.breaker', HTMLDialogElement)
  const own = kindsOfPage(root)
  let opener: HTMLElement | null = null
  /** The part that the panel was opened for; it answers the form's fields. */
  let part: PartHit | null = null

  const close = (): void => {
    dialog.close()
    form.close()
    // A part's tip is gone by now, and its button with it; the parts themselves are the nearest.
    const isThere = opener !== null && opener.getClientRects().length > 0
    const next = isThere ? opener : root.querySelector<HTMLElement>('.parts')
    next?.focus({ preventScroll: true })
  }
  const form = createFaultForm(required(dialog, 'form', HTMLFormElement), store, (sentence) => {
    close()
    root.dispatchEvent(new CustomEvent('broken', { detail: sentence }))
  })
  const search = createFaultSearch(dialog, own, (kind) => {
    choose(kind)
  })
  const choose = (kind: FaultKindName): void => {
    search.hide()
    form.open(kind, part)
  }
  required(dialog, '.form-back', HTMLButtonElement).addEventListener('click', () => {
    form.close()
    search.resume()
  })
  required(dialog, '.breaker-close', HTMLButtonElement).addEventListener('click', close)
  dialog.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape') return
    event.stopPropagation()
    close()
  })
  return {
    picked: (hit) => dialog.open && form.answer(hit),
    open: (hit) => {
      opener = document.activeElement instanceof HTMLElement ? document.activeElement : null
      part = hit
      form.close()
      const allowed = hit ? faultsOfPart(hit.part) : own
      search.open(allowed)
      dialog.show()
      const only = allowed?.length === 1 ? allowed[0] : undefined
      if (only) choose(only)
      else if (hit) search.focusFirst()
      else search.focus()
    },
  }
}
