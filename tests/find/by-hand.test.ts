import { describe, expect, test } from 'vitest'
import { byHandOf, errorOf } from '@/find/by-hand.ts'
import { possibleSlot } from '@/find/bed-needles.ts'
import { checkErrors } from '@/find/chances.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { needleIndex } from '@/mechanism/bed.ts'

const { seen, touched } = checkErrors
const nothing = { right: 1, slow: 1, seized: 1, over: 1 }

describe('what was found by hand', () => {
  test('changes nothing where nothing was looked at, or a pass was made', () => {
    for (const hand of [byHandOf([]), byHandOf([{ check: 'next-row', found: null }])]) {
      expect(hand.strips).toEqual(Array.from({ length: 8 }, () => nothing))
      expect(hand.columns).toHaveLength(24)
      expect(hand.columns[23]).toEqual({ right: 1, dead: 1, high: 1, over: 1, sticky: 1 })
      expect(hand.needles).toHaveLength(250)
      expect(hand.needles[249]).toEqual({ right: 1, noHold: 1, stiff: 1, gone: 1 })
      expect(hand.causes(['belt.off'], ['belt.off', 'carriage.plain'])).toBe(1)
      expect(hand.right(['belt.off'])).toBe(1)
    }
  })

  test('is wrong more often where a hand feels than where an eye sees', () => {
    expect((['strips', 'pins', 'needle', 'settings', 'reader'] as const).map(errorOf)).toEqual([
      touched,
      touched,
      touched,
      seen,
      seen,
    ])
  })

  test('where all was right makes each thing that shows there as unlikely as a hand errs', () => {
    const { strips, columns, needles } = byHandOf([{ check: 'strips', found: null }])
    expect(strips).toEqual(
      Array.from({ length: 8 }, () => ({
        right: 1 - touched,
        slow: touched,
        seized: touched,
        over: touched,
      })),
    )
    // What it does not show is as before, beside what is right there.
    expect(columns[0]!.dead / columns[0]!.high).toBe(1)
    expect(needles[0]!.gone / needles[0]!.stiff).toBe(1)
  })

  test('where one thing was found makes it as likely as it was, and all else there unlikely', () => {
    const { strips } = byHandOf([{ check: 'strips', found: faultOf('strip.7.seized') }])
    expect(strips[6]!.seized).toBeCloseTo(1 - touched, 12)
    expect(strips[6]!.right).toBeCloseTo(touched, 12)
    expect(strips[6]!.slow).toBeCloseTo(touched, 12)
    expect(strips[5]).toEqual(nothing)
  })

  test('says nothing of amounts, and of two causes that look alike means one', () => {
    const slow = byHandOf([{ check: 'strips', found: faultOf('strip.2.slow=120') }]).strips[1]!
    expect(slow).toEqual(byHandOf([{ check: 'strips', found: faultOf('strip.2.slow=1000') }]).strips[1])
    expect(slow.slow).toBeGreaterThan(slow.seized)
    const low = byHandOf([{ check: 'pins', found: faultOf('pin.5.low') }])
    const all = ['pin.5.low', 'rocker.5.dead'] as const
    expect(low.causes(['pin.5.low'], all)).toBeCloseTo(1 - touched, 12)
    expect(low.causes(['rocker.5.dead'], all)).toBeCloseTo(touched, 12)
    expect(low.columns[4]!.dead).toBeCloseTo((1 - touched + 1) / 2, 12)
    expect(low.columns[4]!.right).toBeCloseTo(touched, 12)
  })

  test('is a product over checks, over answers and over what was seen before', () => {
    const twice = byHandOf([
      { check: 'strips', found: null },
      { check: 'strips', found: null },
    ])
    expect(twice.strips[0]!.seized).toBeCloseTo(touched ** 2, 12)
    expect(twice.strips[0]!.right).toBeCloseTo((1 - touched) ** 2, 12)
    const asked = byHandOf([], ['opened.yes'])
    expect(asked.causes(['belt.off'], ['belt.off'])).toBe(5)
    expect(asked.causes(['carriage.plain'], ['carriage.plain'])).toBe(1)
    const known = byHandOf([], [], { 'needle.gone': 40 })
    const gone = known.needles[possibleSlot(needleIndex('R3')!)]!.gone
    expect(gone).toBeGreaterThan(1)
    expect(known.strips[0]!.seized).toBeLessThan(1)
    expect(known.strips[0]!.right).toBe(1)
  })
})
