import { required, setText } from '../../browser/dom.ts'
import { indexKindsOf, type Fault } from '../../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../../mechanism/fault-kinds.ts'
import { readFaultOfKind } from '../../mechanism/read-fault.ts'

const placeNames: Readonly<Record<string, string>> = { column: 'Column', strip: 'Strip', needle: 'Needle' }

/** Reads what somebody says it is; gives a sentence where it can't be read. */
export const readGuess = (kind: FaultKindName, place: string): Fault | string => {
  const { amount } = faultKinds[kind]
  const texts = indexKindsOf(kind).map(() => place.trim().toUpperCase())
  const reading = readFaultOfKind(kind, texts, amount ? String(amount.usual) : null)
  return reading.kind === 'fault' ? reading.fault : `That won’t do: ${reading.reason}.`
}

/** The fields in which somebody says what is wrong and where. */
export interface GuessFields {
  /** What is in them now, or a sentence why that can't be read. */
  readonly read: () => Fault | string
  readonly focus: () => void
}

/** Asks for a place only where a kind of fault has one, and by its name. */
export const bindGuess = (form: HTMLFormElement): GuessFields => {
  const kind = required(form, 'select', HTMLSelectElement)
  const place = required(form, 'input', HTMLInputElement)
  const field = required(form, '.practice-place', HTMLElement)
  const kindNow = (): FaultKindName => kind.value as FaultKindName
  const showPlace = (): void => {
    const [name] = indexKindsOf(kindNow())
    field.hidden = name === undefined
    setText(required(field, 'span', HTMLElement), placeNames[name ?? ''] ?? '')
  }
  kind.addEventListener('change', showPlace)
  showPlace()
  return {
    read: () => readGuess(kindNow(), place.value),
    focus: () => {
      place.focus()
    },
  }
}
