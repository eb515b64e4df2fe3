import { needleName } from '../mechanism/bed.ts'
import { type Fault, partOfFault, indexNames } from '../mechanism/fault.ts'
import type { Scenario } from '../mechanism/scenario.ts'
import { toNeedle } from '../mechanism/indices.ts'
import { caseParts, type Meanwhile, meanwhileWords } from './case-parts.ts'
import { listed } from './lists.ts'
import { capital, partName } from './parts.ts'

/** One thing that is wrong, in a customer's words. */
export interface WrongPart {
  /** Its name, as it is marked in the picture: Strip 3. */
  readonly name: string
  readonly words: string
}

/** The name by which words and picture call what a fault sits in. */
export const wrongName = (fault: Fault): string =>
  fault.kind === 'turn.short' ? 'A turn too soon' : capital(partName(partOfFault(fault)))

/** What is wrong, part by part; empty where no part is broken. */
export const wrongParts = (faults: readonly Fault[]): WrongPart[] =>
  faults.map((fault) => {
    const [first = '', second = ''] = indexNames(fault)
    return { name: wrongName(fault), words: caseParts[fault.kind].wrong(first, second) }
  })

const inWords: readonly string[] = ['', 'One', 'Two', 'Three', 'Four', 'Five', 'Six']

/** The sentence before the parts: how many things are wrong. */
export const wrongLead = ({ faults, wear }: Scenario): string => {
  const count = faults.length
  if (count > 0) return `${inWords[count] ?? count} ${count === 1 ? 'thing is' : 'things are'} wrong.`
  return wear > 0
    ? 'No single part is broken, but the machine is worn.'
    : 'As shown here the machine is sound.'
}

/** How worn the machine is, on a scale of a hundred; empty for a machine as new. */
export const wearWords = ({ faults, wear }: Scenario): string => {
  if (wear <= 0) return ''
  const lead = faults.length > 0 ? 'Apart from that the machine is worn.' : ''
  const scale = `On a scale from 0, as new, to 100, worn out, it stands at ${Math.max(1, Math.round(wear * 100))} here.`
  return `${lead} Many small parts have each lost a little by rubbing on one another. ${scale}`.trim()
}

/** The strictest advice first: it holds for all that is wrong. */
const strictest: readonly Meanwhile[] = ['leave', 'plain', 'card', 'slowly', 'needle', 'as it is']

/** What a customer can do until the repair. */
export const meanwhile = ({ faults, wear }: Scenario): string => {
  if (faults.length === 0) return meanwhileWords[wear > 0 ? 'plain' : 'as it is']
  const asked = new Set(faults.map(({ kind }) => caseParts[kind].meanwhile))
  const [first = 'as it is', ...more] = strictest.filter((advice) => asked.has(advice))
  if (first === 'slowly' && more.includes('needle'))
    return 'Until it is repaired you can usually go on knitting, slowly and evenly, with the broken needle out of use.'
  const needles = faults.filter(({ kind }) => caseParts[kind].meanwhile === 'needle')
  if (first === 'needle' && needles.length > 1)
    return `Until it is repaired you can usually go on knitting, and keep ${listed([
      ...new Set(needles.map(({ at }) => needleName(toNeedle(at[0] ?? 0)))),
    ])} out of use.`
  return meanwhileWords[first]
}

const wornRepair =
  'cleaning and setting, and then those parts that have worn most, as far as they can be had.'

/** What a repair usually is about: a sentence for each part, or for parts that need the same. */
export const repairs = ({ faults, wear }: Scenario): string[] => {
  const parts = new Map<string, string[]>()
  const add = (words: string, part: string): Map<string, string[]> =>
    parts.set(words, [...new Set([...(parts.get(words) ?? []), part])])
  for (const fault of faults) add(caseParts[fault.kind].repair, partName(partOfFault(fault)))
  if (wear > 0) add(wornRepair, 'the wear')
  return [...parts].map(([words, names]) =>
    parts.size === 1
      ? `The repair is usually ${words}`
      : `For ${listed(names)} the repair is usually ${words}`,
  )
}

/** Said once on the page: where the advice comes from. */
export const caseCaution =
  'What is said here about use and repair is common practice, from memory. Whoever repairs the machine decides once it is open.'
