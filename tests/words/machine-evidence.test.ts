import { expect, test } from 'vitest'
import { machineEvidence } from '@/words/machine-evidence.ts'

const fit = { looked: 200, departures: 0, explained: 0, byChance: 0, contrary: 0 }

test.each([
  [{ looked: 0 }, 1, 'No needle was looked at.'],
  [{}, 1, 'All of the 200 needles looked at came out as asked.'],
  [{ looked: 1600 }, 8, 'All of the 1600 needles looked at came out as asked, counted once in each pass.'],
  [{ departures: 3 }, 1, 'Then 3 of the 200 needles looked at would have been noted wrongly.'],
  [
    { departures: 3 },
    2,
    'Then 3 of the 200 needles looked at would have been noted wrongly, counted once in each pass.',
  ],
])('of a sound machine it is said how the needles came out: %j', (more, passes, words) => {
  expect(machineEvidence({ isSound: true, ...fit, ...more }, passes)).toBe(words)
})

test.each([
  [
    { departures: 25, explained: 25 },
    1,
    'It explains all of the 25 needles that came out wrong, and nothing else.',
  ],
  [{ departures: 1, explained: 1 }, 1, 'It explains the needle that came out wrong, and nothing else.'],
  [{ departures: 1 }, 3, 'It does not explain the needle that came out wrong.'],
  [{ departures: 8 }, 1, 'It does not explain the 8 needles that came out wrong.'],
  [
    { departures: 9, explained: 7, byChance: 2 },
    2,
    'It explains 7 of the 9 needles that came out wrong, counted once in each pass, some by chance, and leaves 2 unexplained.',
  ],
  [
    { departures: 9, explained: 8, contrary: 1 },
    1,
    'It explains 8 of the 9 needles that came out wrong, and leaves one unexplained; 1 needle that came out as asked should not have.',
  ],
  [
    { departures: 9, explained: 9, contrary: 3 },
    1,
    'It explains all of the 9 needles that came out wrong; 3 needles that came out as asked should not have.',
  ],
  [{}, 1, 'No needle came out wrong.'],
  [{ contrary: 2 }, 1, 'No needle came out wrong; 2 needles that came out as asked should not have.'],
])('of a machine with faults it is said what they explain: %j', (more, passes, words) => {
  expect(machineEvidence({ isSound: false, ...fit, ...more }, passes)).toBe(words)
})

test('of all others nothing is said but that', () => {
  expect(machineEvidence(null, 1)).toBe('All machines that are not listed, together.')
})
