import type { MachineFit } from '../find/machine-fit.ts'
import { counted } from './lists.ts'

/** The needles that came out wrong, as the end of a sentence counts them. */
const wrongNeedles = (departures: number, passes: number): string =>
  departures === 1
    ? 'the needle that came out wrong'
    : `the ${departures} needles that came out wrong${passes > 1 ? ', counted once in each pass' : ''}`

const soundWords = ({ looked, departures }: MachineFit, passes: number): string => {
  const needles = `of the ${counted(looked, 'needle')} looked at`
  if (looked === 0) return 'No needle was looked at.'
  return departures === 0
    ? `All ${needles} came out as asked${passes > 1 ? ', counted once in each pass' : ''}.`
    : `Then ${departures} ${needles} would have been noted wrongly${passes > 1 ? ', counted once in each pass' : ''}.`
}

const contraryWords = ({ contrary }: MachineFit): string =>
  contrary === 0 ? '' : `; ${counted(contrary, 'needle')} that came out as asked should not have`

const faultyWords = (fit: MachineFit, passes: number): string => {
  const { departures, explained, byChance } = fit
  const needles = wrongNeedles(departures, passes)
  const left = departures - explained
  if (departures === 0) return `No needle came out wrong${contraryWords(fit)}.`
  if (explained === 0) return `It does not explain ${needles}${contraryWords(fit)}.`
  const chance = byChance > 0 ? ', some by chance' : ''
  if (left === 0)
    return `It explains ${departures > 1 ? 'all of ' : ''}${needles}${chance}${contraryWords(fit) || ', and nothing else'}.`
  return `It explains ${explained} of ${needles}${chance}, and leaves ${left === 1 ? 'one' : left} unexplained${contraryWords(fit)}.`
}

/** A machine that is listed, with how it meets the notes. */
export interface ListedMachine extends MachineFit {
  readonly isSound: boolean
}

/** Why a machine is as likely as it is, in a sentence of needles; null for all that are not listed. `passes`: how many. */
export const machineEvidence = (machine: ListedMachine | null, passes: number): string => {
  if (machine === null) return 'All machines that are not listed, together.'
  return machine.isSound ? soundWords(machine, passes) : faultyWords(machine, passes)
}
