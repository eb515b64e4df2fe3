import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { columnOfNeedle, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { earlyWindow, lateWindow, lowEnoughTime } from '@/mechanism/closed-forms.ts'
import { conditionOf, presserAsMade, presserOf } from '@/mechanism/condition.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { letGoHeight } from '@/mechanism/gate.ts'
import { allNeedles, type Needle } from '@/mechanism/indices.ts'
import { dimensionsOf, type Own } from '@/mechanism/own.ts'
import { runPass, startRun } from '@/mechanism/pass.ts'
import { type Scenario, soundScenario } from '@/mechanism/scenario.ts'
import { stripShift } from '@/mechanism/strip.ts'
import { cards, faultsAmong, owns, passes, scenarios, speeds, ways, without } from './arbitraries.ts'
import { check } from './check.ts'
import { machine, selectedIn } from './make.ts'

const everyHole = 0xffffff

/** How far a needle's catch keeps its butt, in a pass of a machine with a hole for each needle. */
const keptFor = (scenario: Scenario, pass: number): [Needle, number][] => {
  const { keptFor: kept } = runPass(conditionOf(scenario), pass)
  return allNeedles.map((needle) => [needle, kept[needle]!])
}

describe('a catch', () => {
  test('takes a butt at a shift of 1.2 mm and holds it while its strip is at 0.6 mm or above', () => {
    const { condition, passOf } = machine([everyHole], ['belt.timing=0.95', 'strip.3.slow=20'])
    const pass = passOf(1)
    for (const needle of allNeedles) {
      const kept = pass.keptFor[needle]!
      const shift = (since: number): number =>
        stripShift(condition, pass.drive, stripOfNeedle(needle, usualPlace), needle + since)
      expect(shift(0)).toBeGreaterThanOrEqual(1.2)
      if (kept === Infinity) expect(shift(1.6)).toBeGreaterThanOrEqual(0.6)
      else {
        expect(shift(kept - 1e-6)).toBeGreaterThanOrEqual(0.6)
        expect(shift(kept + 1e-6)).toBeLessThan(0.6)
      }
    }
    const slow = allNeedles.filter((needle) => stripOfNeedle(needle, usualPlace) === 3)
    expect(slow.every((needle) => pass.keptFor[needle] === Infinity)).toBe(true)
  })

  test('does not take a butt again in the pass in which it let it go', () => {
    // The sweep is so early that strips have fallen before the gate; eight needles on the next push comes too late.
    const { passOf } = machine([everyHole], ['belt.timing=1.3'])
    expect(selectedIn(machine([everyHole], ['belt.timing=1.3']), 1)).toEqual([])
    expect([...passOf(1).keptFor].every((kept) => kept > 0 && kept < 1.6)).toBe(true)
  })

  test('whose strip is let go more than 1.39 ms before the gate never selects a needle whose butt springs up freely', () => {
    expect(lowEnoughTime).toBeCloseTo(2 * Math.log(0.9 / 0.45), 12)
    const free = without('needle.stiff', 'retainer.worn', 'gate.1.high', 'gate.1.low')
    check(
      fc.property(
        scenarios({ faults: faultsAmong(free, 6), wear: fc.constant(0) }),
        passes,
        (scenario, number) => {
          const pass = startRun(scenario).passOf(number)
          for (const [needle, kept] of keptFor(scenario, number)) {
            const before = (1000 * (1.6 - kept) * 4.5) / scenario.speed
            if (kept > 0 && kept < 1.6 && before > lowEnoughTime + 1e-9)
              expect(pass.came[needle]).not.toBe('selected')
          }
        },
      ),
      300,
    )
  })

  test('lets a butt go from where it kept it', () => {
    const { condition } = machine([everyHole])
    expect(letGoHeight(condition, allNeedles[50]!, 0, 2)).toBeCloseTo(-0.9, 12)
    expect(letGoHeight(condition, allNeedles[50]!, lowEnoughTime, 2)).toBeCloseTo(-0.45, 12)
  })

  test('holds a strip over as a class does by hand: every eighth butt stays, and all come up once it is let go', () => {
    const over = machine([0], ['strip.3.over']).passOf(1)
    expect(over.came.map((came) => came === 'selected')).toEqual(
      allNeedles.map((needle) => stripOfNeedle(needle, usualPlace) === 3),
    )
    expect(selectedIn(machine([0]), 1)).toEqual([])
  })
})

describe('a sweep', () => {
  const out = fc.double({ min: -12, max: 12, noNaN: true })

  test('that is out of its window, and out of that of each eight needles on, selects nothing', () => {
    check(
      fc.property(out, speeds, ways, (timing, speed, way) => {
        const early = way * timing
        const fromNext = early - 8 * Math.round(early / 8)
        const isOut = [-8, 0, 8].every(
          (eights) => fromNext + eights < -lateWindow - 1e-6 || fromNext + eights > earlyWindow(speed) + 1e-6,
        )
        const faults = [{ kind: 'belt.timing' as const, at: [] as const, amount: timing }]
        const scenario = { ...soundScenario([everyHole]), faults, speed }
        const selected = runPass(conditionOf(scenario), way === 1 ? 1 : 2).came.includes('selected')
        expect(selected).toBe(!isOut)
      }),
      500,
    )
  })

  test('that is in step selects the same needles both ways, where the presser is the same both ways', () => {
    const alike = without(
      ...(['belt.timing', 'presser.right.worn', 'presser.left.worn', 'pin.over', 'strip.slow'] as const),
      ...(['pin.sticky', 'pivots.loose', 'retainer.worn', 'turn.short', 'turn.twice', 'belt.off'] as const),
      ...(['card.locked', 'pawl.right', 'pawl.left', 'pawl.double', 'pawl.skips', 'pawl.jumps'] as const),
    )
    // Slack of more than 11 needles may bring the pattern eight needles late, and so to other needles each way.
    const faults = faultsAmong(alike, 5).map((all) =>
      all.filter(({ kind, amount }) => kind !== 'belt.slack' || amount <= 11),
    )
    // The left presser as the right one, and the belt in step.
    const own = owns.map((measured): Own => ({
      ...measured,
      presserLeft: dimensionsOf(measured).presserRight,
    }))
    const still = scenarios({ card: cards.map(([row]) => [row!]), faults, own })
    check(
      fc.property(still, (scenario) => {
        const run = startRun(scenario)
        expect(run.passOf(2).came).toEqual(run.passOf(1).came)
      }),
      300,
    )
  })
})

test('loose pivots miss needles now and then, never select one unasked, and miss others with each visit', () => {
  const missed = (pass: number, seed: number): Needle[] =>
    machine([everyHole], ['pivots.loose=0.4'], { seed })
      .passOf(pass)
      .departures.map(({ needle }) => needle)
  expect(new Set([missed(1, 1), missed(2, 1), missed(1, 2)].map((needles) => needles.join())).size).toBe(3)
  const blank = machine([0], ['pivots.loose=0.6'])
  expect([1, 2, 3].flatMap((pass) => selectedIn(blank, pass))).toEqual([])
})

test('a sticky pin misses its column at some turns and not at others', () => {
  const run = machine([everyHole], ['pin.7.sticky=0.5'])
  const rows = Array.from({ length: 40 }, (_, n) => run.passOf(n + 1).departures.map(({ needle }) => needle))
  const own = allNeedles.filter((needle) => columnOfNeedle(needle, usualPlace) === 7)
  expect(rows.filter((row) => row.length > 0).every((row) => row.join() === own.join())).toBe(true)
  const stuck = rows.filter((row) => row.length > 0).length
  expect(stuck).toBeGreaterThan(10)
  expect(stuck).toBeLessThan(30)
})

test('a presser as it was made dips by the depth of its own way, whatever has worn it since', () => {
  const scenario = {
    ...soundScenario([0xffffff]),
    own: { presserRight: 1.4, presserLeft: 1.3 },
    faults: [faultOf('presser.left.worn=0.3')],
  }
  const { condition } = startRun(scenario)
  expect([presserAsMade(condition, 1), presserAsMade(condition, -1)]).toEqual([1.4, 1.3])
  expect(presserOf(condition, -1)).toBeCloseTo(1, 9)
})
