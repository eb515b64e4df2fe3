import { describe, expect, test } from 'vitest'
import type { Finding, PlaceFinding } from '@/find/finding.ts'
import type { Cause, Place } from '@/find/place.ts'
import { findingRemarks, notLookedAtWords, unweighedWords, wholeWords } from '@/words/whole-finding.ts'

const place = (name: Place, wrong: number, ...causes: readonly Cause[]): PlaceFinding => ({
  place: name,
  wrong,
  before: null,
  ways: [{ causes, probability: wrong }],
})
const findingOf = (places: readonly PlaceFinding[], more: Partial<Finding> = {}): Finding => ({
  places,
  oil: { fresh: 0.1, old: 0.2, set: 0.7 },
  wear: { mean: 0.2, low: 0, high: 0.5 },
  together: [],
  unexplained: [],
  ranked: [],
  isExact: true,
  ...more,
})

describe('the whole of a finding', () => {
  test('is one sentence for the strips, by what they do and in order, with the oil where it has set', () => {
    const strips = [
      place('strip.4', 0.99, 'strip.4.seized'),
      place('strip.1', 0.9, 'strip.1.seized'),
      place('strip.6', 0.8, 'strip.6.slow=300'),
      place('strip.7', 0.6, 'strip.7.over'),
      place('strip.8', 0.4, 'strip.8.seized'),
    ]
    const words = 'strips 1 and 4 no longer move, strip 6 is slow and strip 7 is stuck shifted.'
    expect(wholeWords(findingOf(strips))).toBe(`The oil has set: ${words}`)
    const fresh = { fresh: 0.8, old: 0.1, set: 0.1 }
    expect(wholeWords(findingOf(strips, { oil: fresh }))).toBe(`S${words.slice(1)}`)
  })

  test('names each other place, with all that no look parts there', () => {
    const places = [
      place('needle.R40', 0.99, 'catch.R40.broken', 'needle.R40.bent'),
      place('column.3', 0.7, 'pin.3.low', 'rocker.3.dead'),
      place('card', 0.6, 'card.out'),
      place('column.9', 0.55, 'other'),
    ]
    expect(wholeWords(findingOf(places))).toBe(
      'There is no card in the reader. Catch of R40 broken, or needle R40 bent. Pin 3 stuck down, or rocker 3 broken. Something else is wrong at 1 place.',
    )
  })

  test('says where nothing is wrong, and where the machine is worn out', () => {
    expect(wholeWords(findingOf([]))).toBe('Nothing is wrong, as far as this shows.')
    expect(wholeWords(findingOf([], { wear: { mean: 0.9, low: 0.8, high: 1 } }))).toBe(
      'The machine is worn out.',
    )
  })

  test('has remarks on the oil, on wear, and on places of which one is wrong', () => {
    const together = [{ places: ['presser', 'gate', 'column.2'] as const, wrong: 0.97 }]
    expect(findingRemarks(findingOf([], { together }))).toEqual([
      'The oil seems set: 70\u00a0%.',
      'Wear, from 0 as new to 1 worn out: about 0.2, most likely 0.0 to 0.5.',
      'One of these is wrong, and nothing says which: the presser, the first gate and column 2 (97\u00a0%).',
    ])
  })

  test('says of all strips that they may be it at once, and a set within another only there', () => {
    const strips = [1, 2, 3, 4, 5, 6, 7, 8].map((strip) => `strip.${strip}` as const)
    const together = [
      { places: ['carriage', 'belt'] as const, wrong: 0.9 },
      { places: ['carriage', ...strips, 'belt'] as const, wrong: 0.99 },
    ]
    expect(findingRemarks(findingOf([], { together })).slice(2)).toEqual([
      'One of these is wrong, and nothing says which: the carriage, the belt and all eight strips at once (99\u00a0%).',
    ])
  })

  test('says what was not looked at: needles, passes one way, and a fast pass', () => {
    const pass = (way: 1 | -1, speed: number, needles: string) => ({ way, speed, needles })
    const half = 's'.repeat(100) + '?'.repeat(100)
    expect(notLookedAtWords([pass(1, 500, half)])).toEqual([
      'Not looked at yet: a pass to the left; a fast pass, which alone shows some slow strips; 100 needles from R1 to R100, one after the other.',
    ])
    expect(notLookedAtWords([pass(1, 500, half), pass(-1, 900, 'p'.repeat(200))])).toEqual([])
    expect(notLookedAtWords([pass(-1, 900, '?'.repeat(200))])).toEqual([
      'Not looked at yet: a pass to the right; any needle.',
    ])
  })

  test('says which passes are not weighed', () => {
    expect(unweighedWords(0, 31)).toEqual([])
    expect(unweighedWords(1, 31)).toEqual([
      'Only the first 31 passes are weighed together; the last one is kept, but not weighed.',
    ])
    expect(unweighedWords(2, 31)[0]).toContain('the last 2 are kept')
  })
})
