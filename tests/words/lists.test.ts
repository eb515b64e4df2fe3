import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { indexKindsOf } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { faultPhrase, faultWords } from '@/words/faults.ts'
import { facts, inWords } from '@/words/facts.ts'
import { millimetres, needlesListed, sharedStep } from '@/words/lists.ts'

describe('lengths in sentences', () => {
  test('have one decimal where that is exact and two where it is not', () => {
    expect([3, 1.2, 0.45, 1.36, 0, -0.001].map(millimetres)).toEqual([
      '3.0\u00a0mm',
      '1.2\u00a0mm',
      '0.45\u00a0mm',
      '1.36\u00a0mm',
      '0.0\u00a0mm',
      '0.0\u00a0mm',
    ])
  })
})

describe('needles in sentences', () => {
  test('are all named when few, counted with their step when many', () => {
    expect(needlesListed([])).toBe('none')
    expect(needlesListed([102, 110])).toBe('R3 and R11')
    expect(needlesListed([6, 14, 22, 30, 38])).toBe('5 needles from L94 to L62, every eighth')
    expect(needlesListed([0, 1, 2, 3, 4])).toBe('5 needles from L100 to L96, one after the other')
    expect(needlesListed([0, 1, 5, 6, 9])).toBe('5 needles from L100 to L91')
  })
  test('share a step only where every neighbour keeps it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 3, max: 6 }), (step, count) => {
        const even = Array.from({ length: count }, (_, n) => n * step)
        expect(sharedStep(even)).toBe(step)
        expect(sharedStep([...even, (count - 1) * step + step + 1])).toBe(null)
      }),
    )
  })
})

describe('faults in words', () => {
  test('every kind has a phrase with its numbers in it', () => {
    for (const kind of Object.keys(faultKinds) as FaultKindName[]) {
      const { pattern, amount } = faultKinds[kind]
      const id = pattern
        .replace('NEEDLE', 'R7')
        .replace('ROW', '9')
        .replace('COL', '13')
        .replace('.C.', '.21.')
        .replace('.J.', '.6.')
        .replace(/\.P$/, '.17')
      const fault = faultOf(amount && !amount.optional ? `${id}=${amount.usual}` : id)
      const phrase = faultPhrase(fault)
      const expected = indexKindsOf(kind).map(
        (place) =>
          ({
            row: '9',
            column: /C$|COL/.test(pattern) || pattern.includes('COL') ? '13' : '21',
            strip: '6',
            pass: '17',
            needle: 'R7',
          })[place],
      )
      for (const text of expected) expect(phrase).toContain(text)
      const amountRead = amount?.unit === 'share' ? 100 * amount.usual : amount?.usual
      if (amount) expect(phrase).toContain(String(amountRead))
      expect(faultWords[kind].shows.length).toBeGreaterThan(10)
    }
  })
})

describe('numbers in words', () => {
  test('are spelled as British English spells them', () => {
    expect([0, 8, 13, 24, 60, 100, 200, 215].map(inWords)).toEqual([
      'nought',
      'eight',
      'thirteen',
      'twenty-four',
      'sixty',
      'one hundred',
      'two hundred',
      'two hundred and fifteen',
    ])
  })
  test('no fact is not a number', () => {
    for (const text of Object.values(facts)) expect(text).toMatch(/^\d+(\.\d+)?( \S+)?/)
  })
})
