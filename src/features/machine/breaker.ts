import type { Hit } from '../../drawings/chain/hit.ts'
import { indexKindsOf, readFault, withFault } from '../../mechanism/fault.ts'
import { faultKinds, type FaultKindName, type IndexKind } from '../../mechanism/fault-kinds.ts'
import { faultPhrase, faultWords } from '../../words/faults.ts'
import { element, required } from '../../browser/dom.ts'
import { createFaultList } from './fault-list.ts'
import { faultsOfPart } from './part-tip.ts'
import { defaultPlaces } from './fault-defaults.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

/** The panel in which a part is chosen and broken. */
export interface Breaker {
  /** Takes a part picked in the drawing; true where the open form wanted it. */
  readonly picked: (hit: Hit) => boolean
  readonly open: (hit: Hit | null) => void
}

const placeNames: Readonly<Record<IndexKind, string>> = {
  row: 'Card row',
  column: 'Column',
  strip: 'Strip',
  needle: 'Needle',
  pass: 'Before pass',
}

/** The place of a kind that a picked part answers, as the text of its field. */
const answerOf = (place: IndexKind, hit: Hit): string | null => {
  const [kind, which = ''] = hit.part.split('.')
  if (place === 'row') return hit.hole ? String(hit.hole.row) : null
  if (place === 'column')
    return hit.hole ? String(hit.hole.column) : kind === 'pin' || kind === 'rocker' ? which : null
  if (place === 'strip') return kind === 'strip' ? which : null
  return place === 'needle' && kind === 'needle' ? which : null
}

/** Sets up the panel: find a fault by typing, choose its numbers (in the drawing too), break it. */
export const createBreaker = (root: HTMLElement, store: MachineStore): Breaker => {
  const dialog = required(root, '.breaker', HTMLDialogElement)
  const search = required(dialog, 'input[type="search"]', HTMLInputElement)
  const list = required(dialog, '.breaker-list', HTMLElement)
  const none = required(dialog, '.breaker-none', HTMLElement)
  const form = required(dialog, 'form', HTMLFormElement)
  const title = required(form, '.form-title', HTMLElement)
  const shows = required(form, '.form-shows', HTMLElement)
  const fields = required(form, '.form-fields', HTMLElement)
  const error = required(form, '.form-error', HTMLElement)
  let kind: FaultKindName | null = null
  let opener: HTMLElement | null = null
  /** The part that the panel was opened for; it answers the form's places. */
  let inHand: Hit | null = null
  const faults = createFaultList(list, (chosen) => {
    choose(chosen, inHand)
  })

  const all = required(dialog, '.breaker-all', HTMLButtonElement)
  const starts = (root.dataset.breaks ?? '').split(' ').filter(Boolean)
  /** The kinds that the page is about; null where it is about all of them. */
  const own =
    starts.length === 0
      ? null
      : (Object.keys(faultKinds) as FaultKindName[]).filter((name) =>
          starts.some((start) => name === start || name.startsWith(`${start}.`)),
        )

  const filter = (allowed: readonly FaultKindName[] | null): void => {
    all.hidden = allowed === null
    none.hidden = faults.show(search.value, allowed) > 0
  }
  const field = (
    label: string,
    name: string,
    value: string,
    attributes: Record<string, string>,
  ): HTMLElement => {
    const input = element('input', { name, value, ...attributes })
    return element('label', {}, [element('span', {}, [label]), input])
  }
  const choose = (chosen: FaultKindName, hit: Hit | null): void => {
    kind = chosen
    const { amount } = faultKinds[chosen]
    const places = indexKindsOf(chosen)
    const proposed = defaultPlaces(chosen, store.now())
    title.textContent = faultWords[chosen].title
    shows.textContent = `Shows as ${faultWords[chosen].shows}.`
    error.textContent = ''
    fields.replaceChildren(
      ...places.map((place, n) =>
        field(
          placeNames[place],
          place,
          (hit && answerOf(place, hit)) ?? proposed[n] ?? '',
          place === 'needle'
            ? { autocapitalize: 'characters', size: '5' }
            : { inputmode: 'numeric', size: '4' },
        ),
      ),
      ...(amount
        ? [
            field(`How much, in ${amount.unit}`, 'amount', String(amount.usual), {
              inputmode: 'decimal',
              size: '6',
            }),
          ]
        : []),
    )
    if (places.some((place) => place !== 'pass'))
      fields.append(element('p', { class: 'form-hint' }, ['Or tap it in the drawing.']))
    form.hidden = false
    list.hidden = true
    search.closest('label')?.setAttribute('hidden', '')
    all.hidden = true
    none.hidden = true
    ;(fields.querySelector('input') ?? form.querySelector('button'))?.focus()
  }
  const back = (): void => {
    kind = null
    form.hidden = true
    list.hidden = false
    search.closest('label')?.removeAttribute('hidden')
  }
  const close = (): void => {
    dialog.close()
    back()
    // A part's tip is gone by now, and its button with it; the parts are what stands nearest.
    const isThere = opener !== null && opener.getClientRects().length > 0
    const next = isThere ? opener : root.querySelector<HTMLElement>('.parts')
    next?.focus({ preventScroll: true })
  }
  const submit = (): void => {
    if (!kind) return
    const values = new Map(
      [...fields.querySelectorAll('input')].map((input) => [input.name, input.value.trim()]),
    )
    const places = indexKindsOf(kind)
    let n = 0
    const words = faultKinds[kind].pattern.split('.').map((word) => {
      if (word !== word.toUpperCase() || /^\d+$/.test(word)) return word
      const place = places[n++]
      const value = values.get(place ?? '') ?? ''
      return place === 'needle' ? value.toUpperCase() : value
    })
    const amount = values.get('amount')
    const reading = readFault(words.join('.') + (amount === undefined ? '' : `=${amount.replace(',', '.')}`))
    const rows = store.now().run.scenario.card?.length
    if (!reading.fault) {
      error.textContent = `That won’t do: ${reading.reason}.`
      return
    }
    if (
      (kind === 'card.torn' || kind === 'card.blocked') &&
      rows !== undefined &&
      (reading.fault.at[0] ?? 0) > rows
    ) {
      error.textContent = `That won’t do: this card has ${rows} rows.`
      return
    }
    store.set({ faults: withFault(store.now().state.faults, reading.fault) })
    close()
    root.dispatchEvent(
      new CustomEvent('broken', {
        detail: `${faultPhrase(reading.fault)}.${reading.remark ? ` ${reading.remark}.` : ''}`,
      }),
    )
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
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    submit()
  })
  form.querySelector('.form-back')?.addEventListener('click', () => {
    back()
    filter(null)
    search.focus()
  })
  dialog.querySelector('.breaker-close')?.addEventListener('click', close)
  dialog.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape') return
    event.stopPropagation()
    close()
  })

  return {
    picked: (hit) => {
      if (!kind || !dialog.open) return false
      let wasWanted = false
      for (const place of indexKindsOf(kind)) {
        const answer = answerOf(place, hit)
        const input = fields.querySelector<HTMLInputElement>(`input[name="${place}"]`)
        if (answer === null || !input) continue
        input.value = answer
        wasWanted = true
      }
      return wasWanted
    },
    open: (hit) => {
      opener = document.activeElement instanceof HTMLElement ? document.activeElement : null
      inHand = hit
      search.value = ''
      back()
      const allowed = hit ? faultsOfPart(hit.part) : own
      filter(allowed)
      dialog.show()
      const only = allowed?.length === 1 ? allowed[0] : undefined
      if (only) choose(only, hit)
      else if (hit) faults.shown()[0]?.focus()
      else search.focus()
    },
  }
}
