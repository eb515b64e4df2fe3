import { at as entryAt } from '../mechanism/lookup.ts'
import { needleName } from '../mechanism/bed.ts'
import { type Fault, partOfFault, indexNames } from '../mechanism/fault.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import type { Scenario } from '../mechanism/scenario.ts'
import { toNeedle } from '../mechanism/indices.ts'
import { avoidWords, caseParts, type Meanwhile, meanwhileWords } from './case-parts.ts'
import { keepingWords, repairTimeWords, shortWords, watchingWords } from './case-summary.ts'
import { listed } from './lists.ts'
import { capital, partName } from './parts.ts'

/** What a case says something of: a machine's faults and its wear. */
type Machine = Pick<Scenario, 'faults' | 'wear'>

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
export const wrongLead = ({ faults, wear }: Machine): string => {
  const count = faults.length
  if (count > 0) return `${inWords[count] ?? count} ${count === 1 ? 'thing is' : 'things are'} wrong.`
  return wear > 0
    ? 'No single part is broken, but the machine is worn.'
    : 'As shown here the machine is sound.'
}

/** How worn a machine is, as one says it; the wear goes from 0, as new, to 1, worn out. */
const howWorn = (wear: number): string => {
  if (wear < 0.35) return 'a little worn'
  if (wear < 0.65) return 'about half worn'
  return wear < 0.9 ? 'badly worn' : 'worn out'
}

/** How worn the machine is, in words: nobody has measured it. Empty for a machine as new. */
export const wearWords = ({ faults, wear }: Machine): string => {
  if (wear <= 0) return ''
  const lead = faults.length > 0 ? 'Apart from that the machine' : 'The machine'
  return `${lead} is ${howWorn(wear)}, as your repairer judges it: many small parts have each lost a little by rubbing on one another. In plain knitting it may be as good as ever.`
}

const kindsOf = ({ faults }: Machine): FaultKindName[] => faults.map(({ kind }) => kind)

/** What is wrong, in short, without needles, rows or columns. */
export const inShort = (scenario: Machine): string => shortWords(kindsOf(scenario))

/** How long the repair takes, about; empty where nothing is wrong. */
export const repairTime = (scenario: Machine): string => repairTimeWords(kindsOf(scenario))

/** What keeps it from coming back; empty where nothing is wrong. */
export const keeping = (scenario: Machine): string => keepingWords(kindsOf(scenario))

/** What would show that it comes back; empty where nothing was wrong. */
export const watching = (scenario: Machine): string => watchingWords(kindsOf(scenario))

/** What became of the faults of a machine by the work: the places that were mended, and those left as they are. */
export const mendedWords = ({ faults }: Machine, left: readonly Fault[]): string => {
  const namesOf = (some: readonly Fault[]): string => listed([...new Set(some.map(wrongName))])
  const mended = faults.filter((fault) => !left.includes(fault))
  const mostly = mended.length === 0 ? '' : `Mended: ${namesOf(mended)}.`
  return left.length === 0 ? mostly : `${mostly} Left as it is: ${namesOf(left)}.`.trim()
}

/** What passes after the work proved, in which every needle that was looked at came out right. */
export const provedWords = (faults: number, shown: number): string =>
  `Every needle that was looked at came out right. Of ${faults} single faults that this machine could have, ${shown} would have shown in what was looked at.`

/** The strictest advice first: it holds for all that is wrong. */
const strictest: readonly Meanwhile[] = ['leave', 'plain', 'card', 'slowly', 'needle', 'as it is']

/** What a customer is better not to do until the repair; empty where nothing is broken. */
export const avoid = ({ faults }: Machine): string => {
  const asked = new Set(faults.map(({ kind }) => caseParts[kind].meanwhile))
  const first = strictest.find((advice) => asked.has(advice))
  return first === undefined ? '' : avoidWords[first]
}

/** What a customer can do until the repair. */
export const meanwhile = ({ faults, wear }: Machine): string => {
  if (faults.length === 0) return meanwhileWords[wear > 0 ? 'plain' : 'as it is']
  const asked = new Set(faults.map(({ kind }) => caseParts[kind].meanwhile))
  const [first = 'as it is', ...more] = strictest.filter((advice) => asked.has(advice))
  if (first === 'slowly' && more.includes('needle'))
    return 'Until it is repaired you can usually go on knitting, slowly and evenly, with every needle left in use.'
  const needles = faults.filter(({ kind }) => caseParts[kind].meanwhile === 'needle')
  if (first === 'needle' && needles.length > 1)
    return `Until it is repaired you can knit plain: in plain knitting ${listed([
      ...new Set(needles.map(({ at }) => needleName(toNeedle(entryAt(at, 0))))),
    ])} work perfectly, so leave them in use. In a pattern, place it where a few lines do not matter.`
  return meanwhileWords[first]
}

const wornRepair =
  'cleaning and setting, and then those parts that have worn most, as far as they can be had.'

/** What a repair usually is about: a sentence for each part, or for parts that need the same. */
export const repairs = ({ faults, wear }: Machine): string[] => {
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
