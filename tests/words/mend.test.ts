import { expect, test } from 'vitest'
import { frameAt } from '@/mechanism/frame.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { mendedAfter } from '@/mechanism/mended.ts'
import { describeMend, fabricSentence, mendedSentence, trailSentence } from '@/words/figures/mend.ts'
import { machine } from '../mechanism/make.ts'

const card = [0xffffff]
const broken = machine(card, ['strip.3.seized'])
const mended = mendedAfter(broken, machine(card, []), 30)
const r11 = toNeedle(110)

test('the line is followed from the needle to its own strip', () => {
  expect(trailSentence(broken, r11)).toContain('needle R11 was missed')
  expect(trailSentence(broken, r11)).toContain('strip 3 was seized')
  expect(trailSentence(broken, toNeedle(111))).toContain('strip 4')
  expect(mendedSentence(mended, r11)).toMatch(/^Strip 3 .* R11 /)
})

test('what the fabric shows is counted over the whole bed', () => {
  expect(fabricSentence(broken, 30, 18)).toBe(
    'In the last 18 rows 450 stitches are wrong, at 25 needles from L94 to R99, every eighth.',
  )
  expect(fabricSentence(mended, 42, 18)).toBe(
    'The last 11 rows came whole; in the 7 rows below them the line stays.',
  )
  expect(fabricSentence(mended, 60, 18)).toBe('The last 18 rows came as the card asks.')
})

test('the picture in words says what is broken, what is missed and what the fabric shows', () => {
  const words = describeMend(broken, frameAt(broken, 30, -12), 18)
  expect(words).toContain('Broken: Strip 3 seized.')
  expect(words).toContain('Asked for and missed: 25 needles from L94 to R99, every eighth.')
  expect(words).toContain('450 stitches')
  expect(describeMend(mended, frameAt(mended, 42, -12), 18)).toContain('Nothing is broken.')
})
