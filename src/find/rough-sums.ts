import { dimensions } from '../mechanism/dimensions.ts'
import { readers } from './chances.ts'
import { type Frame, frameOf, notedStripOf } from './frame.ts'
import { type StripSums, Weighing, weighingOf } from './hidden.ts'
import { logSum } from './log-sum.ts'
import { Memo } from './memo.ts'
import { mostWorn, roughHidden, roughSlowOf } from './rough-slow.ts'
import type { SumSetting } from './sum-setting.ts'
import { fastSumsOf, fastTotal, stripValue } from './strip-sums.ts'
import type { WideBed } from './wide-bed.ts'

const { strips } = dimensions

/** By how much, as a logarithm, all strips may come to more than they can: what an owner said may make needles likelier wrong. */
const slack = 5

const roughStripOf = (frame: Frame, strip: number, certainty: number): StripSums => {
  const noted = notedStripOf(frame, strip, 1, certainty)
  const fast = fastSumsOf(noted, strip, 0, true)
  return {
    log: noted.needles.log,
    seized: stripValue(noted, strip, 0),
    over: stripValue(noted, strip, frame.bed.shifted),
    fast: new Float64Array(
      roughHidden.map(({ wear, reader }) =>
        fastTotal(fast, readers[reader]!, frame.bed.peaks.sufficient[wear]!),
      ),
    ),
    slow: roughSlowOf(noted, strip),
  }
}

/** Strips that were roughly summed: enough for what one query asks for, and for what changes with some marks. */
const known = new Memo<StripSums>(6000)

/** A bed in some state with a bar in some state, whose pushes suffice with the chance `certainty`. */
export interface RoughBed {
  readonly setting: SumSetting
  readonly bed: WideBed
  readonly retainer: number
  readonly certainty: number
}

/** Where the rough sums of a strip are kept. */
const keyOf = ({ setting, bed, retainer, certainty }: RoughBed, strip: number): string => {
  const noted = setting.noted[strip]!
  // A strip of which nothing was noted adds up to the same whatever the bed.
  return noted === ''
    ? `${setting.key} ${strip}`
    : `${setting.key} ${bed.key} ${retainer} ${certainty} ${strip} ${noted}`
}

/**
 * The rough log of how likely the notes are with a bed, or null where that is surely below `least`: then not every strip is
 * summed. Strips that were summed before come first. Rough sums have no pins that stay pushed over, no wrong holes, and only
 * dead and worn columns on slow strips.
 */
export const roughLogOf = (
  rough: RoughBed,
  least: number,
): { readonly log: number; readonly worn: number } | null => {
  const { setting, bed, retainer, certainty } = rough
  const keys = Array.from({ length: strips }, (_, strip) => keyOf(rough, strip))
  const sums = keys.map((key) => known.get(key))
  const bound = new Weighing(setting.byHand, retainer, roughHidden)
  const isHopeless = (strip: number, one: StripSums): boolean => {
    bound.add(strip, one)
    return bound.total() < least - slack
  }
  for (const [strip, one] of sums.entries()) if (one && isHopeless(strip, one)) return null
  let frame: Frame | null = null
  for (const [strip, key] of keys.entries()) {
    if (sums[strip]) continue
    frame ??= frameOf(setting, bed, retainer)
    const made = roughStripOf(frame, strip, certainty)
    known.of(key, () => made)
    sums[strip] = made
    if (isHopeless(strip, made)) return null
  }
  const { logs } = weighingOf(setting.byHand, retainer, roughHidden, sums as StripSums[])
  const log = logSum(logs)
  if (log < least) return null
  const isWorn = (n: number): boolean => roughHidden[n % roughHidden.length]!.wear === mostWorn
  return { log, worn: logSum(logs.filter((_, n) => isWorn(n))) }
}
