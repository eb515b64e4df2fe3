import { speeds } from '../find/battery.ts'
import type { CheckId } from '../find/checks.ts'
import { withUnit } from './lists.ts'

/** Each check in one sentence. */
export const checkWords: Readonly<Record<CheckId, string>> = {
  'next-row': 'Turn at the mark, pass the next row and look at the needles.',
  'row-fast': `Pass the same row the same way again, fast (${withUnit(speeds.fast, 'mm/s')}).`,
  'row-slow': `Pass the same row the same way again, slowly (${withUnit(speeds.slow, 'mm/s')}).`,
  'holes-right': 'Put in a card of all holes and pass to the right.',
  'holes-left': 'Put in a card of all holes and pass to the left.',
  'blank-right': 'Put in a blank card and pass to the right.',
  'blank-fast': `Put in a blank card and pass to the right, fast (${withUnit(speeds.fast, 'mm/s')}).`,
  'no-card': 'Take the card out and pass to the right: every needle should be selected.',
  card: 'Look at the card: torn or blocked holes, its face, whether it lies straight between its guides.',
  stepping: 'Pass the turn mark at both ends and watch the row numbers.',
  retainer: 'Press on the retainer bar with a finger: the padding should spring back.',
  needle: 'Press the butt of the needle down with a fingertip and watch how it comes up.',
  'swap-needle': 'Change the needle for its neighbour and pass again: see whether the fault goes with it.',
  pins: 'Take the card out and compare the feeler pins with one another, from outside.',
  belt: 'Move the carriage to and fro a little, feel the play before the belt follows, and look at its mark.',
  strips: 'Press each strip along the bed at its end with a fingertip: it should go easily and spring back.',
  carriage: 'Take the carriage off, turn it over, and look at the presser and the first gate on both sides.',
  cover:
    'Take the cover off and watch strips, catches, sweep, belt and pawls while someone moves the carriage.',
  reader: 'Take the card reader off and look at pins, rockers and sweep. This comes last of all.',
}
