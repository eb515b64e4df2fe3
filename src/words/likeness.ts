import { type ChanceLikeness, machinesTried, type Tried } from '../find/chance-likeness.ts'
import type { Likeness } from '../find/likeness.ts'
import { faultPhrase } from './faults.ts'
import { lower } from './parts.ts'
import { lookWords } from './symptoms.ts'

/** What tells a fault from another that looks alike at first. */
export const apartWords = ({ apart }: Likeness): string =>
  apart
    ? `told apart by ${lookWords(apart)}.`
    : 'no look from outside tells them apart; go by the checks below.'

/** On how many of the machines tried a fault that goes by chance shows at all. */
export const shownWords = ({ fault, shown }: Tried): string => {
  if (shown === 0) return `${faultPhrase(fault)}: shows on none of the ${machinesTried} machines.`
  const all = shown === machinesTried ? `all ${machinesTried}` : `${shown} of the ${machinesTried}`
  return `${faultPhrase(fault)}: shows on ${all} machines.`
}

/** On how many machines another fault gives the same bed at first, and what tells the two apart later. */
export const alikeWords = ({ machines, parted, apart }: ChanceLikeness): string => {
  if (!apart) return `gives the same bed at first on ${machines}, and no look tells them apart.`
  const all = machines === 1 ? 'told apart later' : 'told apart later on all of them'
  const later = parted === machines ? all : `told apart later on ${parted}`
  return `gives the same bed at first on ${machines}; ${later}, most often by ${lookWords(apart)}.`
}

/** The same, on the page of the other fault. */
export const alikeToChanceWords = ({ fault }: Tried, alike: ChanceLikeness): string =>
  `${lower(faultPhrase(fault))}, tried on ${machinesTried} machines: ${alikeWords(alike)}`
