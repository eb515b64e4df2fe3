import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { frameCount, framesOf, stretchOf, usualNeedle } from '@/features/picture/film/stretch.ts'
import { needleIndex, needleName } from '@/mechanism/bed.ts'
import type { Needle } from '@/mechanism/indices.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { momentOf } from '../../browser/model.ts'
import { states } from '../../link/arbitraries.ts'
import { library } from '../../link/library.ts'

const needleOf = (name: string): Needle => {
  const needle = needleIndex(name)
  if (needle === null) throw new Error(`there is no needle ${name}`)
  return needle
}

const { run, frame } = momentOf('pass=3&at=R12&break=strip.3.seized')
const r19 = needleOf('R19')
const kinds = ['needle', 'pass', 'compare'] as const

describe('the pictures of a film', () => {
  test.each(kinds)('are as many as were said, in at most 15 s, and the same each time: %s', (kind) => {
    for (const rate of [10, 25]) {
      const stretch = stretchOf(kind, run, 3, r19)
      const frames = [...framesOf(stretch, rate)]
      expect(frames).toHaveLength(frameCount(stretch, rate))
      expect(frames.length / rate).toBeLessThanOrEqual(15)
      const places = frames.map(({ frame: { x }, over }) => [over, x])
      expect([...framesOf(stretch, rate)].map(({ frame: { x }, over }) => [over, x])).toEqual(places)
    }
  })

  test('go at one pace from where the carriage comes to where it has left, either way, and then rest', () => {
    for (const pass of [3, 4]) {
      const [way, stretch] = [pass === 3 ? 1 : -1, stretchOf('needle', run, pass, r19)]
      const places = [...framesOf(stretch, 10)].map(({ frame: { x } }) => x)
      expect(way * (r19 - (places[0] ?? NaN))).toBeGreaterThan(5)
      expect(way * ((places.at(-1) ?? NaN) - r19)).toBeGreaterThan(5)
      const steps = places.slice(1).map((x, n) => way * (x - (places[n] ?? NaN)))
      const moving = steps.slice(0, 10 * stretch.runs - 1)
      expect(Math.max(...moving) - Math.min(...moving)).toBeLessThan(1e-9)
      expect(Math.min(...moving)).toBeGreaterThan(0)
      expect(steps.slice(10 * stretch.runs - 1).every((step) => step === 0)).toBe(true)
    }
  })

  test('of a pass sort every needle in use, of a part of the bed too', () => {
    const part = momentOf('needles=L10-R8&pass=1')
    const frames = [...framesOf(stretchOf('pass', part.run, 1, r19), 10)]
    const { x } = frames.at(-1)?.frame ?? { x: NaN }
    expect(frames[0]?.frame.x).toBeLessThan(needleOf('L10'))
    expect(x).toBeGreaterThan(needleOf('R8'))
    expect(x - (frames[0]?.frame.x ?? NaN)).toBeLessThan(18 + 40)
  })

  test('show the sound machine first, and then at the same places the one with the fault', () => {
    const frames = [...framesOf(stretchOf('compare', run, 3, r19), 10)]
    const half = frames.length / 2
    const [sound, broken] = [frames.slice(0, half), frames.slice(half)]
    expect(new Set(sound.map(({ over }) => over))).toEqual(new Set(['The sound machine']))
    expect(new Set(broken.map(({ over }) => over))).toEqual(new Set(['Strip 3 seized']))
    expect(broken.map(({ frame: { x } }) => x)).toEqual(sound.map(({ frame: { x } }) => x))
    expect(sound.at(-1)?.frame.pass.came[r19]).toBe('selected')
    expect(broken.at(-1)?.frame.pass.came[r19]).toBe('plain')
  })

  test('are of the wrong needle nearest to the carriage, else of the nearest in use', () => {
    expect(needleName(usualNeedle(run, frame))).toBe('R11')
    const sound = momentOf('at=R12.2')
    expect(needleName(usualNeedle(sound.run, sound.frame))).toBe('R12')
    const past = momentOf('needles=L10-R8&at=R20')
    expect(needleName(usualNeedle(past.run, past.frame))).toBe('R8')
  })

  test('say how many faults there are where they are several', () => {
    const { run: two } = momentOf('break=strip.3.seized&break=pin.7.low')
    expect(stretchOf('pass', two, 1, r19).parts.map(({ over }) => over)).toEqual(['2 faults'])
  })
})

test('a film of any state at all has all its pictures, at places that are numbers, of needles in use', () => {
  fc.assert(
    fc.property(states, fc.constantFrom(...kinds), (state, kind) => {
      const machine = startRun(scenarioOf(state, library))
      const needle = usualNeedle(machine, frameAt(machine, state.pass, state.at))
      expect(needle).toBeGreaterThanOrEqual(state.bed.first)
      expect(needle).toBeLessThanOrEqual(state.bed.last)
      const stretch = stretchOf(kind, machine, state.pass, needle)
      const frames = [...framesOf(stretch, 2)]
      expect(frames).toHaveLength(frameCount(stretch, 2))
      for (const { frame: shown, over } of frames) {
        expect(over).not.toBe('')
        expect([shown.x, ...shown.buttHeights, ...shown.needleTravels].every(Number.isFinite)).toBe(true)
      }
    }),
    { numRuns: Number(process.env['HOSTILE'] ?? 25_000) / 250 },
  )
}, 60_000)
