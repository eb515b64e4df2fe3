import { readNumber, roundNumber } from '../mechanism/number.ts'
import {
  canonicalOwn,
  disordered,
  isBedLength,
  nothingOwn,
  type Own,
  ownDimensions,
  type OwnName,
  ownNames,
} from '../mechanism/own.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { oneValue, type Row } from './codec.ts'
import { quote, type Troubles } from './troubles.ts'

/** The form of the values that links have now; another form will begin with another number. */
const form = '1'

const isOwnName = (name: string): name is OwnName => Object.hasOwn(ownDimensions, name)

/** How links call the number of needles of the bed. */
const bedName = 'bed'

/** How many needles a link says that the bed has; null where no bed has so many. */
const readBedLength = (text: string, troubles: Troubles): number | null => {
  const value = readNumber(text)
  const { least, most } = bedLengths
  const clamped = Math.min(most, Math.max(least, value ?? NaN))
  if (!isBedLength(clamped)) {
    troubles.leftOut(
      'own bed',
      `For the number of needles the link has ${quote(text)}, which is no even whole number.`,
      `; ${dimensions.needles} is used.`,
    )
    return null
  }
  if (clamped !== value)
    troubles.changed(
      'own limit',
      `For the number of needles the link has ${value}, outside ${least} to ${most}; ${clamped} is used.`,
    )
  return clamped
}

/** One measured value of a link, such as `pitch-5`; null where it can't be read. Never throws. */
const readOwnValue = (text: string, troubles: Troubles): readonly [keyof Own, number] | null => {
  const [, name, number] = /^([A-Za-z\d]+)-(.*)$/.exec(text) ?? []
  if (name === bedName && number !== undefined) {
    const needles = readBedLength(number, troubles)
    return needles === null ? null : ['needles', needles]
  }
  if (name === undefined || number === undefined || !isOwnName(name)) {
    troubles.leftOut('own name', `${quote(text)} names no dimension that can be measured.`)
    return null
  }
  const value = readNumber(number)
  if (value === null) {
    troubles.leftOut(
      'own value',
      `For the dimension ${name} the link has ${quote(number)}, which is no number.`,
      `; ${dimensions[name]} is used.`,
    )
    return null
  }
  const { least, most } = ownDimensions[name]
  const clamped = Math.min(most, Math.max(least, value))
  if (clamped !== value)
    troubles.changed(
      'own limit',
      `For the dimension ${name} the link has ${value}, outside ${least} to ${most}; ${clamped} is used.`,
    )
  return [name, clamped]
}

/** Leaves out the values of each pair that no machine can have together, and says so. */
const inOrder = (own: Own, troubles: Troubles): Own => {
  const wrong = disordered(own)
  for (const [less, more] of wrong)
    troubles.leftOut(
      'own order',
      `No machine has ${less} as large as ${more}, as this link has.`,
      '; both are taken from the training machine.',
    )
  if (wrong.length === 0) return own
  const out = new Set<string>(wrong.flat())
  return inOrder(Object.fromEntries(Object.entries(own).filter(([name]) => !out.has(name))), troubles)
}

/**
 * Measured values as a link has them, such as `1_pitch-5_gate1-0.5`: the form's number, then a name and a value of each that
 * differs from the training machine's. Never throws; what can't be read is left out, and said.
 */
export const readOwn = (text: string, troubles: Troubles): Own => {
  const [number, ...values] = text.split('_')
  if (number !== form) {
    troubles.leftOut(
      'own form',
      text.trim() === ''
        ? 'The link has no measured values after “own”.'
        : `The measured values ${quote(text)} are of a form that is not known here.`,
      '; the training machine’s are used.',
    )
    return nothingOwn
  }
  const found = new Map<keyof Own, number>()
  for (const value of values.slice(0, 2 * (ownNames.length + 1))) {
    const read = readOwnValue(value, troubles)
    if (read === null) continue
    const before = found.get(read[0])
    if (before !== undefined && before !== read[1])
      troubles.changed(
        'own repeated',
        `The link gives ${read[0] === 'needles' ? bedName : read[0]} twice; the later value, ${read[1]}, counts.`,
      )
    found.set(...read)
  }
  return canonicalOwn(inOrder(Object.fromEntries(found), troubles))
}

/** The row of a link's measured values, as `readOwn` reads them. */
export const ownRow: Row<Own, object> = oneValue('own', {
  usual: () => nothingOwn,
  parse: (text, { troubles }) => readOwn(text, troubles),
  write: (own) => {
    const kept = canonicalOwn(own)
    const values = ownNames.flatMap((name) => {
      const value = kept[name]
      return value === undefined ? [] : [`${name}-${roundNumber(value)}`]
    })
    const bed = kept.needles === undefined ? [] : [`${bedName}-${kept.needles}`]
    return [form, ...bed, ...values].join('_')
  },
})
