import { dimensions } from '../mechanism/dimensions.ts'
import { type CloseStrip, closeStripOf } from './close-strip.ts'
import { type Frame, frameOf } from './frame.ts'
import { type Hidden, hiddenOf } from './hidden.ts'
import { Memo } from './memo.ts'
import type { MeetingClass } from './meeting.ts'
import type { SumSetting } from './sum-setting.ts'
import type { WideBed } from './wide-bed.ts'

const { strips } = dimensions

/** How deep sums go: all but loose pivots, with those, or every combination however rare, but no loose pivots. */
export type Depth = 'firm' | 'loose' | 'whole'

/** The close sums of a bed in some state, with a retainer bar and dips in some state. */
export interface StateSums {
  /** A text that two sums of one setting share only where they are the same. */
  readonly key: string
  readonly frame: Frame
  readonly depth: Depth
  readonly hidden: readonly Hidden[]
  readonly strips: readonly CloseStrip[]
}

/** Strips that were summed before: enough for what one query asks for, and for what changes with some marks. */
const known = new Memo<CloseStrip>(200)

/** The sums of a bed; `retainer` is an index in `retainerMs`, -1 for a sound bar. Only loose ones have loose pivots. */
export const stateSumsOf = (
  setting: SumSetting,
  bed: WideBed,
  retainer: number,
  { meets, wears }: MeetingClass,
  depth: Depth,
): StateSums => {
  const frame = frameOf(setting, bed, retainer)
  const hidden = hiddenOf(wears, depth === 'loose')
  const common = [setting.key, wears.join(), depth].join(' ')
  const all = Array.from({ length: strips }, (_, strip) => {
    // A strip of which nothing was noted adds up to the same whatever the bed.
    const noted = setting.noted[strip]!
    const own = noted === '' ? '' : [bed.key, retainer, meets, noted].join(' ')
    return known.of(`${common} ${strip} ${own}`, () => closeStripOf(frame, strip, meets, depth, hidden))
  })
  const key = [common, bed.key, retainer, meets].join(' ')
  return { key, frame, depth, hidden, strips: all }
}
