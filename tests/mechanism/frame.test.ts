import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { frameAt, needleUnderPresser } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { toNeedle, measureOfNeedle, ofNeedle, type Needle } from '@/mechanism/indices.ts'
import { faultsAmong, passes, scenarios, without } from './arbitraries.ts'
import { scattered } from './cards.ts'
import { check } from './check.ts'
import { count, everyNeedle, machine } from './make.ts'
import { holeIn, rowWith } from './trade.ts'

const r11 = 110
const quick = without('needle.stiff', 'retainer.worn')
/** With the carriage set to pattern its presser and gates do what they do. */
const patterned = without('needle.stiff', 'retainer.worn', 'carriage.plain')

describe('the frame with the carriage at R11, whose column has a hole', () => {
  const frame = frameAt(machine([rowWith(11, 12)]), 1, r11)

  test('shows pin 11 on the flat of the sweep, whose middle has not come to it yet', () => {
    expect(frame.sweepAt).toBeCloseTo(11 - 0.8, 12)
    expect(frame.column).toBe(11)
    expect(frame.before).toBeNull()
  })

  test('shows two pins high and 22 low', () => {
    expect([...frame.pinHeights]).toEqual(count(1, 24).map((c) => (c === 11 || c === 12 ? 3.0 : 1.2)))
  })

  test('shows pin 11 pushed aside by the full throw, pin 12 as far as it is met, and their rockers less by the lost motion', () => {
    const before = 1 + Math.cos((Math.PI * (1.8 - 1.2)) / 0.9)
    expect(frame.pinLeans[10]).toBeCloseTo(2.0, 12)
    expect(frame.pinLeans[11]).toBeCloseTo(before, 12)
    expect(frame.rockerOuts[10]).toBeCloseTo(1.8, 12)
    expect(frame.rockerOuts[11]).toBeCloseTo(before - 0.2, 12)
    expect([...frame.pinLeans].filter((lean) => lean > 0)).toHaveLength(2)
  })

  test('shows its butt fully dipped', () => {
    expect(frame.buttHeights[r11]).toBeCloseTo(-1.5, 12)
  })

  test('shows the butts well ahead at rest', () => {
    for (const ahead of [3, 4, 50]) expect(frame.buttHeights[r11 + ahead]).toBeCloseTo(0, 12)
  })
})

test('a held butt stays at its catch’s depth, a free one springs up as an exponential', () => {
  const { buttHeights } = frameAt(machine([rowWith(11)]), 1, r11 + 3)
  expect(buttHeights[r11]).toBeCloseTo(-0.9, 12)
  for (const behind of [0.25, 1, 1.6]) {
    const free = frameAt(machine([0]), 1, r11 + behind).buttHeights[r11]!
    expect(free).toBeCloseTo(-1.5 * Math.exp(-(1000 * behind * 4.5) / 500 / 2), 12)
  }
})

test.each([
  [100, [], 1, 24.2, 1],
  [100.8, [], 1, 1, 2],
  [123, [], 1, 23.2, 24],
  [123.4, [], 1, 23.6, 24],
  [123.6, [], 1, 23.8, 1],
  [99, [], 2, 0.8, 24],
  [110, ['belt.timing=3'], 1, 13.2, 14],
  [110, ['belt.timing=-11'], 1, 23.2, 24],
  [110, ['belt.slack=4'], 1, 8.2, 9],
  [110, ['belt.slack=4'], 2, 13.8, 13],
])(
  'at %d with %j in pass %i the sweep is at %d, and pushes pin %i for the needle under the presser',
  (x, faults, pass, at, column) => {
    const frame = frameAt(machine([0], faults), pass, x)
    expect(frame.sweepAt).toBeCloseTo(at, 9)
    expect(frame.column).toBe(column)
  },
)

describe('at the end of a pass', () => {
  test('each needle stands where the pass has sent it and every departure has shown', () => {
    check(
      fc.property(scenarios(), passes, (scenario, number) => {
        const run = startRun(scenario)
        const pass = run.passOf(number)
        const { first, last } = scenario.bed
        const frame = frameAt(run, number, pass.way === 1 ? last + 12 : first - 12)
        const isPlain = run.condition.carriagePlain
        expect([...frame.needleTravels]).toEqual(
          pass.came.map((came) => (isPlain ? 0 : came === 'selected' ? 6.5 : came === 'plain' ? -3 : 0)),
        )
        expect(frame.departures).toEqual(pass.departures)
      }),
    )
  })

  test('needles stand as they do when the next pass begins', () => {
    check(
      fc.property(scenarios(), passes, (scenario, number) => {
        const run = startRun(scenario)
        const end = run.passOf(number + 1).drive.start
        const next = frameAt(run, number + 1, end)
        expect([...next.needleTravels]).toEqual([...frameAt(run, number, end).needleTravels])
        expect(next.before).toBe(run.passOf(number))
        expect(next.departures).toEqual([])
      }),
    )
  })
})

test('a needle’s departure shows once it has reached the first gate, 1.6 needles behind the presser', () => {
  const run = machine([0], ['strip.3.over'])
  expect(frameAt(run, 1, 4.9 - 1).departures.map(({ needle }) => needle)).toEqual([])
  expect(run.passOf(1).departures[0]!.needle).toBe(6)
  expect(frameAt(run, 1, 7.5).departures.map(({ needle }) => needle)).toEqual([])
  expect(frameAt(run, 1, 7.61).departures.map(({ needle }) => needle)).toEqual([6])
  expect(frameAt(run, 2, 196.5).departures.map(({ needle }) => needle)).toEqual([])
  expect(frameAt(run, 2, 196.39).departures.map(({ needle }) => needle)).toEqual([198])
})

test('in between the gates a butt stands on the side of the first gate that its outcome says', () => {
  check(
    fc.property(scenarios({ faults: faultsAmong(patterned, 6) }), passes, (scenario, number) => {
      const run = startRun(scenario)
      const pass = run.passOf(number)
      const gate1 = scenario.faults.reduce(
        (edge, { kind, amount }) =>
          edge + (kind === 'gate.1.low' ? amount : kind === 'gate.1.high' ? -amount : 0),
        run.condition.dimensions.gate1,
      )
      for (const needle of [scenario.bed.first, scenario.bed.last]) {
        const { buttHeights } = frameAt(run, number, needle + run.condition.dimensions.gateLag * pass.way)
        const height = measureOfNeedle(buttHeights, needle)
        const came = ofNeedle(pass.came, needle)
        if (came === 'unmoved' || Math.abs(height + gate1) < 1e-9) continue
        expect(height > -gate1).toBe(came === 'plain')
      }
    }),
    200,
  )
})

describe('butts and needles never jump', () => {
  // Where one cam hands over to the next, in needles behind the presser's trailing edge.
  const joints = [-6.5, -2.5, -1, 0, 1.6, 3.6, 4.5, 8.5]

  const expectNoJump = (run: ReturnType<typeof startRun>, number: number, needle: Needle): void => {
    const { way } = run.passOf(number)
    for (const joint of joints) {
      const before = frameAt(run, number, needle + way * (joint - 1e-7))
      const after = frameAt(run, number, needle + way * (joint + 1e-7))
      for (const part of ['buttHeights', 'needleTravels'] as const)
        expect(
          Math.abs(measureOfNeedle(after[part], needle) - measureOfNeedle(before[part], needle)),
        ).toBeLessThan(0.01)
    }
  }

  test('in a machine with any faults of card, drive, presser and gates', () => {
    check(
      fc.property(scenarios({ faults: faultsAmong(quick, 6) }), passes, (scenario, number) => {
        expectNoJump(startRun(scenario), number, scenario.bed.first)
      }),
    )
  })

  test('nor where a held butt is so stiff that it has not come up to its catch by the second gate', () => {
    expectNoJump(machine([0xffffff], ['needle.R3.stiff'], { speed: 2000 }), 1, toNeedle(102))
  })
})

test('a needle without a butt has nothing that the presser could dip', () => {
  const run = machine([0xffffff], ['needle.R3.gone'])
  for (const x of [102, 103, 104]) expect(frameAt(run, 1, x).buttHeights[102]).toBe(0)
  expect(frameAt(run, 1, 103).buttHeights[103]).toBeCloseTo(-1.5, 12)
})

test('needles that the pass before set out are back in line when the presser’s ramp meets them', () => {
  for (const card of [0xffffff, 0]) {
    const run = machine([card])
    const travel = (since: number): number => Math.abs(frameAt(run, 2, 102 - since).needleTravels[102]!)
    expect([travel(-2.5), travel(-1), travel(0)]).toEqual([0, 0, 0])
    expect(travel(-2.6)).toBeGreaterThan(0)
    expect(travel(-4.5)).toBeGreaterThan(1)
  }
})

test('needles out of use stand at rest and on the line', () => {
  const frame = frameAt(
    machine([0xffffff], [], { bed: { first: toNeedle(90), last: toNeedle(109) } }),
    2,
    100,
  )
  for (const needle of everyNeedle.filter((i) => i < 90 || i > 109)) {
    expect(frame.buttHeights[needle]).toBe(0)
    expect(frame.needleTravels[needle]).toBe(0)
  }
})

test('ahead of the carriage the needles still stand as the pass before set them out', () => {
  const run = machine(scattered)
  const { needleTravels, before } = frameAt(run, 2, 100)
  expect(before).toBe(run.passOf(1))
  const ahead = count(0, 93)
  const column = (i: number): number => ((i + 20) % 24) + 1
  expect(ahead.map((i) => needleTravels[i])).toEqual(
    ahead.map((i) => (holeIn(scattered[0]!, column(i)) ? 6.5 : -3)),
  )
})

test('the needle under the presser is the nearest in use', () => {
  const { condition } = machine([0], [], { bed: { first: toNeedle(90), last: toNeedle(109) } })
  expect([89.4, 89.6, 100.4, 109.4, 109.6].map((x) => needleUnderPresser(condition, x))).toEqual([
    null,
    90,
    100,
    109,
    null,
  ])
})
