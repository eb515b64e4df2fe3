import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import type { Figure, Shape } from '@/drawings/shared/figure-contract.ts'
import { drawMarkedMachine } from '@/drawings/marked-machine/marked-machine.ts'
import { figure as place } from '@/drawings/place/figure.ts'
import { exampleOf } from '@/find/battery.ts'
import { faultId } from '@/mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { drawn, expectSameOverAll, expectSound, type State, stateOf, textsOf } from './redraw.ts'

const marked: Figure = { ...place, draw: drawMarkedMachine }
const kinds = Object.keys(faultKinds) as FaultKindName[]

interface Box {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const boxOf = (sheet: SVGSVGElement): Box => {
  const [left = 0, top = 0, width = 0, height = 0] = (sheet.getAttribute('viewBox') ?? '')
    .split(' ')
    .map(Number)
  return { left, top, width, height }
}

const headsOf = (state: State, shape: Shape): { x: number; y: number; box: Box }[] => {
  const sheet = drawn(marked, state, shape)
  return [...sheet.querySelectorAll('.mark-head')].map((head) => ({
    x: Number(head.getAttribute('cx')),
    y: Number(head.getAttribute('cy')),
    box: boxOf(sheet),
  }))
}

describe.each(shapes)('the %s machine with its faults marked', (shape) => {
  test('is the same however it came to its state', { timeout: 60000 }, () => expectSameOverAll(marked, shape))
  test('has a number wherever one is due', () => expectSound(marked, shape))

  test.each(kinds)('marks %s within the picture, by its name', (kind) => {
    const state = stateOf([faultId(exampleOf(kind))], 2, 120)
    const sheet = drawn(marked, state, shape)
    expect(textsOf(sheet, '.mark-number')).toEqual(['1'])
    expect(textsOf(sheet, '.mark-name')).toHaveLength(1)
    const rings = /^M([\d.-]+),([\d.-]+)L([\d.-]+),([\d.-]+)M/.exec(
      sheet.querySelector('.mark-line')?.getAttribute('d') ?? '',
    )
    const { top, width, height } = boxOf(sheet)
    const [x, y] = [Number(rings?.[3]), Number(rings?.[4])]
    expect(x).toBeGreaterThan(0)
    expect(x).toBeLessThan(width)
    expect(y).toBeGreaterThan(top)
    expect(y).toBeLessThan(top + height)
  })

  test('keeps balloons apart and in the picture, however many there are', () => {
    const ids = [3, 4, 5, 6].flatMap((n) => [`pin.${n}.low`, `strip.${n}.seized`, `needle.R${n}.gone`])
    for (const count of [1, 2, 5, 12]) {
      const heads = headsOf(stateOf(ids.slice(0, count), 2, 120), shape)
      expect(heads).toHaveLength(count)
      for (const [n, { x, y, box }] of heads.entries()) {
        expect(x).toBeGreaterThanOrEqual(13)
        expect(x).toBeLessThanOrEqual(box.width - 13)
        for (const other of heads.slice(n + 1))
          expect(Math.hypot(other.x - x, other.y - y)).toBeGreaterThanOrEqual(26)
      }
    }
  })

  test('rings every fault and numbers as many as there is room for', () => {
    const ids = Array.from({ length: 24 }, (_, n) => [`pin.${n + 1}.low`, `rocker.${n + 1}.dead`]).flat()
    const sheet = drawn(marked, stateOf(ids, 2, 120), shape)
    const heads = sheet.querySelectorAll('.mark-head').length
    expect(heads).toBeGreaterThan(5)
    expect(textsOf(sheet, '.mark-name')).toEqual([])
  })
})

test('a sound machine has no marks', () => {
  expect(headsOf(stateOf([], 2, 120), 'wide')).toEqual([])
})
