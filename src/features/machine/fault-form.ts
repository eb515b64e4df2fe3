import type { PartHit } from '../../drawings/chain/part-at.ts'
import { type Fault, indexKindsOf } from '../../mechanism/fault.ts'
import { withFault } from '../../mechanism/fault-list.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import { brokenWords, faultWords } from '../../words/faults.ts'
import { element, required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { answerFields, fieldsOf, readFields } from './fault-fields.ts'
import { isBeyondCard } from './card-faults.ts'

/** The form in which the numbers of a chosen kind of fault are written. */
export interface FaultForm {
  /** Shows the form for a kind; `hit` is the part that it was picked for. */
  readonly open: (kind: FaultKindName, hit: PartHit | null) => void
  readonly close: () => void
  /** Takes a part that was picked in the drawing; true where the open form wanted it. */
  readonly answer: (hit: PartHit) => boolean
}

/** Makes the form; `broken` is called with a sentence once the fault is in the machine. */
export const createFaultForm = (
  form: HTMLFormElement,
  store: MachineStore,
  broken: (sentence: string) => void,
): FaultForm => {
  const title = required(form, '.form-title', HTMLElement)
  const shows = required(form, '.form-shows', HTMLElement)
  const fields = required(form, '.form-fields', HTMLElement)
  const error = required(form, '.form-error', HTMLElement)
  let kind: FaultKindName | null = null

  const refusal = (fault: Fault): string | null => {
    const rows = store.now().run.scenario.card?.length
    return rows !== undefined && isBeyondCard(fault, rows) ? `this card has ${rows} rows` : null
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    if (!kind) return
    const reading = readFields(fields, kind, store.now().frame.condition.dimensions.needles)
    const reason = reading.kind === 'fault' ? refusal(reading.fault) : reading.reason
    if (reading.kind === 'refused' || reason !== null) {
      error.textContent = `That won’t do: ${reason}.`
      return
    }
    const { faults } = store.now().state
    store.set({ faults: withFault(faults, reading.fault) })
    broken(brokenWords(faults, reading.fault, reading.remark))
  })
  return {
    open: (chosen, hit) => {
      kind = chosen
      title.textContent = faultWords[chosen].title
      shows.textContent = `Shows as ${faultWords[chosen].shows}.`
      error.textContent = ''
      fields.replaceChildren(...fieldsOf(chosen, hit, store.now()))
      if (indexKindsOf(chosen).some((place) => place !== 'pass'))
        fields.append(element('p', { class: 'form-hint' }, ['Or tap it in the drawing.']))
      form.hidden = false
      ;(fields.querySelector('input') ?? form.querySelector('button'))?.focus()
    },
    close: () => {
      kind = null
      form.hidden = true
    },
    answer: (hit) => kind !== null && answerFields(fields, kind, hit),
  }
}
