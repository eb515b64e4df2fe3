import { type Fault, faultId } from '../../mechanism/fault.ts'
import type { Pass } from '../../mechanism/pass.ts'
import { faultPhrase, faultWords } from '../../words/faults.ts'
import { needlesListed } from '../../words/lists.ts'
import type { Kit, Option, Part } from '../question.ts'
import { passOf, type Scene, sorted, type Stretch, textOf } from '../scene.ts'
import { bedKey, bedPicture, outcomeWords, wrongIn, wrongWords } from '../seen.ts'

/** What was seen on the bed: some passes without the fault that made them so, and where it was looked at. */
export interface Evidence {
  readonly views: readonly Scene[]
  readonly stretch: Stretch
  /** Faults that may have done it. */
  readonly suspects: readonly Fault[]
}

/** How many answers are offered. */
const offered = 4

/** A scene with one fault in it. */
export const withFault = (scene: Scene, fault: Fault): Scene => ({ ...scene, faults: [fault] })

const passesOf = ({ library }: Kit, views: readonly Scene[], fault: Fault): Pass[] =>
  views.map((view) => passOf(library, withFault(view, fault)))

/** What a stretch of the bed shows otherwise than it would, as a clause. */
const difference = (seen: Pass, would: Pass, stretch: Stretch): string => {
  const same = wrongIn(would, stretch)
  const lacking = wrongIn(seen, stretch).filter(
    ({ needle, came }) => !same.some((one) => one.needle === needle && one.came === came),
  )
  const [first] = lacking
  const some = (first ? lacking : same).filter(
    ({ needle, came }) => came === (first?.came ?? came) && (first || seen.came[needle] !== came),
  )
  const names = needlesListed(some.map(({ needle }) => needle))
  const be = some.length === 1 ? 'is' : 'are'
  return `${names} ${be} ${first ? outcomeWords[first.came] : 'right'}`
}

/** The first of some views whose bed a fault would have left otherwise; -1 where it explains them all. */
const firstOther = (seen: readonly Pass[], would: readonly Pass[], stretch: Stretch): number =>
  seen.findIndex((pass, n) => bedKey(pass, stretch) !== bedKey(would[n] ?? pass, stretch))

const reasonOf = (
  fault: Fault,
  seen: readonly Pass[],
  would: readonly Pass[],
  evidence: Evidence,
): string => {
  const { stretch, views } = evidence
  const n = firstOther(seen, would, stretch)
  const [here, there] = [seen[n]!, would[n]!]
  const isSpeed = new Set(views.map(({ speed }) => speed)).size > 1
  const where = isSpeed
    ? ` at ${views[n]?.speed ?? 0} mm/s`
    : seen.length === 1
      ? ''
      : ` after pass ${here.pass}`
  return `“${faultPhrase(fault)}” would leave ${wrongWords(there, stretch)}${where}, but ${where === '' ? 'here' : 'there'} ${difference(here, there, stretch)}.`
}

/**
 * A question that asks for the broken part. Null where the evidence shows nothing, or where fewer suspects than are
 * offered can be told from the one that did it.
 */
export const nameBroken = (kit: Kit, evidence: Evidence): Part | null => {
  const { views, stretch, suspects } = evidence
  const { draw, library } = kit
  const culprit = draw.pick(suspects)
  const seen = passesOf(kit, views, culprit)
  if (seen.every((pass) => wrongIn(pass, stretch).length === 0)) return null
  const keys = seen.map((pass) => bedKey(pass, stretch)).join('|')
  const others = suspects.filter(
    (fault) =>
      passesOf(kit, views, fault)
        .map((pass) => bedKey(pass, stretch))
        .join('|') !== keys,
  )
  if (others.length < offered - 1) return null
  const options = draw.shuffled([culprit, ...draw.some(others, offered - 1)]).map((fault): Option => {
    const would = passesOf(kit, views, fault)
    const at = firstOther(seen, would, stretch)
    return {
      id: faultId(fault),
      label: faultPhrase(fault),
      note: '',
      right: fault === culprit,
      reason:
        fault === culprit
          ? `“${faultPhrase(fault)}” shows as ${faultWords[fault.kind].shows}, and so it does here.`
          : reasonOf(fault, seen, would, evidence),
      show: textOf(library, sorted(withFault(views[Math.max(0, at)]!, fault), stretch)),
    }
  })
  return {
    kind: 'part',
    prompt: `This is what ${views.length === 1 ? 'one pass' : 'two passes'} left on the bed. What is wrong with the machine?`,
    state: textOf(library, views[0]!),
    pictures: seen.map((pass, n) => bedPicture(pass, stretch, views[n]!)),
    options,
  }
}
