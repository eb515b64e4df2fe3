import { type Fault, faultId } from '../../mechanism/fault.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { at } from '../../mechanism/lookup.ts'
import type { Pass } from '../../mechanism/pass.ts'
import { ofNeedle } from '../../mechanism/indices.ts'
import { departureWords } from '../../words/departures.ts'
import { faultPhrase, faultWords } from '../../words/faults.ts'
import { needlesListed, withUnit } from '../../words/lists.ts'
import type { Kit, Option, Part } from '../question.ts'
import type { NeedleRange } from '../needle-range.ts'
import { passOf, type Setup, sorted, linkText } from '../setup.ts'
import { outcomesKey, bedPicture, departuresIn, wrongWords } from '../bed-view.ts'

/** What was seen on the bed: some passes without the fault that made them so, and where it was looked at. */
export interface Evidence {
  readonly views: readonly Setup[]
  readonly range: NeedleRange
  /** Faults that may have done it. */
  readonly suspects: readonly Fault[]
}

/** How many answers are offered. */
const offered = 4

/** A setup with one fault in it. */
export const withFault = (setup: Setup, fault: Fault): Setup => ({ ...setup, faults: [fault] })

const passesOf = (kit: Kit, views: readonly Setup[], fault: Fault): Pass[] =>
  views.map((view) => passOf(kit, withFault(view, fault)))

/** What a range of the bed shows otherwise than it would, as a clause. */
const difference = (seen: Pass, would: Pass, range: NeedleRange): string => {
  const same = departuresIn(would, range)
  const lacking = departuresIn(seen, range).filter(
    ({ needle, came }) => !same.some((one) => one.needle === needle && one.came === came),
  )
  const [first] = lacking
  const some = (first ? lacking : same).filter(
    ({ needle, came }) => came === (first?.came ?? came) && (first || ofNeedle(seen.came, needle) !== came),
  )
  const names = needlesListed(some.map(({ needle }) => needle))
  const be = some.length === 1 ? 'is' : 'are'
  return `${names} ${be} ${first ? departureWords[first.came].brief : 'right'}`
}

/** The first of some views whose bed a fault would have left otherwise; -1 where it explains them all. */
const firstOther = (seen: readonly Pass[], would: readonly Pass[], range: NeedleRange): number =>
  seen.findIndex((pass, n) => outcomesKey(pass, range) !== outcomesKey(at(would, n), range))

const reasonOf = (
  fault: Fault,
  seen: readonly Pass[],
  would: readonly Pass[],
  evidence: Evidence,
): string => {
  const { range, views } = evidence
  const n = firstOther(seen, would, range)
  const [here, there] = [at(seen, n), at(would, n)]
  const isSpeed = new Set(views.map(({ speed }) => speed)).size > 1
  const where = isSpeed
    ? ` at ${withUnit(at(views, n).speed ?? dimensions.speed, 'mm/s')}`
    : seen.length === 1
      ? ''
      : ` after pass ${here.pass}`
  return `“${faultPhrase(fault)}” would leave ${wrongWords(there, range)}${where}, but ${where === '' ? 'here' : 'there'} ${difference(here, there, range)}.`
}

/**
 * A question that asks for the broken part. Null where the evidence shows nothing, or where fewer suspects than are
 * offered leave another bed than the culprit.
 */
export const partQuestion = (kit: Kit, evidence: Evidence): Part | null => {
  const { views, range, suspects } = evidence
  const { random } = kit
  const culprit = random.pick(suspects)
  const seen = passesOf(kit, views, culprit)
  if (seen.every((pass) => departuresIn(pass, range).length === 0)) return null
  const keys = seen.map((pass) => outcomesKey(pass, range)).join('|')
  const others = suspects.filter(
    (fault) =>
      passesOf(kit, views, fault)
        .map((pass) => outcomesKey(pass, range))
        .join('|') !== keys,
  )
  if (others.length < offered - 1) return null
  const options = random.shuffled([culprit, ...random.some(others, offered - 1)]).map((fault): Option => {
    const would = passesOf(kit, views, fault)
    const other = firstOther(seen, would, range)
    return {
      id: faultId(fault),
      label: faultPhrase(fault),
      note: '',
      right: fault === culprit,
      reason:
        fault === culprit
          ? `“${faultPhrase(fault)}” shows as ${faultWords[fault.kind].shows}, and so it does here.`
          : reasonOf(fault, seen, would, evidence),
      show: linkText(kit, sorted(withFault(at(views, Math.max(0, other)), fault), range)),
    }
  })
  return {
    kind: 'part',
    prompt: `This is what ${views.length === 1 ? 'one pass' : 'two passes'} left on the bed. What is wrong with the machine?`,
    state: linkText(kit, at(views, 0)),
    pictures: seen.map((pass, n) => bedPicture(pass, range, at(views, n))),
    options,
  }
}
