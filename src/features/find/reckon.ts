import { checks, type PartCheck } from '../../find/checks.ts'
import { type Dictionary, dictionaryOf, type Entry } from '../../find/dictionary.ts'
import { hypothesesOf } from '../../find/next.ts'
import { rank, type Suspect } from '../../find/rank.ts'
import { changedNeedle } from '../../find/outcome.ts'
import type { Shown } from '../../find/shown.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { evidenceWords } from '../../words/suspect-evidence.ts'
import { viewsAsked, withoutAmount } from './asked.ts'
import type { Answer, Ask, AskedCheck, Prediction } from './messages.ts'

/** Chance that somebody who looks at a part misses what it has, or sees what it hasn't. Common practice from memory. */
const mistaken = 0.03

const partCheck = (id: string): PartCheck | undefined =>
  checks.find((check): check is PartCheck => check.id === id && 'shows' in check)

/** How likely what was found at a part is, where these faults are there. */
const chanceOf = ({ check, found }: AskedCheck, faults: readonly Fault[]): number => {
  const shows = partCheck(check)?.shows
  if (!shows) return 1
  const there = faults.filter(({ kind }) => shows.includes(kind)).map(withoutAmount)
  const isMet = found ? there.includes(withoutAmount(found)) : there.length === 0
  return isMet ? 1 - mistaken : mistaken
}

/** A suspect with only some of its ways, and a new probability. */
type Weighed = Suspect & { readonly probability: number }

/** Answers less likely than this are left out. */
const least = 1e-4

/** A suspect's ways by how likely each is, with what was found at parts taken in; ways that this parts are parted. */
const weighed = (dictionary: Dictionary, suspect: Suspect, checked: readonly AskedCheck[]): Weighed[] => {
  const groups = new Map<number, { ways: (readonly Entry[])[]; probability: number }>()
  for (const { entries, probability } of hypothesesOf(dictionary, [suspect])) {
    const faults = (entries ?? []).map(({ fault }) => fault)
    const chance = checked.reduce((product, one) => product * chanceOf(one, faults), 1)
    const key = Math.round(Math.log(chance) * 1e6)
    const group = groups.get(key) ?? { ways: [], probability: 0 }
    if (suspect.is === 'faults' && entries) group.ways.push(entries)
    group.probability += probability * suspect.probability * chance
    groups.set(key, group)
  }
  return [...groups.values()].map((group) => ({ ...suspect, ...group }))
}

/** The likeliest way first. */
const sortedWays = (dictionary: Dictionary, suspect: Suspect): Suspect => {
  if (suspect.is !== 'faults' || suspect.ways.length < 2) return suspect
  const ways = hypothesesOf(dictionary, [{ ...suspect, probability: 1 }])
    .sort((one, other) => other.probability - one.probability)
    .flatMap(({ entries }) => (entries ? [entries] : []))
  return { ...suspect, ways }
}

/** What may be wrong, as the worker reckons it. */
interface Reckoned {
  readonly dictionary: Dictionary
  readonly suspects: readonly Suspect[]
  /** The likeliest of what the dictionary holds, however unlikely; null where even that is next to impossible. */
  readonly nearest: Suspect | null
}

/** What may be wrong, as asked: by the needles seen, then by the parts looked at. */
export const suspectsAsked = (ask: Ask): Reckoned => {
  const dictionary = dictionaryOf(viewsAsked(ask.passes))
  const ranked = rank(dictionary, { beds: ask.passes.map(({ needles }) => needles), slip: ask.slip })
  const parts = ask.checked.filter(({ check }) => partCheck(check))
  const kept = ranked.filter(({ probability }) => probability >= least)
  const all = parts.length === 0 ? kept : kept.flatMap((suspect) => weighed(dictionary, suspect, parts))
  const whole = all.reduce((sum, { probability }) => sum + probability, 0)
  return {
    dictionary,
    nearest: ranked.find(({ is }) => is !== 'unknown') ?? null,
    suspects: all
      .map((suspect) => ({ ...sortedWays(dictionary, suspect), probability: suspect.probability / whole }))
      .sort((one, other) => other.probability - one.probability),
  }
}

/** The most answers that are told, the least likely one, and the most ways of one answer. */
const told = { answers: 6, probability: 0.005, ways: 60 } as const

export const predictionOf = ({
  changed,
  chance,
}: {
  changed: Iterable<number>
  chance: number
}): Prediction => ({
  changed: [...changed],
  chance,
})

/** Whether a prediction would be seen on the needles that were looked at. */
const isSeen = ({ changed, chance }: Shown, needles: string): boolean =>
  (chance > 0 && /[^?]/.test(needles)) ||
  changed.some((one) => !['?', ''].includes(needles.charAt(changedNeedle(one))))

/** An answer, ready to be sent to the page. */
export const answerOf = ({ passes }: Ask, suspect: Suspect): Answer => {
  const { is, ways, probability, shown } = suspect
  return {
    is,
    ways: ways.slice(0, told.ways).map((way) => way.map(({ fault }) => fault)),
    probability,
    why: evidenceWords(suspect),
    shown: shown?.map(predictionOf) ?? null,
    isHidden: is === 'faults' && (shown ?? []).every((one, n) => !isSeen(one, passes[n]?.needles ?? '')),
  }
}

/** The few likely answers, ready to be sent to the page. */
export const answersOf = (ask: Ask, suspects: readonly Suspect[]): Answer[] =>
  suspects
    .filter(({ probability }, n) => n === 0 || probability >= told.probability)
    .slice(0, told.answers)
    .map((suspect) => answerOf(ask, suspect))
