import { wayOfPass } from '../mechanism/bed.ts'
import { everyHole } from '../mechanism/card.ts'
import type { Fault } from '../mechanism/fault.ts'
import type { Check, PartCheck } from './checks.ts'
import { signatureOf } from './dictionary.ts'
import type { Hypothesis } from './hypotheses.ts'
import { kindAndPlace } from './query.ts'
import { shownByMachine } from './machine-bed.ts'
import { settingOf, type Shown } from './shown.ts'
import { soundBeds } from './sound.ts'
import { type Noted, rowDue, type View } from './view.ts'

/** The card of a pass that is asked for: the one in question, none, or one of the two plain ones. */
export type RequestedCard = 'same' | 'none' | 'all-holes' | 'blank'

/** A pass that is asked for. */
export interface RequestedPass extends Noted {
  readonly card: RequestedCard
}

/** What a machine would show in one pass, beside a sound one: as `Shown`, fit to be sent to another thread. */
export interface Prediction {
  /** As `packChange` packs them. */
  readonly changed: readonly number[]
  readonly chance: number
}

/** One outcome of a check: a bed, with the faults that would give it, or a part that is found; null for none. */
export type CheckOutcome =
  | {
      readonly kind: 'bed'
      readonly prediction: Prediction
      readonly if: readonly (readonly Fault[])[]
    }
  | { readonly kind: 'part'; readonly found: Fault | null }

/** A prediction, ready to be sent. */
export const predictionOf = ({ changed, chance }: Shown): Prediction => ({ changed: [...changed], chance })

/** The most outcomes of a check beside the sound one. */
const mostOutcomes = 4

/** The likeliest hypotheses are enough to say what a pass may show. */
const leaders = 12

const cardOfView = ({ card }: View): RequestedCard => {
  if (card === null) return 'none'
  if (card.length > 1) return 'same'
  return card[0] === everyHole ? 'all-holes' : card[0] === 0 ? 'blank' : 'same'
}

/** A view as a pass that somebody is asked to make. */
export const passOfView = (view: View): RequestedPass => {
  const card = cardOfView(view)
  const row = card === 'none' ? null : card === 'same' ? rowDue(view) : 1
  return { card, row, way: wayOfPass(view.pass), speed: view.speed }
}

/** What the likely machines would show in a view, those alike together; a sound machine is always the first. */
const bedOutcomes = (view: View, hypotheses: readonly Hypothesis[]): CheckOutcome[] => {
  const setting = settingOf(view, soundBeds())
  const groups = new Map<string, CheckOutcome & { kind: 'bed' }>([
    ['', { kind: 'bed', prediction: { changed: [], chance: 0 }, if: [] }],
  ])
  for (const hypothesis of hypotheses.slice(0, leaders)) {
    if (hypothesis.faults.length === 0) continue
    const shown = shownByMachine(hypothesis, setting)
    if (shown.chance > 0) continue
    const key = signatureOf([shown])
    const group = groups.get(key)
    groups.set(key, {
      kind: 'bed',
      prediction: group?.prediction ?? predictionOf(shown),
      if: [...(group?.if ?? []), hypothesis.faults],
    })
  }
  return [...groups.values()].slice(0, mostOutcomes + 1)
}

/** Nothing found, or one of the likely faults that the check shows, whatever its amount. */
const partOutcomes = ({ shows }: PartCheck, hypotheses: readonly Hypothesis[]): CheckOutcome[] => {
  const found = new Map<string, Fault>()
  for (const { faults } of hypotheses)
    for (const fault of faults)
      if (shows.includes(fault.kind) && !found.has(kindAndPlace(fault))) found.set(kindAndPlace(fault), fault)
  return [null, ...[...found.values()].slice(0, mostOutcomes)].map((fault): CheckOutcome => ({
    kind: 'part',
    found: fault,
  }))
}

/** What a check may show, that of a sound machine first; `hypotheses` has the likeliest first. */
export const outcomesOf = (
  check: Check,
  view: View | null,
  hypotheses: readonly Hypothesis[],
): CheckOutcome[] => {
  if (check.kind === 'part') return partOutcomes(check, hypotheses)
  return view ? bedOutcomes(view, hypotheses) : []
}
