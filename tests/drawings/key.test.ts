import { describe, expect, test } from 'vitest'
import { drawKey, type KeyStage } from '@/drawings/key/key.ts'
import { size } from '@/drawings/key/shape.ts'
import { emptySheet } from './redraw.ts'

const stages: readonly (KeyStage | null)[] = [
  null,
  'card',
  'pin',
  'sweep',
  'rocker',
  'strip',
  'hold',
  'gate',
  'needle',
]

const keyOf = (stage: KeyStage | null): SVGSVGElement => {
  const sheet = emptySheet()
  drawKey(sheet, stage)
  return sheet
}

describe('the key', () => {
  test('is the same however it came to its stage', () => {
    for (const first of stages)
      for (const next of stages) {
        const sheet = keyOf(first)
        drawKey(sheet, next)
        drawKey(sheet, next)
        expect(sheet.outerHTML).toBe(keyOf(next).outerHTML)
      }
  })

  test.each(stages.filter((stage) => stage !== null))('fills the place of the %s and rings it', (stage) => {
    const sheet = keyOf(stage)
    expect(sheet.outerHTML).not.toMatch(/NaN|undefined/)
    expect(sheet.querySelector('.key-place')?.getAttribute('d')).not.toBe('')
    const ring = sheet.querySelector('.key-ring')
    expect(ring?.getAttribute('display')).toBe('inline')
    const [x, y, r] = ['cx', 'cy', 'r'].map((name) => Number(ring?.getAttribute(name)))
    expect(x! - r!).toBeGreaterThan(0)
    expect(x! + r!).toBeLessThan(size.width)
    expect(y! - r!).toBeGreaterThan(0)
    expect(y! + r!).toBeLessThan(size.height)
  })

  test('gives every stage a place of its own', () => {
    const places = stages.map((stage) => keyOf(stage).querySelector('.key-place')?.getAttribute('d'))
    expect(new Set(places).size).toBe(stages.length)
  })

  test('marks nothing where no stage is meant', () => {
    const sheet = keyOf(null)
    expect(sheet.querySelector('.key-place')?.getAttribute('d')).toBe('')
    expect(sheet.querySelector('.key-ring')?.getAttribute('display')).toBe('none')
  })

  test('stays within its picture', () => {
    const numbers = [...keyOf('strip').outerHTML.matchAll(/[ML]([-\d.]+),([-\d.]+)/g)]
    for (const [, x, y] of numbers) {
      expect(Number(x)).toBeGreaterThanOrEqual(0)
      expect(Number(x)).toBeLessThanOrEqual(size.width)
      expect(Number(y)).toBeGreaterThanOrEqual(0)
      expect(Number(y)).toBeLessThanOrEqual(size.height)
    }
  })
})
