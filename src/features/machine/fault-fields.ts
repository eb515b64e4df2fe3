import type { Hit } from '../../drawings/chain/hit.ts'
import { type FaultReading, indexKindsOf, readFault } from '../../mechanism/fault.ts'
import { faultKinds, type FaultKindName, type IndexKind } from '../../mechanism/fault-kinds.ts'
import { element } from '../../browser/dom.ts'
import type { Moment } from '../../browser/machine-store.ts'
import { defaultPlaces } from './fault-defaults.ts'

const placeNames: Readonly<Record<IndexKind, string>> = {
  row: 'Card row',
  column: 'Column',
  strip: 'Strip',
  needle: 'Needle',
  pass: 'Before pass',
}

/** What a picked part answers of a fault, as the text of its field; null where it answers nothing. */
const answerOf = (place: IndexKind, { part, hole }: Hit): string | null => {
  const [kind, which = ''] = part.split('.')
  switch (place) {
    case 'row':
      return hole ? String(hole.row) : null
    case 'column':
      return hole ? String(hole.column) : kind === 'pin' || kind === 'rocker' ? which : null
    case 'strip':
    case 'needle':
      return kind === place ? which : null
    case 'pass':
      return null
  }
}

const field = (
  label: string,
  name: string,
  value: string,
  attributes: Readonly<Record<string, string>>,
): HTMLElement => {
  const input = element('input', { name, value, ...attributes })
  return element('label', {}, [element('span', {}, [label]), input])
}

/** The fields for the numbers of a kind of fault, filled in from the part that was picked and from where the carriage is. */
export const fieldsOf = (kind: FaultKindName, hit: Hit | null, moment: Moment): HTMLElement[] => {
  const { amount } = faultKinds[kind]
  const defaults = defaultPlaces(kind, moment)
  const fields = indexKindsOf(kind).map((place, n) =>
    field(
      placeNames[place],
      place,
      (hit && answerOf(place, hit)) ?? defaults[n] ?? '',
      place === 'needle' ? { autocapitalize: 'characters', size: '5' } : { inputmode: 'numeric', size: '4' },
    ),
  )
  if (!amount) return fields
  const size = { inputmode: 'decimal', size: '6' }
  return [...fields, field(`How much, in ${amount.unit}`, 'amount', String(amount.usual), size)]
}

/** Fills in what a picked part answers of a fault; true where it answers anything. */
export const answerFields = (fields: HTMLElement, kind: FaultKindName, hit: Hit): boolean => {
  let isAnswer = false
  for (const place of indexKindsOf(kind)) {
    const answer = answerOf(place, hit)
    const input = fields.querySelector<HTMLInputElement>(`input[name="${place}"]`)
    if (answer === null || !input) continue
    input.value = answer
    isAnswer = true
  }
  return isAnswer
}

/** Reads the fields as a fault, or says why they are none. */
export const readFields = (fields: HTMLElement, kind: FaultKindName): FaultReading => {
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
  return readFault(words.join('.') + (amount === undefined ? '' : `=${amount.replace(',', '.')}`))
}
