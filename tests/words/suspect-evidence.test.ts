import { describe, expect, test } from 'vitest'
import { evidenceWords } from '@/words/suspect-evidence.ts'

/** What an answer explains: one needle that came out wrong in each of so many passes. */
const ofPasses = (count: number) => ({
  kind: 'faults' as const,
  fit: { departures: count, explained: count, against: 0, looked: 200 * count },
  shown: Array.from({ length: count }, () => ({ changed: [205], chance: 0 })),
})

describe('why an answer has its place', () => {
  test('is told of a pass in needles', () => {
    expect(evidenceWords(ofPasses(1))).toBe('It explains the needle that came out wrong, and nothing else.')
  })

  test('is told of several passes with the way in which needles are counted', () => {
    expect(evidenceWords(ofPasses(3))).toBe(
      'It explains all of the 3 needles that came out wrong, counted once in each pass, and nothing else.',
    )
    expect(
      evidenceWords({
        ...ofPasses(2),
        kind: 'sound',
        fit: { departures: 0, explained: 0, against: 0, looked: 400 },
      }),
    ).toBe('All of the 400 needles looked at came out as asked, counted once in each pass.')
  })

  const ofOne = (departures: number, explained: number, isShown = true) => ({
    kind: 'faults' as const,
    fit: { departures, explained, against: departures - explained, looked: 200 },
    shown: [{ changed: isShown ? [1] : [], chance: 0 }],
  })

  test.each([
    [ofOne(25, 25), 'It explains all of the 25 needles that came out wrong, and nothing else.'],
    [ofOne(1, 0, false), 'It does not explain the needle that came out wrong.'],
    [ofOne(1, 0), 'It does not explain the needle that came out wrong.'],
    [ofOne(8, 0, false), 'It explains none of the 8 needles that came out wrong.'],
    [
      ofOne(237, 180),
      'It explains 180 of the 237 needles that came out wrong, and leaves the other 57 unexplained.',
    ],
    [
      ofOne(3, 2),
      'It explains 2 of the 3 needles that came out wrong, and leaves the other one unexplained.',
    ],
  ])('says what it leaves unexplained, and counts as people count', (answer, words) => {
    expect(evidenceWords(answer)).toBe(words)
  })
})
