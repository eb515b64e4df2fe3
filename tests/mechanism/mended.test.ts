import { expect, test } from 'vitest'
import { knittedRow, askedRow } from '@/mechanism/fabric.ts'
import { mendedAfter } from '@/mechanism/mended.ts'
import { machine } from './make.ts'

const card = [0xa53c96, 0x1f07e8, 0xffffff, 0x5b6d13]
const broken = machine(card, ['strip.3.seized'])
const mended = mendedAfter(broken, machine(card, []), 7)

test('passes up to the last are the broken machine’s, those after it come out as asked', () => {
  for (const pass of [1, 6, 7]) {
    expect(mended.passOf(pass)).toBe(broken.passOf(pass))
    expect(mended.passOf(pass).departures.length).toBeGreaterThan(0)
  }
  for (const pass of [8, 9, 30]) {
    expect(mended.passOf(pass).came).toEqual(mended.passOf(pass).asked)
    expect(mended.passOf(pass).row).toBe(broken.passOf(pass).row)
  }
})

test('the row after the last broken pass still knits what that pass set out, the next one is whole', () => {
  expect(knittedRow(mended, 8)).toEqual(knittedRow(broken, 8))
  expect(knittedRow(mended, 8)).not.toEqual(askedRow(mended, 8))
  expect(knittedRow(mended, 9)).toEqual(askedRow(mended, 9))
})
