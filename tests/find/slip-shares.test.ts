import { describe, test } from 'vitest'
import { possibleSlot } from '@/find/bed-needles.ts'
import { needleChances, otherNeedle, wrongNotes } from '@/find/chances.ts'
import { needleName } from '@/mechanism/bed.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { expectNear, moving, needles, slip, summed, told, wears } from './one-strip.ts'

/** Solves equations by elimination; each row has its right side last. */
const solved = (rows: readonly (readonly number[])[]): number[] => {
  const own = rows.map((row) => [...row])
  for (let n = 0; n < own.length; n++) {
    const pivot = own.reduce(
      (best, row, m) => (m >= n && Math.abs(row[n]!) > Math.abs(own[best]![n]!) ? m : best),
      n,
    )
    ;[own[n], own[pivot]] = [own[pivot]!, own[n]!]
    for (const [m, row] of own.entries()) {
      if (m === n) continue
      const share = row[n]! / own[n]![n]!
      for (let k = n; k < row.length; k++) row[k]! -= share * own[n]![k]!
    }
  }
  return own.map((row, n) => row.at(-1)! / row[n]!)
}

const letters = ['s', 'p', 'u'] as const
type Letter = (typeof letters)[number]
/** How likely each letter is of a needle that did each, and of something else. */
const noteOf: Readonly<Record<Letter, readonly number[]>> = {
  s: [1 - slip, slip * wrongNotes.other, slip * wrongNotes.goneSelected, otherNeedle.selected],
  p: [slip * wrongNotes.other, 1 - slip, slip * wrongNotes.gonePlain, otherNeedle.plain],
  u: [slip * wrongNotes.unmoved, slip * wrongNotes.unmoved, 1 - slip, otherNeedle.unmoved],
}

// How likely a needle did each is found from how likely the notes are with each letter there, and with none.
describe('the chance that a note is a slip', () => {
  test.each(moving)('follows from how likely other notes were: %s', (_, looks) => {
    const { bed } = told(summed(looks, 'whole', wears.as))
    for (const nth of [0, 4])
      for (const [n, [, , noted]] of looks.entries()) {
        const likelyWith = (letter: string): number =>
          Math.exp(
            summed(
              looks.map(([pass, speed, own], m) => [
                pass,
                speed,
                m === n ? own.slice(0, nth) + letter + own.slice(nth + 1) : own,
              ]),
              'whole',
              wears.as,
            ).log,
          )
        const seen = looks.map(([, , own]) => letters.indexOf(own.charAt(nth) as Letter))
        // What is something else shows each letter with a chance of its own, whatever its strip does.
        const other = seen.reduce(
          (product, letter, m) => (m === n ? product : product * noteOf[letters[letter]!][3]!),
          needleChances.other *
            Math.exp(
              summed(
                looks.map(([pass, speed, own]) => [
                  pass,
                  speed,
                  own.slice(0, nth) + '?' + own.slice(nth + 1),
                ]),
                'whole',
                wears.as,
              ).log,
            ),
        )
        const did = solved(
          letters.map((letter) => [
            ...noteOf[letter].slice(0, 3),
            likelyWith(letter) - other * noteOf[letter][3]!,
          ]),
        )
        const is = seen[n]!
        const right = (did[is]! * (1 - slip)) / likelyWith(noted.charAt(nth))
        expectNear(`${nth} ${n}`, bed.slips[possibleSlot(needles[nth]!) * looks.length + n]!, 1 - right)
      }
  })

  test.each(moving)(
    'and of what is something else, from how likely that is of any needle: %s',
    (_, looks) => {
      const base = summed(looks, 'whole', wears.as)
      const { tally } = told(base)
      for (const [nth, needle] of needles.entries()) {
        const without = summed(
          looks.map(([pass, speed, own]) => [pass, speed, own.slice(0, nth) + '?' + own.slice(nth + 1)]),
          'whole',
          wears.as,
        )
        const shown = looks.reduce((product, [, , own]) => product * noteOf[own.charAt(nth) as Letter][3]!, 1)
        const chance = needleChances.other * shown * Math.exp(without.log - base.log)
        const name = `needle.${needleName(at(allNeedles, needle))} other`
        expectNear(name, tally.get(name) ?? 0, chance)
      }
    },
  )
})
