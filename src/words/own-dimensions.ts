import { type Own, ownDimensions, ownNames } from '../mechanism/own.ts'
import { counted, listed, withUnit } from './lists.ts'

/** What was measured of a machine, in a sentence: each dimension by its name in links; empty where nothing was. */
export const ownDimensionsWords = (own: Own): string => {
  const measured = ownNames.flatMap((name) => {
    const value = own[name]
    if (value === undefined) return []
    const { unit } = ownDimensions[name]
    return [`${name} ${unit === 'ratio' ? String(value) : withUnit(String(value), unit)}`]
  })
  const all = [...(own.needles === undefined ? [] : [counted(own.needles, 'needle')]), ...measured]
  return all.length === 0 ? '' : `Weighed as a machine with dimensions of its own: ${listed(all)}.`
}

/** Which machine a finding is computed for, where so much was measured of it. */
export const machineWeighed = (own: Own): string =>
  ownDimensionsWords(own) === ''
    ? 'the training machine, whose dimensions are illustrative'
    : 'a machine with dimensions of its own, illustrative where none was measured'
