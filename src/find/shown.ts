import { longestButtReturn } from '../mechanism/closed-forms.ts'
import { needlesOfStrip, wayOfPass } from '../mechanism/bed.ts'
import { type Condition, conditionOf } from '../mechanism/condition.ts'
import { type Dimensions, dimensions as training } from '../mechanism/dimensions.ts'
import { type Fault, isHoleFault } from '../mechanism/fault.ts'
import { chanceOfSlower, freeHeight, gatesOf, sortByHeight, travelTime } from '../mechanism/gate.ts'
import { passDrive } from '../mechanism/drive.ts'
import { rowRead } from '../mechanism/turn.ts'
import { markOfNeedle, type Needle, slotOf } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { needlesAt } from './bed-needles.ts'
import { reachOf } from './entries.ts'
import { needleCode } from './needle-code.ts'
import { codes, packChange } from './packed-change.ts'
import { type SoundBed, type SoundBeds, soundIn } from './sound.ts'
import { rowDue, scenarioIn, type View } from './view.ts'

/** What a machine shows in a view, as it differs from a sound one. */
export interface Shown {
  /** The needles that come out otherwise, from the left, each as `packChange` packs it. */
  readonly changed: Uint16Array
  /** Chance that a needle which a sound machine leaves plain is selected, each by itself; 0 unless chance rules. */
  readonly chance: number
}

/** A view with what a sound machine does in it, computed once for all faults. */
export interface Setting {
  readonly view: View
  readonly sound: SoundBed
  readonly condition: Condition
  readonly beds: SoundBeds
}

/** Gives the machine's condition in a view. */
export type ConditionIn = (view: View) => Condition

/** Conditions of a machine with these faults. Views that differ by their speed or pass share one. */
export const conditionsOf = (faults: readonly Fault[]): ConditionIn => {
  let last: { readonly view: View; readonly condition: Condition } | null = null
  return (view) => {
    if (last?.view.card !== view.card || last.view.shift !== view.shift)
      last = { view, condition: conditionOf(scenarioIn(view, faults)) }
    return { ...last.condition, speed: view.speed }
  }
}

const nothing: Shown = { changed: new Uint16Array(0), chance: 0 }

export const settingOf = (view: View, beds: SoundBeds): Setting => ({
  view,
  sound: soundIn(beds, view),
  condition: conditionOf(scenarioIn(view, [])),
  beds,
})

const differing = (
  { sound }: Setting,
  needles: readonly Needle[],
  codeOf: (needle: Needle, slot: number) => number,
): Shown => {
  const changed: number[] = []
  for (const needle of needles) {
    const slot = slotOf(needle, sound.codes.length)
    const code = codeOf(needle, slot)
    if (code !== sound.codes[slot]) changed.push(packChange(slot, code))
  }
  return changed.length === 0 ? nothing : { changed: Uint16Array.from(changed), chance: 0 }
}

/**
 * Chance that a free butt comes to the first gate too low with a retainer bar of this median time constant, in ms: the
 * constants are log-normal, and too long is what brings the butt no further than the gate's edge in the time it has.
 */
export const lateChance = (median: number, speed: number, dimensions: Dimensions = training): number =>
  chanceOfSlower(median, longestButtReturn(speed, dimensions))

/** The rest of the machine is sound, so all that matters is whether a catch held the needle's butt. */
const ofNeedle = (fault: Fault, needle: Needle, setting: Setting): Shown => {
  const { condition, sound, view } = setting
  const { dimensions } = condition
  if (fault.kind === 'needle.gone') return differing(setting, [needle], () => codes.unmoved)
  const isStiff = fault.kind === 'needle.stiff'
  if (isStiff === (markOfNeedle(sound.held, needle) === 1)) return nothing
  const time = travelTime(condition, dimensions.gateLag)
  const buttReturn = isStiff ? fault.amount : dimensions.buttReturn
  const height = freeHeight(condition, needle, wayOfPass(view.pass), time, buttReturn)
  return differing(setting, [needle], () => codes[sortByHeight(height, gatesOf(condition))])
}

/** Runs the pass with the faults, but looks only at the needles that they can reach. */
const ofNeedles = (needles: readonly Needle[], setting: Setting, conditionIn: ConditionIn): Shown => {
  const condition = conditionIn(setting.view)
  const drive = passDrive(condition, setting.view.pass)
  return differing(setting, needles, (needle) => needleCode(condition, drive, needle))
}

/** The machine is sound but for the row that it reads. */
const ofRow = (setting: Setting, conditionIn: ConditionIn): Shown => {
  const { view, beds } = setting
  if (!view.card) return nothing
  const row = rowRead(conditionIn(view), view.pass)!
  const other = beds(view.card[row - 1]!, wayOfPass(view.pass), view.speed, view)
  return other === setting.sound
    ? nothing
    : differing(setting, needlesAt(view), (_, slot) => at(other.codes, slot))
}

/**
 * What a single fault shows in a view: the sound bed, with only what the fault can reach recomputed. `conditionIn`
 * gives the conditions of a machine with that fault.
 */
export const shownBy = (fault: Fault, setting: Setting, conditionIn: ConditionIn): Shown => {
  const reach = reachOf(fault, setting.view)
  switch (reach.of) {
    case 'needle':
      return ofNeedle(fault, reach.needle, setting)
    case 'strip':
      return isHoleFault(fault) && rowDue(setting.view) !== fault.at[0]
        ? nothing
        : ofNeedles(
            needlesOfStrip(reach.strip, setting.view, setting.condition.dimensions.needles),
            setting,
            conditionIn,
          )
    case 'row':
      return ofRow(setting, conditionIn)
    case 'bed':
      return ofNeedles(needlesAt(setting.view), setting, conditionIn)
    case 'chance':
      return {
        changed: nothing.changed,
        chance: lateChance(fault.amount!, setting.view.speed, setting.condition.dimensions),
      }
  }
}

/** What several faults together show in a view, on the needles given; none of them may rule by chance. */
export const shownByAll = (
  faults: readonly Fault[],
  needles: readonly Needle[],
  settings: readonly Setting[],
): Shown[] => {
  const conditionIn = conditionsOf(faults)
  return settings.map((setting) => ofNeedles(needles, setting, conditionIn))
}
