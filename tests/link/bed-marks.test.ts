import { describe, expect, test } from 'vitest'
import { allRight, markAs, marks, notedAs, readMarks, type NeedleMark, writeMarks } from '@/link/bed-marks.ts'
import { needleIndex } from '@/mechanism/bed.ts'

/** A bed with these marks, each given as its letter and names of needles. */
const bedWith = (...words: readonly string[]): NeedleMark[] => {
  const bed = [...allRight]
  for (const word of words)
    for (const name of word.slice(2).split(' ')) bed[needleIndex(name)!] = word[0] as NeedleMark
  return bed
}

/** Two-digit needles of which no three are a run: with a letter before them they take 68 characters. */
const apart = 'R10 R13 R16 R19 R22 R25 R28 R31 R34 R37 R40 R43 R46 R49 R52 R55 R82'

describe('a marked bed', () => {
  test.each<[string, NeedleMark[]]>([
    ['', [...allRight]],
    ['wR3', bedWith('w R3')],
    ['uL100', bedWith('u L100')],
    ['wR3.uR4.nR5', bedWith('n R5', 'u R4', 'w R3')],
    ['wR3_R5.nL24-L22', bedWith('w R3 R5', 'n L24 L23 L22')],
    ['nL100-R100', allRight.map(() => 'n')],
  ])('is written “%s” and read back', (text, bed) => {
    expect(writeMarks(bed)).toBe(text)
    expect(readMarks(text)).toEqual({ marks: bed, leftOut: [] })
  })

  test('is packed where needle by needle it would take more than 68 characters', () => {
    const names = writeMarks(bedWith(`w ${apart}`))
    expect(names).toBe(`w${apart.replaceAll(' ', '_')}`)
    expect(names).toHaveLength(68)
    const packed = writeMarks(bedWith(`w ${apart.replace('R82', 'R100')}`))
    expect(packed).toMatch(/^x[\w-]{67}$/)
    expect(readMarks(packed).marks).toEqual(bedWith(`w ${apart.replace('R82', 'R100')}`))
  })

  test('packed holds three needles a character, two bits each, the first highest', () => {
    const cycle = Array.from({ length: 200 }, (_, n): NeedleMark => marks[n % 4]!)
    expect(readMarks(`x${'Gxsb'.repeat(17).slice(0, 67)}`)).toEqual({ marks: cycle, leftOut: [] })
    expect(readMarks(`x${'A'.repeat(67)}`).marks).toEqual(allRight)
    expect(readMarks(`x_${'A'.repeat(66)}`).marks).toEqual(bedWith('n L100 L99 L98'))
    expect(readMarks(`x${'A'.repeat(65)}-A`).marks).toEqual(bedWith('n R96 R97', 'u R98'))
  })

  test('keeps the later mark of a needle that is marked twice', () => {
    expect(readMarks('wR3-R5.uR4').marks).toEqual(bedWith('w R3 R5', 'u R4'))
    expect(readMarks('uR4.wR3-R5').marks).toEqual(bedWith('w R3 R4 R5'))
  })
})

describe('a part that can’t be read', () => {
  test.each([
    ['wR300_R3', '“R300”'],
    ['wR3_', '“wR3_”'],
    ['wR3.', '“”'],
    ['wR3.rR4', '“rR4”'],
    ['wR3.qR4', '“qR4”'],
    ['zL1.wR3', '“zL1”'],
    ['wR3.uL1-', '“L1-”'],
  ])('of %s is named, and the rest is kept', (text, said) => {
    expect(readMarks(text)).toEqual({ marks: bedWith('w R3'), leftOut: [said] })
  })

  test.each(['x', `x${'A'.repeat(66)}`, `x${'A'.repeat(68)}`, `x${'A'.repeat(66)}*`])(
    'is the whole of a packed bed that is not complete: %s',
    (text) => {
      const { marks: bed, leftOut } = readMarks(text)
      expect(bed).toEqual(allRight)
      expect(leftOut).toHaveLength(1)
      expect(leftOut[0]).toMatch(/^“x/)
    },
  )
})

describe('a mark beside what was expected', () => {
  test.each([
    ['r', 'selected', 'selected'],
    ['r', 'plain', 'plain'],
    ['w', 'selected', 'plain'],
    ['w', 'plain', 'selected'],
    ['u', 'selected', 'unmoved'],
    ['u', 'plain', 'unmoved'],
    ['n', 'selected', 'unseen'],
    ['n', 'plain', 'unseen'],
  ] as const)(
    '%s where it was expected %s is a needle %s, and the other way round',
    (mark, expected, noted) => {
      expect(notedAs(mark, expected)).toBe(noted)
      expect(markAs(noted, expected)).toBe(mark)
    },
  )
})
