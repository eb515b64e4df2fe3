import { slowHand, speeds } from '../find/battery.ts'
import { type CheckId, checkOf } from '../find/checks.ts'
import type { NextLook } from '../find/next.ts'
import { needleName, sideOfWay } from '../mechanism/bed.ts'
import { partOfFault } from '../mechanism/fault.ts'
import { parsePart } from '../mechanism/part.ts'
import { bedTime, minutesWords } from './pace.ts'

/** Each check in one sentence. */
export const checkWords: Readonly<Record<CheckId, string>> = {
  'next-row': 'Turn past the mark, push the carriage across for the next row, and look at the needles.',
  'row-again':
    'Do the same row the same way again, and look at the same needles: what comes and goes shows so.',
  'row-fast': `Now that a slow pass has run freely, do the same row the same way again, fast: the whole bed in ${bedTime(speeds.fast)}, and no faster.`,
  'row-slow': `Do the same row the same way again, slowly: the whole bed in ${bedTime(speeds.slow)}. Stop if it does not run freely.`,
  'other-row': 'Turn the card on to another row and push the carriage across.',
  'holes-right': 'Put in a card of all holes and push the carriage across to the right.',
  'holes-left': 'Put in a card of all holes and push the carriage across to the left.',
  'blank-right':
    'Put in a blank card and push the carriage across to the right. No needle should come forward, but for end needles that a setting of your machine brings forward.',
  'blank-left':
    'Put in a blank card and push the carriage across to the left. No needle should come forward, but for end needles that a setting of your machine brings forward.',
  'no-card':
    'Take the card out, bring the needles to working position and push the carriage across to the right: every needle should be selected.',
  settings:
    'Look at the settings: the carriage set to pattern, the belt engaged, the card free to move on, and the lever that reads each row twice off.',
  card: 'Look at the card: torn or blocked holes, its face, whether it lies straight between its guides.',
  stepping: 'Take the carriage past the turn mark at both ends and watch the row numbers.',
  retainer:
    'Draw the retainer bar out at the end of the bed and look at its padding: it should be soft, even and thick. It faces the needles, so it can’t be felt from outside.',
  'broken-piece':
    'Stop, and leave the carriage where it is. Look along the butts with a lamp for a needle that has none, and for the broken piece. Lift it out with tweezers or a magnet before anything moves.',
  needle:
    'With the carriage well away, press the butt of the needle down with a fingertip and watch how it comes up.',
  'swap-needle':
    'Draw out the retainer bar, exchange the needle with its neighbour, put the bar back and try again: see whether the fault goes with the needle.',
  pins: 'Take the card out and compare the feeler pins with one another, from outside.',
  belt: 'Move the carriage to and fro a little, feel the play before the belt follows, and look at its mark.',
  strips: 'Press each strip along the bed at its end with a fingertip: it should go easily and spring back.',
  carriage: 'Take the carriage off, turn it over, and look at the presser and the first gate on both sides.',
  cover:
    'Take the cover off and watch strips, catches, sweep, belt and pawls. One person says go and moves the carriage slowly; the other only watches, hands away.',
  reader: 'Take the card reader off and look at pins, rockers and sweep. This comes last of all.',
}

/** Checks whose sentence says how fast already. */
const pacedChecks: ReadonlySet<CheckId> = new Set<CheckId>(['row-again', 'row-fast', 'row-slow'])

/** How fast a pass is to be made, where that is not the ordinary speed. */
const paceWords = ({ check, pass }: Pick<NextLook, 'check' | 'pass'>): string => {
  if (!pass || pacedChecks.has(check)) return ''
  if (pass.speed <= slowHand)
    return ` Slowly: the whole bed in ${bedTime(pass.speed)}. Stop if it does not run freely.`
  if (pass.speed > speeds.ordinary)
    return ` Fast, now that a slow pass has run freely: the whole bed in ${bedTime(pass.speed)}, and no faster.`
  return ''
}

/** The needle that a check is asked for first: that of the likeliest fault it may find. Empty where it may find none. */
const needleOf = (outcomes: NextLook['outcomes']): string => {
  const [found] = outcomes.flatMap((one) => (one.kind === 'part' ? (one.found ?? []) : []))
  const part = found ? parsePart(partOfFault(found)) : null
  return part?.kind === 'needle' || part?.kind === 'catch' ? needleName(part.needle) : ''
}

/** The sentence of a check of needles that names the one to begin with. */
const needleWords: Partial<Record<CheckId, (needle: string) => string>> = {
  needle: (needle) =>
    `With the carriage well away, press the butt of needle ${needle} down with a fingertip and watch how it comes up.`,
  'swap-needle': (needle) =>
    `Draw out the retainer bar, exchange needle ${needle} with its neighbour, put the bar back and try again: see whether the fault goes with the needle.`,
}

/** A check that is asked for next, in a sentence or two: with the row, the way and the speed of its pass. */
export const nextWords = (look: Pick<NextLook, 'check' | 'pass' | 'minutes' | 'outcomes'>): string => {
  const { check, pass, minutes, outcomes } = look
  const needle = needleOf(outcomes)
  // With the card in question out of the reader, its passes take longer.
  const isOut = pass?.card === 'same' && minutes > checkOf(check).minutes
  const base =
    check === 'other-row' && pass
      ? `Turn the card on to row ${pass.row}, and push the carriage across to the ${sideOfWay(pass.way)}.`
      : ((needle === '' ? undefined : needleWords[check]?.(needle)) ?? checkWords[check])
  return (isOut ? 'Put the first card back in. ' : '') + base + paceWords(look)
}

const openedWords: Readonly<Record<NextLook['opened'], string>> = {
  nothing: 'nothing is opened',
  'one-cover': 'pull the plug first and take one cover off',
  covers: 'it opens the machine, so leave it to the last',
  reader: 'it opens the machine, so leave it to the last',
}

/** How long a check takes and what it opens, in a phrase. */
export const effortWords = ({
  check,
  opened,
  minutes,
}: Pick<NextLook, 'check' | 'opened' | 'minutes'>): string =>
  `about ${minutesWords({ ...checkOf(check), minutes })}; ${openedWords[opened]}`
