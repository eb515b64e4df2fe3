import { type CheckId, checks, type LookCheck, type PartCheck } from '../../find/checks.ts'
import type { Case } from '../../find/case.ts'
import { type Dictionary, dictionaryOf, shownKey } from '../../find/dictionary.ts'
import { type Hypothesis, hypothesesOf, nextChecks } from '../../find/next.ts'
import type { Suspect } from '../../find/rank.ts'
import { rowDue, type View } from '../../find/view.ts'
import { wayOfPass } from '../../mechanism/bed.ts'
import { everyHole } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import type { Advice, Ask, CheckOutcome } from './messages.ts'
import { withoutAmount } from './asked.ts'
import { predictionOf } from './reckon.ts'

/** The most outcomes of a check that get a button each, beside the sound one. */
const mostOutcomes = 4

/** The likeliest hypotheses are enough to say what a check may show. */
const leaders = 12

const passOf = (view: View): Advice['pass'] => {
  const { card, pass, speed } = view
  const kind =
    card === null
      ? 'none'
      : card.length === 1 && card[0] === everyHole
        ? 'all-holes'
        : card.length === 1 && card[0] === 0
          ? 'blank'
          : 'same'
  const row = kind === 'none' ? null : kind === 'same' ? rowDue(view) : 1
  return { card: kind, row, way: wayOfPass(pass), speed }
}

/** What the likely answers would show in a view, those alike together; a sound machine is always among them. */
const bedOutcomes = (view: View, hypotheses: readonly Hypothesis[]): CheckOutcome[] => {
  const single = hypotheses.filter(({ entries }) => entries?.length === 1).slice(0, leaders)
  const faults = single.flatMap(({ entries }) => entries?.map(({ fault }) => fault) ?? [])
  const groups = new Map<string, CheckOutcome & { kind: 'bed' }>([
    ['', { kind: 'bed', prediction: { changed: [], chance: 0 }, if: [] }],
  ])
  for (const { fault, shown } of dictionaryOf([view], faults).entries) {
    const [first] = shown
    if (!first || first.chance > 0) continue
    const key = shownKey([first]).trim()
    const group = groups.get(key)
    groups.set(key, {
      kind: 'bed',
      prediction: group?.prediction ?? predictionOf(first),
      if: [...(group?.if ?? []), [fault]],
    })
  }
  return [...groups.values()].slice(0, mostOutcomes + 1)
}

const partOutcomes = ({ shows }: PartCheck, hypotheses: readonly Hypothesis[]): CheckOutcome[] => {
  const found = new Map<string, Fault>()
  for (const { entries } of hypotheses)
    for (const { fault } of entries ?? [])
      if (shows.includes(fault.kind) && !found.has(withoutAmount(fault)))
        found.set(withoutAmount(fault), fault)
  return [
    { kind: 'part', found: null },
    ...[...found.values()]
      .slice(0, mostOutcomes)
      .map((fault): CheckOutcome => ({ kind: 'part', found: fault })),
  ]
}

const outcomesOf = (
  check: LookCheck | PartCheck,
  view: View | null,
  hypotheses: readonly Hypothesis[],
): CheckOutcome[] =>
  'shows' in check ? partOutcomes(check, hypotheses) : view ? bedOutcomes(view, hypotheses) : []

/** The case in the next checks' eyes: the passes with the card in question. */
const caseOf = ({ passes }: Ask): Case => {
  const own = passes.filter(({ isOwn }) => isOwn)
  return { card: own[0]?.card ?? null, passes: own }
}

/** The checks worth taking next, best first, those done already left out; whatever opens the machine comes last. */
export const adviceOf = (ask: Ask, dictionary: Dictionary, suspects: readonly Suspect[]): Advice[] => {
  const known = caseOf(ask)
  const done = new Set(ask.checked.map(({ check }) => check))
  const hypotheses = [...hypothesesOf(dictionary, suspects)].sort(
    (one, other) => other.probability - one.probability,
  )
  const ways = new Map<CheckId, LookCheck | PartCheck>(checks.map((check) => [check.id, check]))
  return nextChecks(known, dictionary, suspects)
    .filter(({ check }) => !done.has(check))
    .flatMap((next): Advice[] => {
      const check = ways.get(next.check)
      if (!check) return []
      const view = 'view' in check ? check.view(known) : null
      return [{ ...next, pass: view && passOf(view), outcomes: outcomesOf(check, view, hypotheses) }]
    })
}
