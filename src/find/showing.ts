import type { Dimensions } from '../mechanism/dimensions.ts'
import { type Fault, faultId, indexKindsOf, makeFault } from '../mechanism/fault.ts'
import { faultKinds } from '../mechanism/fault-kinds.ts'
import { allColumns, markOfNeedle, type Needle } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { normalCdf } from '../mechanism/normal.ts'
import { fullShift } from '../mechanism/rocker.ts'
import { needlesAt } from './bed-needles.ts'
import { dictionaryOf } from './dictionary.ts'
import { entriesFor } from './entries.ts'
import { changedSlot, codes } from './packed-change.ts'
import { type Setting, settingOf, type Shown } from './shown.ts'
import { soundBeds } from './sound.ts'
import type { View } from './view.ts'

/** A fault that goes by chance counts as shown where it would have shown with this chance. */
export const sureEnough = 0.95

/** A single fault, with the chance that each of some passes shows it: 0 or 1, but for what goes by chance. */
export interface Showing {
  readonly fault: Fault
  /** By pass. */
  readonly chances: readonly number[]
}

/** Some passes, each with the needles that are looked at. */
interface Watched {
  readonly views: readonly View[]
  readonly isLookedAt: (pass: number, needle: Needle) => boolean
}

/** For whoever looks at the whole bed in each pass. */
export const everyNeedle = (): boolean => true

/** Whether a fault is of a single turn. */
export const isTurn = ({ kind }: Fault): boolean => indexKindsOf(kind).includes('pass')

const usual = (kind: 'pin.sticky' | 'pivots.loose', indices: readonly number[]): Fault =>
  makeFault(kind, indices, faultKinds[kind].amount?.usual ?? null)

/**
 * Every single fault that some passes could show: the machine's own, those that go by chance at their usual amounts, the
 * holes of the rows that are read, and single turns up to the last pass. Rows and turns are those of the card in question.
 */
export const singleFaults = (
  views: readonly View[],
  machine: Pick<View, 'own'> = views[0] ?? {},
): Fault[] => [
  ...entriesFor(
    views.filter(({ shift }) => shift !== null),
    machine,
  ),
  ...allColumns.map((column) => usual('pin.sticky', [column])),
  usual('pivots.loose', []),
]

/** Chance that at least one of so many things happens, each of this chance. */
const anyOf = (count: number, chance: number): number => 1 - (1 - chance) ** count

/** Chance that loose pivots of so many mm take so much of a push that no catch is reached. */
const shortChance = (dimensions: Dimensions, loose: number): number =>
  normalCdf((dimensions.reach - fullShift(dimensions)) / loose)

/** What a fault shows, by pass, as single faults are listed: a sticky pin where it stays down, which a pin stuck low shows. */
const listed = (fault: Fault): Fault =>
  fault.kind === 'pin.sticky' ? makeFault('pin.low', fault.at, null) : fault

/** The chances that each pass shows some single faults, on a machine that is sound but for one of them. */
export const showingsOf = (faults: readonly Fault[], { views, isLookedAt }: Watched): Showing[] => {
  const beds = soundBeds()
  const needles = needlesAt(views[0] ?? {})
  const settings = views.map((view) => settingOf(view, beds))
  const countOf = ({ sound }: Setting, pass: number, code: number): number =>
    needles.filter((needle) => markOfNeedle(sound.codes, needle) === code && isLookedAt(pass, needle)).length
  const counts = settings.map((setting, pass) => ({
    plain: countOf(setting, pass, codes.plain),
    selected: countOf(setting, pass, codes.selected),
  }))
  const { entries } = dictionaryOf(views, faults.filter(({ kind }) => kind !== 'pivots.loose').map(listed))
  const shownBy = new Map(entries.map(({ id, shown }) => [id, shown]))
  const isSeen = ({ changed }: Shown, pass: number): boolean =>
    changed.some((change) => isLookedAt(pass, at(needles, changedSlot(change))))
  const chanceIn = (fault: Fault, pass: number): number => {
    const { plain, selected } = at(counts, pass)
    if (fault.kind === 'pivots.loose')
      return anyOf(selected, shortChance(at(settings, pass).condition.dimensions, fault.amount))
    const shown = at(shownBy.get(faultId(listed(fault)))!, pass)
    if (fault.kind === 'retainer.worn') return anyOf(plain, shown.chance)
    const seen = isSeen(shown, pass) ? 1 : 0
    return fault.kind === 'pin.sticky' ? seen * fault.amount : seen
  }
  return faults.map((fault) => ({ fault, chances: views.map((_, pass) => chanceIn(fault, pass)) }))
}

/** Chance that any of the passes shows a fault. */
export const chanceShown = ({ chances }: Showing): number =>
  1 - chances.reduce((product, chance) => product * (1 - chance), 1)

/** Whether passes show a fault, or do so surely enough where it goes by chance. */
export const isShown = (showing: Showing): boolean => chanceShown(showing) >= sureEnough
