import { readNumber, roundNumber } from '../mechanism/number.ts'
import { type MeasurementName, measurements } from '../mechanism/measurement.ts'
import { isBedLength } from '../mechanism/own.ts'
import { quote } from './troubles.ts'

/** How many of a measurement's unit one of another unit is. */
const units: Readonly<Record<'mm' | 'needles' | 'ms', Readonly<Record<string, number>>>> = {
  mm: { mm: 1, cm: 10, in: 25.4, inch: 25.4, '"': 25.4, '″': 25.4 },
  needles: { needle: 1, needles: 1 },
  ms: { ms: 1, s: 1000, sec: 1000 },
}

/** What a unit's field takes, for a sentence. */
const examples = { mm: '1.35, 1,35 mm or 0.053 in', needles: '1.5', ms: '300, or 0.3 s' } as const

/** A value as somebody typed it: a number of its own unit; nothing was typed; or why it can't be. */
export type ValueReading =
  | { readonly kind: 'read'; readonly value: number }
  | { readonly kind: 'empty' }
  | { readonly kind: 'refused'; readonly reason: string }

/**
 * Reads a measured value with or without its unit: a number with a point or a comma, in mm or inches, needles, ms or
 * seconds. Never throws.
 */
export const readMeasured = (name: MeasurementName, text: string): ValueReading => {
  const plain = text.trim()
  if (plain === '') return { kind: 'empty' }
  const { unit, least, most } = measurements[name]
  const [, number = '', own = ''] = /^([-−]?[\d.,]+)\s*([^\d\s.,]*)$/.exec(plain) ?? []
  const times = own === '' ? 1 : units[unit][own.toLowerCase()]
  const value = readNumber(number.replace(',', '.').replace('−', '-'))
  if (value === null || times === undefined)
    return { kind: 'refused', reason: `${quote(plain)} is no such measure. Write it like ${examples[unit]}.` }
  const found = roundNumber(value * times)
  if (found < least || found > most)
    return {
      kind: 'refused',
      reason: `${quote(plain)} can’t be: it lies outside ${least} to ${most} ${unit}.`,
    }
  if (name === 'needles' && !isBedLength(found))
    return {
      kind: 'refused',
      reason: `${quote(plain)} can’t be: half of a bed’s needles are on each side of its middle, so their number is even.`,
    }
  return { kind: 'read', value: found }
}
