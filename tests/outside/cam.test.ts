import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { cams, dimensions } from '@/mechanism/dimensions.ts'
import { frameAt, harmonic } from '@/mechanism/frame.ts'
import { passagesOf } from '@/site/chapter-outline.ts'
import { facts } from '@/words/facts.ts'
import { machine } from '../mechanism/make.ts'

/** The largest slope and the largest bend of a curve between two places, by differences. */
const steepest = (
  curve: (at: number) => number,
  from: number,
  to: number,
): { slope: number; bend: number } => {
  const step = (to - from) / 1000
  let [slope, bend] = [0, 0]
  for (let at = from + step; at < to - step; at += step) {
    const [before, here, after] = [curve(at - step), curve(at), curve(at + step)]
    slope = Math.max(slope, Math.abs(after - before) / (2 * step))
    bend = Math.max(bend, Math.abs(after - 2 * here + before) / step ** 2)
  }
  return { slope, bend }
}

/** Source: formulas from R. L. Norton, Cam Design and Manufacturing Handbook; values recomputed. */
describe('a simple harmonic rise of 20 over 60 degrees', () => {
  const { slope, bend } = steepest((degree) => 20 * harmonic(degree / 60), 0, 60)

  test('is steepest at πh/2β, 0.523599 a degree', () => {
    expect(slope).toBeCloseTo(0.523599, 5)
  })

  test('bends most at π²h/2β², 0.027416 a square degree', () => {
    expect(bend).toBeCloseTo(0.027416, 5)
  })

  test('starts and ends level, halfway up in the middle', () => {
    expect([-1, 0, 0.5, 1, 2].map(harmonic)).toEqual([0, 0, expect.closeTo(0.5, 12), 1, 1])
  })
})

/** Source: R. L. Norton, same: about 30 degrees is the most for a follower that slides. */
describe('the pressure angle of the cams as drawn stays under 30 degrees', () => {
  const needle = 102
  const angle = (slope: number): number => (Math.atan(slope / dimensions.pitch) * 180) / Math.PI
  const on = (card: number, part: 'buttHeights' | 'needleTravels', pass = 1) => {
    const run = machine([card, 0xffffff - card])
    return (since: number): number => {
      const { way } = run.passOf(pass)
      return frameAt(run, pass, needle + way * since)[part][needle]!
    }
  }
  const before = -cams.presserFlat - cams.presserRamp
  const behind = cams.gate2Start + cams.gate2Length

  test.each([
    ['the presser’s ramp', on(0, 'buttHeights'), before, -cams.presserFlat, 15],
    ['the first gate', on(0, 'needleTravels'), 0, behind, 20],
    ['the second gate', on(0xffffff, 'needleTravels'), 0, behind, 20],
    ['the cams that bring selected needles back', on(0xffffff, 'needleTravels', 2), before - 6, before, 20],
    ['the cams that bring plain needles back', on(0, 'needleTravels', 2), before - 6, before, 10],
  ])('of %s', (_, curve, from, to, atLeast) => {
    const steep = angle(steepest(curve, from, to).slope)
    expect(steep).toBeLessThan(30)
    expect(steep).toBeGreaterThan(atLeast)
  })
})

/** Source: R. L. Norton, same. */
test('the ramps of the sweep are steeper than that, 37.8 degrees, and the site says so as its own', () => {
  const run = machine([0xffffff])
  const lean = (x: number): number => frameAt(run, 1, x).pinLeans[2]!
  const { slope } = steepest(lean, 100, 106)
  const angle = (Math.atan(slope / dimensions.pitch) * 180) / Math.PI
  expect(angle).toBeCloseTo(37.8, 1)
  expect(facts.sweepAngle).toBe('37.8°')
  const page = readFileSync('content/guide/true-of-every-machine.mdx', 'utf8')
  const wedge = passagesOf(page, 'Truth').find(({ attributes }) => attributes.get('id') === 'wedge')
  expect(wedge?.attributes.get('of')).toBe('ours')
  expect(wedge?.words).toContain('37.8°')
  expect(wedge?.words).toMatch(/no more than about thirty degrees/)
})
