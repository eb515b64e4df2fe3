import { listed } from './lists.ts'

/** A part's name as the trade says it: `strip.3` is strip 3, `presser.right` the presser. */
export const partName = (part: string): string => {
  const [kind = '', which = ''] = part.split('.')
  const named: Readonly<Record<string, string>> = {
    card: 'the card',
    pawl: which === '' ? 'the pawls' : `the ${which} pawl`,
    turn: 'the turn',
    pin: `pin ${which}`,
    sweep: 'the sweep',
    belt: 'the belt',
    rocker: `rocker ${which}`,
    strip: `strip ${which}`,
    catch: `the catch of ${which}`,
    needle: `needle ${which}`,
    presser: 'the presser',
    retainer: 'the retainer bar',
    gate: which === '1' ? 'the first gate' : 'the second gate',
    carriage: 'the carriage',
  }
  return named[kind] ?? part
}

/** Several parts' names in one phrase. */
export const partNames = (parts: Iterable<string>): string => listed([...new Set(parts)].map(partName))

/** A phrase with its first letter raised. */
export const capital = (phrase: string): string => phrase.charAt(0).toUpperCase() + phrase.slice(1)
