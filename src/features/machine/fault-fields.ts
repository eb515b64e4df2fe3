import type { PartHit } from '../../drawings/chain/part-at.ts'
import { indexKindsOf } from '../../mechanism/fault.ts'
import { type FaultReading, readFaultOfKind } from '../../mechanism/read-fault.ts'
import { faultKinds, type FaultKindName, type IndexKind } from '../../mechanism/fault-kinds.ts'
import { needleName } from '../../mechanism/bed.ts'
import { at, entry } from '../../mechanism/lookup.ts'
import { parsePart } from '../../mechanism/part.ts'
import { element } from '../../browser/dom.ts'
import type { Moment } from '../../browser/machine-store.ts'
import { defaultPlaces } from './fault-defaults.ts'

const indexNames: Readonly<Record<IndexKind, string>> = {
  row: 'Card row',
  column: 'Column',
  strip: 'Strip',
  needle: 'Needle',
  pass: 'Before pass',
}

/** What a picked part answers of a fault, as the text of its field; null where it answers nothing. */
const answerOf = (index: IndexKind, { part, hole }: PartHit): string | null => {
  const picked = parsePart(part)
  switch (index) {
    case 'row':
      return hole ? String(hole.row) : null
    case 'column':
      if (hole) return String(hole.column)
      return picked?.kind === 'pin' || picked?.kind === 'rocker' ? String(picked.column) : null
    case 'strip':
      return picked?.kind === 'strip' ? String(picked.strip) : null
    case 'needle':
      return picked?.kind === 'needle' ? needleName(picked.needle) : null
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
export const fieldsOf = (kind: FaultKindName, hit: PartHit | null, moment: Moment): HTMLElement[] => {
  const { amount } = faultKinds[kind]
  const defaults = defaultPlaces(kind, moment)
  const fields = indexKindsOf(kind).map((index, n) =>
    field(
      indexNames[index],
      index,
      (hit && answerOf(index, hit)) ?? at(defaults, n),
      index === 'needle' ? { autocapitalize: 'characters', size: '5' } : { inputmode: 'numeric', size: '4' },
    ),
  )
  if (!amount) return fields
  const size = { inputmode: 'decimal', size: '6' }
  return [...fields, field(`How much, in ${amount.unit}`, 'amount', String(amount.usual), size)]
}

/** Fills in what a picked part answers of a fault; true where it answers anything. */
export const answerFields = (fields: HTMLElement, kind: FaultKindName, hit: PartHit): boolean => {
  let isAnswer = false
  for (const index of indexKindsOf(kind)) {
    const answer = answerOf(index, hit)
    const input = fields.querySelector<HTMLInputElement>(`input[name="${index}"]`)
    if (answer === null || !input) continue
    input.value = answer
    isAnswer = true
  }
  return isAnswer
}

/** Reads the fields as a fault of a machine whose bed has so many needles, or says why they are none. */
export const readFields = (fields: HTMLElement, kind: FaultKindName, needles: number): FaultReading => {
  const values = new Map<string, string>(
    [...fields.querySelectorAll('input')].map((input) => [input.name, input.value.trim()]),
  )
  const texts = indexKindsOf(kind).map((index) => {
    const value = entry(values, index)
    return index === 'needle' ? value.toUpperCase() : value
  })
  return readFaultOfKind(kind, texts, values.get('amount')?.replace(',', '.') ?? null, needles)
}
