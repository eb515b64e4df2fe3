import cdf from '@stdlib/stats-base-dists-normal-cdf'
import { describe, expect, test } from 'vitest'
import { chanceOfSelection } from '@/mechanism/chance.ts'
import { leastMargin, type Margin, margins } from '@/mechanism/margins.ts'
import type { FaultKindName } from '@/mechanism/fault-kinds.ts'
import { isChanceExact, isChanceWhole, tryMachines } from '@/mechanism/trials.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { count, machine, selectedIn } from './make.ts'
import { tried, worn } from './tried.ts'

const chance = (faults: readonly string[], wear: number, way: 1 | -1 = 1): number =>
  chanceOfSelection(machine([0xffffff], faults, { wear }), way)

/** The chance by the dimensions of a worn machine, the pins' scatter summed in 20,000 steps. */
const byHand = (wear: number, share = 1, gate = 0, dip = 0): number => {
  const [edge, lost, reach] = [2 + 0.75 * wear, 0.2 + 0.45 * wear, 1.2 + 0.1 * wear]
  const [pin, rocker, part] = [0.03 + 0.12 * wear, 0.02 + 0.08 * wear, 0.02 + 0.05 * wear]
  const step = 16 / 20_000
  let pushed = 0
  for (let z = -8 + step / 2; z < 8; z += step) {
    const push = 2 * share * Math.min(1, Math.max(0, (3 + z * pin - edge) / 0.4))
    pushed +=
      (cdf((push - lost - reach) / rocker, 0, 1) * Math.exp((-z * z) / 2) * step) / Math.sqrt(2 * Math.PI)
  }
  // A butt is held where its own height and its catch's leave the dip deep enough, and low enough for the first gate.
  const both = part * Math.SQRT2
  const dips = cdf((1.5 - 0.35 * wear - dip - 0.9) / both, 0, 1)
  return pushed * Math.max(0, dips + cdf((0.9 - 0.45 - gate) / both, 0, 1) - 1)
}

describe('the chance that a needle under a hole is selected', () => {
  test.each([0.1, 0.5, 0.7, 0.8, 1])(
    'is the sum over pins, rockers, catches and butts, at wear %d',
    (wear) => {
      expect(chance([], wear)).toBeCloseTo(byHand(wear), 4)
      expect(chance([], wear, -1)).toBeCloseTo(byHand(wear), 4)
    },
  )

  test('takes in a belt out of step, a gate that hangs low and a presser that is worn', () => {
    // A sweep that is late by so many needles has so much of its ramp left when the presser lets go.
    const share = (late: number): number => (1 + Math.cos((Math.PI * (0.8 + late - 1.2)) / 0.9)) / 2
    expect(chance(['belt.timing=-0.5'], 0.5)).toBeCloseTo(byHand(0.5, share(0.5)), 5)
    expect(chance(['belt.timing=-0.5'], 0.5, -1)).toBeCloseTo(byHand(0.5), 5)
    expect(chance(['belt.timing=-0.4', 'belt.slack=0.4'], 0.5)).toBeCloseTo(byHand(0.5, share(0.6)), 5)
    expect(chance(['belt.timing=-0.4', 'belt.slack=0.4'], 0.5, -1)).toBeCloseTo(byHand(0.5), 5)
    expect(chance(['gate.1.low=0.4'], 0.6)).toBeCloseTo(byHand(0.6, 1, 0.4), 5)
    expect(chance(['presser.left.worn=0.35'], 0.6, -1)).toBeCloseTo(byHand(0.6, 1, 0, 0.35), 5)
    expect(chance(['presser.left.worn=0.35'], 0.6, 1)).toBeCloseTo(byHand(0.6), 5)
    expect(chance(['presser.right.worn=0.35'], 0.6, 1)).toBeCloseTo(byHand(0.6, 1, 0, 0.35), 5)
    expect(chance(['presser.right.worn=1.2', 'gate.1.low=1.2'], 0.6)).toBe(0)
  })

  test('as new is all or nothing, but for columns whose holes no longer let their pins through', () => {
    expect([chance([], 0), chance(['sweep.worn=0.71'], 0), chance(['sweep.worn=0.73'], 0)]).toEqual([
      expect.closeTo(1, 9) as number,
      expect.closeTo(1, 9) as number,
      0,
    ])
    expect(chance(['presser.right.worn=0.61'], 0)).toBe(0)
    expect(chance(['gate.1.low=0.46'], 0)).toBe(0)
    // Askew by 0.12 mm a column, columns 5 to 20 still fit, as 7.5 columns from the middle make 0.9 mm.
    expect(chance(['card.skew=0.12'], 0)).toBeCloseTo(16 / 24, 9)
    expect(chance(['card.skew=-0.12'], 0)).toBeCloseTo(16 / 24, 9)
    expect(chance(['card.side=1.01'], 0)).toBe(0)
    expect(chance(['card.side=1'], 0)).toBeCloseTo(1, 9)
  })
})

describe('the least margin', () => {
  test('of equals is the first on the chain', () => {
    const all: Margin[] = [
      { id: 'hole', stage: 'card', mm: 0.5 },
      { id: 'push', stage: 'rocker', mm: 0.2 },
      { id: 'dip', stage: 'hold', mm: 0.2 },
    ]
    expect(leastMargin(all).id).toBe('push')
  })
})

describe('a margin', () => {
  const mm = (faults: readonly string[], id: Margin['id'], speed = 500, way: 1 | -1 = 1): number =>
    margins(machine([0], faults, { speed }), way).find((one) => one.id === id)!.mm

  test('has its stage', () => {
    expect(margins(machine([0]), 1).map(({ id, stage }) => `${stage} ${id}`)).toEqual([
      'card hole',
      'pin lowPin',
      'sweep highPin',
      'rocker push',
      'strip release',
      'hold dip',
      'hold held',
      'gate heldUnderFirst',
      'gate freeOverFirst',
      'gate heldOverSecond',
    ])
  })

  test('of the push is never less than the reach where the sweep pushes nothing', () => {
    expect(mm(['belt.timing=5'], 'push')).toBeCloseTo(-1.2, 12)
    expect(mm(['sweep.worn=3'], 'push')).toBeCloseTo(-1.2, 12)
  })

  test('of the dip stays where a presser is worn away', () => {
    expect(mm(['presser.right.worn=1.5'], 'dip')).toBeCloseTo(-0.9, 12)
    expect(mm(['presser.right.worn=1.5'], 'freeOverFirst')).toBeCloseTo(0.45, 12)
  })

  test('of the release is the whole reach while the slowest strip is back before the next needle of it', () => {
    expect(mm([], 'release')).toBeCloseTo(1.2, 12)
    expect(mm(['sweep.worn=3', 'strip.3.slow=5000'], 'release', 2000)).toBeCloseTo(1.2, 12)
    // Eight needles on, thick oil leaves (peak + preload) e^(-time/300) - preload, less the little that it lags behind.
    const thick = mm(['strip.3.slow'], 'release', 300)
    const simple = 1.2 - (2.4 * Math.exp(-((8 - 0.8 - 1.2) * 4.5 * 1000) / 300 / 300) - 0.6)
    expect(Math.abs(thick - simple)).toBeLessThan(0.02)
    expect(mm(['strip.3.slow', 'strip.5.slow=100'], 'release', 300)).toBeCloseTo(thick, 12)
  })

  test.each([
    [300, 'belt.timing=0', 2],
    [300, 'sweep.worn=0.65', 1.75],
    [700, 'belt.timing=0.4', 2],
    [700, 'belt.timing=-0.4', 2],
  ])('of the release is what the most of any instant leaves: at %i mm/s with %s', (speed, id, push) => {
    for (const way of [1, -1] as const) {
      const decay = (300 * speed) / (1000 * 4.5)
      const early = id.startsWith('belt') ? way * Number(id.split('=')[1]) : 0
      const left = (v: number): number => {
        const out = (push / 2) * (1 + Math.cos((Math.PI * Math.max(0, Math.abs(v) - 1.2)) / 0.9)) - 0.2
        return (Math.max(0, out) + 0.6) * Math.exp(-(8 - 0.8 + early - v) / decay) - 0.6
      }
      const most = Math.max(0, ...count(-2100, 2100).map((n) => left(n / 1000)))
      expect(Math.abs(mm(['strip.3.slow', id], 'release', speed, way) - (1.2 - most))).toBeLessThan(5e-6)
    }
  })

  test('of the push is that of a belt out of step by its timing and half its slack', () => {
    const share = (late: number): number =>
      1 + Math.cos((Math.PI * Math.max(0, 0.8 + late - 1.2)) / 0.9) - 0.2 - 1.2
    const faults = ['belt.timing=-0.4', 'belt.slack=0.6']
    expect(mm(faults, 'push')).toBeCloseTo(share(0.7), 12)
    expect(mm(faults, 'push', 500, -1)).toBeCloseTo(share(-0.1), 12)
  })

  test('of the hole is that of the column which is worst', () => {
    expect(mm(['card.skew=0.05'], 'hole')).toBeCloseTo(1 - 11.5 * 0.05, 12)
    expect(mm(['card.skew=0.05', 'card.side=0.4'], 'hole')).toBeCloseTo(1 - Math.hypot(0.4, 11.5 * 0.05), 12)
  })
})

describe('trying machines out', () => {
  const exact: FaultKindName[] = [
    ...(['card.side', 'card.skew', 'sweep.worn', 'presser.right.worn', 'presser.left.worn'] as const),
    ...(['gate.1.low', 'gate.1.high', 'strip.slow'] as const),
    ...(['card.torn', 'card.blocked', 'card.reversed', 'card.locked'] as const),
    ...(['pawl.right', 'pawl.left', 'pawl.double', 'pawl.skips', 'pawl.jumps', 'turn.short'] as const),
    ...(['turn.twice', 'carriage.plain', 'belt.off', 'pivots.loose'] as const),
  ]
  const ids = [
    ...[
      'card.side=0.1',
      'card.skew=0.01',
      'sweep.worn=0.1',
      'presser.right.worn=0.1',
      'presser.left.worn=0.1',
    ],
    ...[
      'gate.1.low=0.1',
      'gate.1.high=0.1',
      'strip.3.slow',
      'card.torn.1.1',
      'card.blocked.1.1',
      'card.reversed',
    ],
    ...[
      'card.locked',
      'pawl.right',
      'pawl.left',
      'pawl.double',
      'turn.short.2',
      'belt.timing=0.1',
      'belt.slack=0.1',
    ],
    ...['pin.3.low', 'pin.3.high', 'pin.3.over', 'rocker.3.dead', 'rocker.3.worn=0.1', 'strip.3.seized'],
    ...[
      'strip.3.over',
      'catch.R3.broken',
      'needle.R3.bent',
      'needle.R3.gone',
      'needle.R3.stiff',
      'retainer.worn=12',
    ],
    ...[
      'pawl.skips.2',
      'pawl.jumps.2',
      'turn.twice',
      'carriage.plain',
      'belt.off',
      'pivots.loose=0.2',
      'pin.3.sticky=0.5',
    ],
  ]

  test('must agree with the chance for faults of all needles alike, of the card’s steps and of single holes', () => {
    const agreeing = ids
      .filter((id) => isChanceExact(machine([0xffffff], [id]), 1))
      .map((id) => faultOf(id).kind)
    expect(agreeing.sort()).toEqual([...exact].sort())
    const whole = ids.filter((id) => isChanceWhole(machine([0xffffff], [id]))).map((id) => faultOf(id).kind)
    expect(whole.sort()).toEqual([...exact, 'belt.timing', 'belt.slack'].sort())
  })

  test('need not agree without a card, with one fault too many, or where free butts nearly slip under', () => {
    expect(isChanceExact(machine(null), 1)).toBe(false)
    expect(isChanceExact(machine([0], ['card.side=0.1', 'pin.3.low']), 1)).toBe(false)
    expect(isChanceExact(machine([0], ['card.side=0.1', 'belt.timing=0.1']), 1)).toBe(false)
    expect(isChanceWhole(machine([0], ['card.side=0.1', 'pin.3.low']))).toBe(false)
    const near = (mm: number, way: 1 | -1 = 1, wear = 0): boolean =>
      isChanceExact(machine([0], [`gate.1.high=${mm}`], { wear }), way)
    expect([near(0.44), near(0.46), near(0.46, -1)]).toEqual([true, false, false])
    // At wear 1 a butt's height scatters by 0.07 mm: five times that must be free.
    expect([near(0.09, 1, 1), near(0.11, 1, 1)]).toEqual([true, false])
  })

  test.each([1, -1] as const)('is the mean of the first so many, and says how sure it is, way %i', (way) => {
    const shares = count(1, 6).map((seed) => {
      const run = machine([0xffffff], ['sweep.worn=0.1'], {
        wear: 0.8,
        seed,
        bed: { first: toNeedle(4), last: toNeedle(195) },
      })
      return selectedIn(run, way === 1 ? 1 : 2).length / 192
    })
    const trials = tryMachines(
      worn(0.8, [faultOf('sweep.worn=0.1'), faultOf('card.locked'), faultOf('card.torn.1.1')]),
      way,
    )
    for (const n of count(1, 6)) {
      const mean = shares.slice(0, n).reduce((sum, share) => sum + share, 0) / n
      const squares = shares.slice(0, n).reduce((sum, share) => sum + (share - mean) ** 2, 0)
      const { machines, share, error } = trials.next().value
      expect(machines).toBe(n)
      expect(share).toBeCloseTo(mean, 12)
      expect(error).toBeCloseTo(n === 1 ? 0 : Math.sqrt(squares / (n - 1) / n), 9)
    }
  })

  test('tries passes of the way that is asked for', () => {
    const left = worn(0, [faultOf('presser.left.worn=0.8')])
    expect([tried(left, 1, 1).share, tried(left, -1, 1).share]).toEqual([1, 0])
  })

  test('leaves the card’s own faults out, as each machine has every hole', () => {
    const faults = ['card.blocked.1.5', 'card.reversed', 'pawl.right', 'turn.short.2'].map(faultOf)
    expect(tried(worn(0, faults), 1, 2)).toEqual({ machines: 2, share: 1, error: 0 })
    expect(tried(worn(0, [faultOf('card.side=1.2')]), 1, 2).share).toBe(0)
  })
})
