import { describe, expect, test } from 'vitest'
import { codes, packChange } from '@/find/packed-change.ts'
import { needleIndex } from '@/mechanism/bed.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import {
  answerTitle,
  changedWords,
  confidence,
  distinctWays,
  markedWords,
  passPhrase,
  percent,
  showsWords,
  speakingInPass,
} from '@/words/finding.ts'

const fault = (id: string) => faultOf(id)
const needles = (...names: string[]): number[] => names.map((name) => needleIndex(name)!)
const answer = (...ways: string[]) => ({
  kind: 'faults' as const,
  ways: ways.map((way) => way.split(' + ').map(fault)),
})

describe('an answer in words', () => {
  test('never claims to be certain', () => {
    expect([0.999, 0.62, 0.004, 0.99].map(percent)).toEqual([
      'over 99\u00a0%',
      '62\u00a0%',
      'under 1\u00a0%',
      '99\u00a0%',
    ])
    expect([1, 0.8, 0.5, 0.3, 0.1, 0.01].map(confidence)).toEqual([
      'almost certain',
      'very likely',
      'likely',
      'possible',
      'less likely',
      'unlikely',
    ])
  })

  test('names the part, both of two parts, and how many others look the same', () => {
    expect(answerTitle(answer('strip.3.seized'))).toBe('Strip 3 seized')
    expect(answerTitle(answer('strip.3.seized + pin.5.low'))).toBe(
      'Strip 3 seized, and with it pin 5 stuck down',
    )
    expect(answerTitle(answer('needle.R3.bent + catch.L2.broken'))).toBe(
      'Needle R3 bent, and with it catch of L2 broken',
    )
    expect(answerTitle(answer('pin.3.low', 'rocker.3.dead'))).toBe(
      'Pin 3 stuck down, or 1 other that looks the same',
    )
    expect(answerTitle(answer('pin.3.low', 'rocker.3.dead', 'rocker.3.worn=0.8'))).toBe(
      'Pin 3 stuck down, or 2 others that look the same',
    )
  })

  test('takes ways that differ only in how much as one', () => {
    const { ways } = answer('strip.3.slow=100', 'strip.3.slow=300', 'strip.3.seized')
    expect(distinctWays(ways)).toHaveLength(2)
  })

  test('says plainly when nothing is wrong, there is no card, or no word for it', () => {
    const none = { ways: [] }
    expect(answerTitle({ ...none, kind: 'sound' })).toBe('Nothing is wrong, as far as this shows')
    expect(answerTitle({ ...none, kind: 'unknown' })).toBe('Something that this page has no word for')
    expect(answerTitle({ ...none, kind: 'noCard' })).toBe('No card in the reader')
    expect(showsWords({ ...none, kind: 'sound' })).toBe('')
    expect(showsWords(answer('strip.3.seized'))).toBe('It shows as every eighth needle never selected.')
  })
})

describe('passes and beds in words', () => {
  test('tell the row, the way, and the speed where it is not the ordinary one', () => {
    expect(passPhrase(1, 1, 500)).toBe('Row 1 to the right')
    expect(passPhrase(2, -1, 900)).toBe('Row 2 to the left, fast')
    expect(passPhrase(null, 1, 100)).toBe('No card, to the right, slowly')
    expect(passPhrase(3, 1, 700)).toBe('Row 3 to the right, at 700\u00a0mm/s')
  })

  test('tell what came out otherwise, and what does not fit', () => {
    const [l1 = 0, r3 = 0] = needles('L1', 'R3')
    expect(changedWords([])).toBe('Every needle as the card asks')
    expect(changedWords([packChange(l1, codes.unmoved), packChange(r3, codes.plain)])).toBe(
      'R3 missed; L1 not moved',
    )
    expect(speakingInPass([], [])).toBe('')
    expect(speakingInPass([r3], [])).toBe('For it in this pass: R3.')
    expect(speakingInPass([l1, r3], [r3])).toBe(
      'For it in this pass: L1 and R3. Against it in this pass: R3.',
    )
    expect(markedWords([], [], 0)).toBe('every needle right')
    expect(markedWords(needles('R3', 'R4'), [l1], 2)).toBe(
      'R3 and R4 wrong; L1 not moved; 2 needles not looked at',
    )
  })
})
