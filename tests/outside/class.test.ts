import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type Frame, frameAt } from '@/mechanism/frame.ts'
import type { Run } from '@/mechanism/pass.ts'
import { passagesOf } from '@/site/chapter-outline.ts'
import { scattered } from '../mechanism/cards.ts'
import { count, everyNeedle, machine, selectedIn } from '../mechanism/make.ts'
import { columnAt, holeIn, rowWith, stripAt } from '../mechanism/trade.ts'

const everyHole = 0xffffff
const columns = count(1, 24)

/** The machine at every tenth of a needle of travel over 24 needles in the middle of a pass. */
const framesOf = (run: Run, pass: number): Frame[] => {
  const frames = count(0, 240).map((n) => frameAt(run, pass, 100 + n / 10))
  return pass % 2 === 1 ? frames : frames.reverse()
}

/** Numbers, from 1, of the values that are ever above nought. */
const everMoved = (frames: readonly Frame[], of: (frame: Frame) => Float64Array): number[] => {
  const moved = new Set(frames.flatMap((frame) => [...of(frame)].flatMap((mm, n) => (mm > 0 ? [n + 1] : []))))
  return [...moved].sort((one, other) => one - other)
}

const holesIn = (row: number): number[] => columns.filter((column) => holeIn(row, column))
const leans = ({ pinLeans }: Frame): Float64Array => pinLeans

/** Source of each: common practice, no source. */
const facts: Readonly<Record<string, () => void>> = {
  'belt-drives': () => {
    for (const card of [[everyHole, 0], null]) {
      const run = machine(card, ['belt.off'])
      for (const pass of count(1, 4)) expect(selectedIn(run, pass)).toEqual([])
    }
    expect(count(1, 4).map((pass) => machine([everyHole, 0], ['belt.off']).passOf(pass).row)).toEqual([
      1, 1, 1, 1,
    ])
  },
  'turning-steps': () => {
    const rows = (faults: readonly string[]): (number | null)[] =>
      count(1, 5).map((pass) => machine(scattered, faults).passOf(pass).row)
    expect(rows([])).toEqual([1, 2, 3, 4, 5])
    expect(rows(['turn.short.3'])).toEqual([1, 2, 2, 3, 4])
  },
  'pins-drop-first': () => {
    // A pin that can't spring back shows where pins are let down: before the new row is felt, at the mark only.
    const run = machine([rowWith(5), 0], ['pin.5.over'])
    expect(frameAt(run, 1, 211).pinLeans[4]).toBeGreaterThan(0)
    const { pinLeans, pinHeights } = frameAt(run, 2, run.passOf(2).drive.start)
    expect(pinLeans[4]).toBe(0)
    expect(new Set(pinHeights).size).toBe(1)
  },
  'pins-bent': () => {
    const run = machine(scattered)
    for (const pass of count(1, 4)) {
      const { row } = run.passOf(pass)
      expect(everMoved(framesOf(run, pass), leans)).toEqual(holesIn(scattered[row! - 1]!))
    }
  },
  'holes-raise': () => {
    const { pinHeights } = frameAt(machine([rowWith(4, 9)]), 1, 100)
    const [low, high] = [Math.min(...pinHeights), Math.max(...pinHeights)]
    expect(high).toBeGreaterThan(low)
    expect([...pinHeights].map((height) => height === high)).toEqual(
      columns.map((column) => [4, 9].includes(column)),
    )
  },
  'high-only': () => {
    for (const pass of [1, 2])
      expect(everMoved(framesOf(machine([rowWith(4, 9)]), pass), leans)).toEqual([4, 9])
  },
  'same-side': () => {
    for (const pass of [1, 2]) {
      const pushes = framesOf(machine([everyHole]), pass).flatMap((frame) => [...frame.pinLeans])
      expect(Math.min(...pushes)).toBe(0)
      expect(Math.max(...pushes)).toBe(2)
    }
  },
  'springs-back': () => {
    const leanAfter = (faults: readonly string[]): number =>
      frameAt(machine([rowWith(5)], faults), 1, 104 + 12).pinLeans[4]!
    expect(leanAfter([])).toBe(0)
    expect(leanAfter(['pin.5.over'])).toBeGreaterThan(0)
  },
  rods: () => {
    const strips = columns.map((column) =>
      everMoved(framesOf(machine([rowWith(column)]), 1), ({ stripShifts }) => stripShifts),
    )
    expect(strips).toEqual(columns.map((column) => [stripAt(99 + column)]))
    for (const strip of count(1, 8)) expect(strips.filter(([only]) => only === strip)).toHaveLength(3)
  },
  catches: () => {
    for (const strip of count(1, 8))
      expect(selectedIn(machine([0], [`strip.${strip}.over`]), 1)).toEqual(
        everyNeedle.filter((needle) => stripAt(needle) === strip),
      )
  },
  held: () => {
    const needle = 102
    const kept = machine([0], ['strip.3.over'])
    expect(kept.passOf(1).keptFor[needle]).toBe(Infinity)
    expect(frameAt(kept, 1, needle + 1.5).buttHeights[needle]).toBeCloseTo(-0.9, 6)
    // With the sweep early a strip falls back before the first gate, and lets go of what it has caught.
    const early = machine([everyHole], ['belt.timing=1.2'], { speed: 100 })
    const keptFor = early.passOf(1).keptFor[needle]!
    expect(keptFor).toBeGreaterThan(0)
    expect(keptFor).toBeLessThan(1.6)
    const height = (since: number): number => frameAt(early, 1, needle + since).buttHeights[needle]!
    expect(height(keptFor - 0.01)).toBeCloseTo(-0.9, 6)
    expect(height(1.59)).toBeGreaterThan(-0.1)
    expect(early.passOf(1).came[needle]).toBe('plain')
  },
  'two-gates': () => {
    const run = machine([rowWith(3)])
    const travel = (needle: number, since: number): number =>
      frameAt(run, 1, needle + since).needleTravels[needle]!
    expect([travel(102, 4), travel(103, 4)]).toEqual([0, expect.any(Number)])
    expect(travel(103, 4)).toBeLessThan(0)
    expect(travel(102, 9)).toBeGreaterThan(0)
  },
  'no-card': () => {
    for (const pass of [1, 2]) expect(selectedIn(machine(null), pass)).toEqual(everyNeedle)
  },
  worn: () => {
    const selected = selectedIn(machine([everyHole], [], { wear: 0.8 }), 1).length
    expect(selected).toBeGreaterThan(0)
    expect(selected).toBeLessThan(200)
  },
  wheel: () => {
    const run = machine(null)
    const moving = framesOf(run, 1).map(({ rockerOuts }) => rockerOuts)
    const begins = columns.map((column) =>
      moving.findIndex((outs, n) => n > 0 && outs[column - 1]! > 0 && moving[n - 1]![column - 1] === 0),
    )
    expect(begins.every((begin) => begin > 0)).toBe(true)
    const order = [...columns].sort((one, other) => begins[one - 1]! - begins[other - 1]!)
    const first = order.indexOf(1)
    expect([...order.slice(first), ...order.slice(0, first)]).toEqual(columns)
    expect(columnAt(100)).toBe(1)
  },
}

const page = readFileSync('content/guide/true-of-every-machine.mdx', 'utf8')
const truths = passagesOf(page, 'Truth').map(({ attributes, words }) => ({
  id: attributes.get('id') ?? '',
  of: attributes.get('of') ?? '',
  step: attributes.get('step') ?? '',
  words,
}))

describe('what the site says of every machine of the class, the model does', () => {
  test.each(Object.entries(facts))('%s', (_, holds) => {
    holds()
  })

  test('and nothing is said of the class that is not tested here', () => {
    const said = truths.filter(({ of }) => of === 'class').map(({ id }) => id)
    expect([...said].sort()).toEqual(Object.keys(facts).sort())
  })
})
