import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type BestSetting, bestSettings, type SettingName, timingWindow } from '@/mechanism/best-setting.ts'
import { type Own, disordered } from '@/mechanism/own.ts'
import { startRun, type Run } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { ownsOfUsualBed, speeds } from './arbitraries.ts'
import { allHoles } from './cards.ts'
import { check } from './check.ts'
import { count } from './make.ts'

const runOf = (own: Own, speed = 500, timing = 0): Run =>
  startRun({
    ...soundScenario(allHoles),
    own,
    speed,
    faults: timing === 0 ? [] : [{ kind: 'belt.timing', at: [], amount: timing }],
  })

const settingOf = (run: Run, name: SettingName): BestSetting =>
  bestSettings(run).find((setting) => setting.name === name)!

/** Whether a pass selects the needles from R5 to R60, of a card of holes only. */
const selects = (run: Run, pass: number): boolean =>
  run
    .passOf(pass)
    .came.slice(105, 160)
    .every((came) => came === 'selected')

describe('where a setting leaves most room on both sides', () => {
  const named: readonly Exclude<SettingName, 'gate2' | 'timing' | 'seat' | 'bar'>[] = [
    'presserRight',
    'presserLeft',
    'gate1',
    'sweepEdge',
  ]

  test.each(named)('%s: no value near it leaves more, and each leaves what is said of it', (name) => {
    check(
      fc.property(ownsOfUsualBed, speeds, (own, speed) => {
        const found = settingOf(runOf(own, speed), name)
        expect(found.roomBest).toBeGreaterThanOrEqual(found.roomNow - 1e-12)
        const at = (value: number): number => settingOf(runOf({ ...own, [name]: value }, speed), name).roomNow
        expect(at(found.now)).toBeCloseTo(found.roomNow, 9)
        if (found.best < 0) return
        expect(at(found.best)).toBeCloseTo(found.roomBest, 9)
        for (const n of count(-20, 20)) {
          const value = found.best + n * 0.05
          if (value >= 0) expect(at(value)).toBeLessThanOrEqual(found.roomBest + 1e-9)
        }
      }),
      40,
    )
  })

  test('a presser 0.4 mm too high to the left is said, and by how much to set it', () => {
    const run = runOf({ presserLeft: 1.1 })
    const left = settingOf(run, 'presserLeft')
    expect(left.now).toBeCloseTo(1.1, 12)
    // (catchDepth + gate1) / (1 + e^(-gateLag · pitch / speed / buttReturn)), all of the training machine.
    const still = Math.exp(-(1.6 * 4.5) / 0.5 / 2)
    expect(left.best).toBeCloseTo(1.35 / (1 + still), 12)
    expect(left.roomNow).toBeCloseTo(0.2, 12)
    expect(left.roomBest).toBeGreaterThan(left.roomNow + 0.2)
    expect(settingOf(run, 'presserRight').now).toBeCloseTo(1.5, 12)
  })

  test('the belt is best in step, and its room is what is left of the window', () => {
    const { late, early } = timingWindow(runOf({}))!
    expect(late).toBeCloseTo(0.732, 3)
    expect(early).toBeCloseTo(1.075, 3)
    const seat = settingOf(runOf({}, 500, 0.3), 'seat')
    expect(seat).toMatchObject({ now: 0.3, best: 0 })
    expect(seat.roomNow).toBeCloseTo(late - 0.3, 9)
    expect(seat.roomBest).toBeCloseTo(late, 9)
  })

  test('the belt is set by whole teeth, and what is left of a needle by the reader’s seat', () => {
    const run = runOf({}, 500, -2.7)
    const [belt, seat] = [settingOf(run, 'timing'), settingOf(run, 'seat')]
    expect(belt.best - belt.now).toBeCloseTo(3, 12)
    expect([belt.best, seat.now]).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0.3, 12)])
    const { late } = timingWindow(run)!
    expect(belt.roomNow).toBeCloseTo(late - 2.7, 9)
    expect([belt.roomBest, seat.roomNow]).toEqual([
      expect.closeTo(late - 0.3, 9),
      expect.closeTo(late - 0.3, 9),
    ])
    expect(selects(runOf({}, 500, belt.best), 1)).toBe(true)
    expect(selects(run, 1)).toBe(false)
  })

  test('the second gate must be below a held butt, by what the first has at its best', () => {
    expect(settingOf(runOf({}), 'gate2')).toMatchObject({ now: 1.6, best: 1.6, roomNow: 1.6 - 0.9 })
    const high = settingOf(runOf({ gate2: 0.95 }), 'gate2')
    expect(high.roomNow).toBeCloseTo(0.05, 12)
    expect(high.roomBest).toBeCloseTo(settingOf(runOf({}), 'gate1').roomBest, 12)
    const just = (gate2: number): unknown => runOf({ gate2 }).passOf(1).came[105]
    expect([just(0.91), just(0.89)]).toEqual(['selected', 'unmoved'])
  })

  test('a bar may be as slow as the first gate bears at this speed, and no slower', () => {
    check(
      fc.property(ownsOfUsualBed, speeds, (own, speed) => {
        const bar = bestSettings(runOf(own, speed)).find(({ name }) => name === 'bar')
        if (!bar) return
        const longest = bar.now + bar.roomNow
        expect(bar.best + bar.roomBest).toBeCloseTo(longest, 9)
        const free = (buttReturn: number): unknown => {
          const run = startRun({ ...soundScenario([0]), own: { ...own, buttReturn }, speed })
          return [run.passOf(1).came[110], run.passOf(2).came[110]]
        }
        expect(free(longest * 0.999)).toEqual(['plain', 'plain'])
        expect(free(longest * 1.001)).not.toEqual(['plain', 'plain'])
      }),
      60,
    )
  })
})

test('the window of the belt is where the model selects: a hair inside both edges it does, a hair outside not', () => {
  let [drawn, tried] = [0, 0]
  check(
    fc.property(
      ownsOfUsualBed.filter((own) => disordered(own).length === 0),
      fc.integer({ min: 100, max: 1200 }),
      (own, speed) => {
        drawn++
        const window = timingWindow(runOf(own, speed))
        if (!window || window.late <= 0.05 || window.early <= 0.05 || !selects(runOf(own, speed), 1)) return
        tried++
        for (const [edge, side] of [
          [-window.late, 1],
          [window.early, -1],
        ] as const) {
          expect(selects(runOf(own, speed, edge + side * 1e-4), 1)).toBe(true)
          expect(selects(runOf(own, speed, edge - side * 1e-4), 1)).toBe(false)
          // To the left the same error of the belt has the sweep as late as it has it early to the right.
          expect(selects(runOf(own, speed, -(edge + side * 1e-4)), 2)).toBe(selects(runOf(own, speed), 2))
        }
      },
    ),
    200,
  )
  // Most of the machines drawn have such a window.
  expect(tried).toBeGreaterThan(drawn / 4)
})
