import { describe, expect, test } from 'vitest'
import { dimensions } from '@/mechanism/dimensions.ts'
import { type Bed, toBed, wholeBed, withinPass } from '@/mechanism/bed.ts'
import { holeKey } from '@/mechanism/states.ts'
import type { Condition } from '@/mechanism/condition.ts'
import { contradict } from '@/mechanism/fault-list.ts'
import { readFault, faultOf } from '@/mechanism/read-fault.ts'
import { readNumber } from '@/mechanism/number.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { askedRow, hasKnitted, knittedRow, longestFloat, type Stitch } from '@/mechanism/fabric.ts'
import { buttReturnOf, freeHeight, heldHeight } from '@/mechanism/gate.ts'
import { catchDepthOf, dipOf, dipsEnough } from '@/mechanism/hold.ts'
import { oilOf, sharedOil, withOil } from '@/mechanism/oil.ts'
import { holeNow, holePunched, pinHeight } from '@/mechanism/pin.ts'
import { normalDraw } from '@/mechanism/random.ts'
import { pinPush } from '@/mechanism/drive.ts'
import { leavingPoint } from '@/mechanism/release.ts'
import { stripShift } from '@/mechanism/strip.ts'
import { scatter } from '@/mechanism/wear.ts'
import { allColumns, rowsOf, toCardRow, toColumn, toNeedle, toStrip } from '@/mechanism/indices.ts'
import { count, machine } from './make.ts'
import { rowWith } from './trade.ts'

describe('each part of a worn machine has an error of its own draw', () => {
  const [wear, seed] = [0.8, 42]
  const { condition } = machine([0xffffff], ['retainer.worn=12'], { wear, seed })

  test('a pin’s height, up or down', () => {
    for (const column of [1, 7, 24]) {
      const error = (0.03 + 0.12 * wear) * normalDraw(seed, 'pin', column - 1)
      expect(pinHeight(condition, { row: null, raised: 1 }, toColumn(column))).toBeCloseTo(3 + error, 12)
      expect(condition.pinError[column - 1]).toBeCloseTo(error, 12)
    }
  })

  test('a rocker’s lost motion, which is never less than none', () => {
    for (const column of [1, 7, 24])
      expect(condition.lost[column - 1]).toBeCloseTo(
        0.2 + 0.45 * wear + (0.02 + 0.08 * wear) * normalDraw(seed, 'lost', column - 1),
        12,
      )
    for (const other of count(1, 50))
      for (const lost of machine(null, [], { wear: 0.01, seed: other }).condition.lost)
        expect(lost).toBeGreaterThanOrEqual(0)
  })

  test('a catch’s depth and a butt’s height', () => {
    for (const needle of [0, 57, 199]) {
      const butt = (0.02 + 0.05 * wear) * normalDraw(seed, 'butt', needle)
      const hook = (0.02 + 0.05 * wear) * normalDraw(seed, 'catch', needle)
      expect(catchDepthOf(condition, toNeedle(needle))).toBeCloseTo(0.9 + hook, 12)
      expect(heldHeight(condition, toNeedle(needle))).toBeCloseTo(butt - 0.9 - hook, 12)
      expect(dipOf(condition, toNeedle(needle), 1)).toBeCloseTo(1.5 - 0.35 * wear + butt, 12)
      expect(freeHeight(condition, toNeedle(needle), -1, 2, 2)).toBeCloseTo(
        butt - (1.5 - 0.35 * wear + butt) * Math.exp(-1),
        12,
      )
    }
  })

  test('a butt’s time under a worn retainer bar, in each pass', () => {
    for (const pass of [1, 2, 9])
      expect(buttReturnOf(condition, toNeedle(31), pass)).toBeCloseTo(
        12 * Math.exp(0.5 * normalDraw(seed, 'retainer', 31, pass)),
        10,
      )
  })

  test('and none at all as new', () => {
    const { pinError, catchError, buttError, lost, pawlDead } = machine([0], [], { seed }).condition
    expect(pinError).toEqual(new Float64Array(24))
    expect(catchError).toEqual(new Float64Array(200))
    expect(buttError).toEqual(new Float64Array(200))
    expect(new Set(lost)).toEqual(new Set([0.2]))
    expect(pawlDead).toEqual({ right: false, left: false })
    expect(scatter(0)).toEqual({ pin: 0, lost: 0, catch: 0, butt: 0 })
  })
})

describe('a fault with an amount', () => {
  const sound = machine([0]).condition
  test.each<[string, (condition: Condition) => number, number]>([
    ['card.side=1.2', ({ cardSide }) => cardSide, 1.2],
    ['card.side=-1.2', ({ cardSide }) => cardSide, -1.2],
    ['card.skew=0.1', ({ cardSkew }) => cardSkew, 0.1],
    ['sweep.worn=0.4', ({ sweepEdge }) => sweepEdge, 0.4],
    ['belt.timing=-3', ({ timing }) => timing, -3],
    ['belt.slack=2', ({ slack }) => slack, 2],
    ['rocker.5.worn=0.3', ({ lost }) => lost[4]!, 0.3],
    ['presser.right.worn=0.3', ({ presser }) => presser.right, -0.3],
    ['presser.left.worn=0.3', ({ presser }) => presser.left, -0.3],
    ['gate.1.low=0.3', ({ gate1 }) => gate1, 0.3],
    ['gate.1.high=0.3', ({ gate1 }) => gate1, -0.3],
  ])('%s moves its part by so much', (id, part, by) => {
    expect(part(machine([0], [id]).condition) - part(sound)).toBeCloseTo(by, 12)
  })

  test('out of its range is brought within it, and the remark says which, with its unit', () => {
    const remark = (id: string): unknown => ('remark' in readFault(id) ? readFault(id) : null)
    expect(remark('sweep.worn=9')).toMatchObject({ remark: '9 is outside 0 to 3 mm, so 3 is used' })
    expect(remark('card.skew=-2')).toMatchObject({
      remark: '-2 is outside -1 to 1 mm a column, so -1 is used',
    })
    expect(remark('strip.3.slow=0')).toMatchObject({ remark: '0 is outside 1 to 5000 ms, so 1 is used' })
    expect(remark('belt.slack=25')).toMatchObject({ remark: '25 is outside 0 to 24 needles, so 24 is used' })
  })

  test('is read with as many decimals as are written, to four', () => {
    expect([readNumber('.25'), readNumber('.123456'), readNumber('5.'), readNumber('-.5')]).toEqual([
      0.25, 0.1235, 5, -0.5,
    ])
  })

  test('contradicts only a fault of the same place', () => {
    expect(contradict(faultOf('strip.3.slow'), faultOf('strip.3.over'))).toBe(true)
    expect(contradict(faultOf('strip.3.slow'), faultOf('strip.4.over'))).toBe(false)
    expect(contradict(faultOf('card.torn.2.3'), faultOf('card.blocked.2.4'))).toBe(false)
  })
})

describe('a hole', () => {
  test('has a key of its own in each row and column', () => {
    const keys = rowsOf(200).flatMap((row) => allColumns.map((column) => holeKey(row, column)))
    expect(new Set(keys).size).toBe(200 * 24)
  })

  test('is over every pin without a row, and over none where there is no card to look at', () => {
    const first = toCardRow(1, 1)
    expect(holePunched(machine([0]).condition, null, toColumn(5))).toBe(true)
    expect(holePunched(machine([0]).condition, first, toColumn(5))).toBe(false)
    expect(holeNow(machine(null).condition, first, toColumn(5))).toBe(false)
    expect(holeNow(machine(null, ['card.torn.1.5']).condition, first, toColumn(5))).toBe(true)
  })
})

test('a place is brought within the turn marks of its pass', () => {
  const bed = { first: 90, last: 109 }
  for (const pass of [1, 2])
    expect([-500, 78, 100, 121, 500].map((x) => withinPass(x, pass, toBed(bed)))).toEqual([
      78, 78, 100, 121, 121,
    ])
})

test('a presser that dips a butt just to its catch still dips it enough', () => {
  const { condition } = machine([0xffffff], ['presser.right.worn=0.6'])
  expect(dipOf(condition, toNeedle(102), 1)).toBe(0.9)
  expect(dipsEnough(condition, toNeedle(102), 1)).toBe(true)
})

describe('a held butt', () => {
  const height = (since: number, faults: readonly string[] = [], speed = 500, wear = 0): number =>
    frameAt(machine([0xffffff], faults, { speed, wear }), 1, 102 + since).buttHeights[102]!

  test('springs back to rest behind the gates', () => {
    // Sorted at 8.5 needles; half a needle is 4.5 ms at 500 mm/s.
    expect(height(8.5)).toBeCloseTo(-0.9, 12)
    expect(height(9)).toBeCloseTo(-0.9 * Math.exp(-4.5 / 2), 12)
    expect(height(20)).toBeCloseTo(0, 9)
  })

  test('springs back to its own rest where it is worn', () => {
    const run = machine([0xffffff], [], { wear: 0.3, seed: 5 })
    const [rest, held] = [run.condition.buttError[102]!, heldHeight(run.condition, toNeedle(102))]
    expect(run.passOf(1).keptFor[102]).toBe(Infinity)
    expect(frameAt(run, 1, 102 + 9).buttHeights[102]).toBeCloseTo(
      rest + (held - rest) * Math.exp(-4.5 / 2),
      9,
    )
  })

  test('so stiff that it has not come up to its catch stays where it is on its way', () => {
    expect(height(3, ['needle.R3.stiff=500'])).toBeCloseTo(-1.5 * Math.exp(-27 / 500), 12)
    expect(height(3, ['needle.R3.stiff=20'])).toBeCloseTo(-0.9, 12)
  })
})

describe('halfway along a cam', () => {
  const at = (since: number, card: number, pass = 1) =>
    frameAt(machine([card]), pass, 102 + (pass === 1 ? since : -since))

  test('the presser has dipped a butt by half', () => {
    expect(at(-1.75, 0).buttHeights[102]).toBeCloseTo(-0.75, 12)
    expect(at(-2.5, 0).buttHeights[102]).toBeCloseTo(0, 12)
    expect(at(-1, 0).buttHeights[102]).toBeCloseTo(-1.5, 12)
  })

  test('each gate has moved its needle by half', () => {
    expect(at(2.6, 0).needleTravels[102]).toBeCloseTo(-1.5, 12)
    expect(at(3.6, 0).needleTravels[102]).toBeCloseTo(-3, 12)
    expect(at(6.5, 0xffffff).needleTravels[102]).toBeCloseTo(3.25, 12)
    expect(at(8.5, 0xffffff).needleTravels[102]).toBeCloseTo(6.5, 12)
  })

  test('the leading cams have brought a needle back by half', () => {
    expect(at(-4.5, 0xffffff, 2).needleTravels[102]).toBeCloseTo(3.25, 12)
    expect(at(-4.5, 0, 2).needleTravels[102]).toBeCloseTo(-1.5, 12)
    expect(at(-6.5, 0xffffff, 2).needleTravels[102]).toBeCloseTo(6.5, 12)
  })
})

test('a needle that no cam moved stays on the line, in its pass and in the next', () => {
  const run = machine([0xffffff], ['needle.R3.gone'])
  for (const pass of [1, 2])
    for (const x of [90, 100, 102, 105, 106, 110, 120]) {
      expect(Math.abs(frameAt(run, pass, x).needleTravels[102]!)).toBe(0)
    }
})

describe('where a strip leaves its rocker', () => {
  test.each([
    [1, 0.2, 5],
    [0.6, 0.3, 5],
    [0.4, 0.1, 20],
    [0.9, 0.7, 3],
  ])(
    'its spring follows just as fast as the push falls: amplitude %d, lost %d, decay %d',
    (amplitude, lost, decay) => {
      const at = leavingPoint(dimensions, amplitude, lost, decay)
      const out = (v: number): number => amplitude * (1 + Math.cos((Math.PI * (v - 1.2)) / 0.9)) - lost
      const falls = (out(at + 1e-6) - out(at - 1e-6)) / 2e-6
      expect(falls).toBeCloseTo(-(out(at) + 0.6) / decay, 6)
      expect(at).toBeGreaterThan(1.2)
      expect(at).toBeLessThan(2.1)
    },
  )

  test('is nowhere where the spring always follows, or nothing is pushed', () => {
    expect(leavingPoint(dimensions, 1, 0.2, 0.01)).toBe(Infinity)
    for (const lost of [0.2, 0.6, 0.9]) {
      expect(leavingPoint(dimensions, 0, lost, 5)).toBe(Infinity)
      expect(leavingPoint(dimensions, -1, lost, 5)).toBe(Infinity)
    }
  })
})

describe('a pin without its spring', () => {
  const push = (x: number, card: readonly number[] = [rowWith(3)], bed = wholeBed) => {
    const run = machine(card, ['pin.3.over'], { bed })
    const { drive } = run.passOf(1)
    return pinPush(run.condition, drive, drive.drives[2]!, x)
  }

  test('keeps the most that it was pushed from the middle on, and says so', () => {
    expect(push(-10).push).toBe(0)
    expect(push(-10).kept).toBe(false)
    // The middle of the sweep first passes pin 3 0.8 needles beyond L94, and then every 24 needles.
    expect(push(5.2)).toEqual({
      push: expect.closeTo(1 + Math.cos((Math.PI * 0.4) / 0.9), 12) as number,
      kept: false,
    })
    expect(push(6)).toEqual({ push: 2, kept: false })
    expect(push(8.5)).toEqual({ push: 2, kept: true })
    expect(push(20)).toEqual({ push: 2, kept: true })
    expect(push(30)).toEqual({ push: 2, kept: false })
  })

  test('under no hole is not pushed, and keeps nothing', () => {
    expect(push(20, [0])).toEqual({ push: 0, kept: false })
  })

  test('that the sweep stands beside as the pass begins keeps what it has there', () => {
    // From R17 on the pass begins at R5: the sweep's middle is 1.2 needles past pin 3, and it goes on from there.
    const bed = { first: 116, last: 141 }
    const from = (x: number) => push(x, [rowWith(3)], toBed(bed))
    const begun = 1.2
    const share = 1 + Math.cos((Math.PI * (begun - 1.2)) / 0.9)
    expect(from(104)).toEqual({ push: expect.closeTo(share, 12) as number, kept: false })
    // From R18 on it begins one needle further, on the ramp behind the flat.
    const later = (x: number) => push(x, [rowWith(3)], toBed({ first: 117, last: 142 }))
    const rest = 1 + Math.cos((Math.PI * Math.min(0.9, 2.2 - 1.2)) / 0.9)
    expect(later(105).push).toBeCloseTo(rest, 12)
    expect(from(106)).toEqual({ push: expect.closeTo(share, 12) as number, kept: true })
    expect(from(120)).toEqual({ push: expect.closeTo(share, 12) as number, kept: true })
    expect(from(127)).toEqual({ push: 2, kept: false })
  })
})

describe('a slow strip', () => {
  const preload = 0.6
  const decay = (300 * 500) / (1000 * 4.5)
  const shift = (x: number, bed: Bed): number => {
    const run = machine([rowWith(3)], ['strip.3.slow'], { bed })
    return stripShift(run.condition, run.passOf(1).drive, toStrip(3), x)
  }

  test('that is let go as the pass begins falls from where it was then', () => {
    // The pass begins with the belt 0.5 needles early and the sweep so 1.7 needles past pin 3, on the wedge's ramp.
    const bed = toBed({ first: 116, last: 141 })
    const run = machine([rowWith(3)], ['strip.3.slow', 'belt.timing=0.5'], { bed })
    const at = (x: number): number => stripShift(run.condition, run.passOf(1).drive, toStrip(3), x)
    const out = 1 + Math.cos((Math.PI * 0.5) / 0.9) - 0.2
    expect(at(104)).toBeCloseTo(out, 12)
    for (const on of [2, 5, 8])
      expect(at(104 + on)).toBeCloseTo(Math.max(0, (out + preload) * Math.exp(-on / decay) - preload), 12)
  })

  test('falls from where it left its rocker, however many needles on', () => {
    const bed = { first: 0, last: 199 }
    const at = leavingPoint(dimensions, 1, 0.2, decay)
    const left = 1 + Math.cos((Math.PI * (at - 1.2)) / 0.9) - 0.2
    for (const on of [3, 11, 13, 20])
      expect(shift(102.8 + on, toBed(bed))).toBeCloseTo(
        Math.max(0, (left + preload) * Math.exp(-(on - at) / decay) - preload),
        12,
      )
  })

  test('is not yet pushed by a pin that the sweep will come to', () => {
    expect(shift(-10, { first: toNeedle(0), last: toNeedle(199) })).toBe(0)
    expect(shift(91, { first: toNeedle(103), last: toNeedle(140) })).toBe(0)
  })
})

describe('oil that strips have in common', () => {
  const over = count(1, 7).map((strip) => faultOf(`strip.${strip}.over`))

  test('is none where one strip alone can move', () => {
    expect(sharedOil([...over, faultOf('strip.8.slow=100')])).toEqual([])
    expect(oilOf([...over, faultOf('strip.8.slow=100')], 4)).toBe(100)
  })

  test('is that of the two that can move, whatever sits fast', () => {
    const slow = ['strip.7.slow=100', 'strip.8.slow=100'].map(faultOf)
    expect(sharedOil([...over.slice(0, 6), ...slow])).toEqual(slow)
    expect(withOil(over, 100, 4)).toEqual([...over, faultOf('strip.8.slow=100')])
  })

  test('is fresh where no strip can move', () => {
    expect(
      oilOf(
        count(1, 8).map((strip) => faultOf(`strip.${strip}.seized`)),
        4,
      ),
    ).toBe(4)
    expect(
      oilOf(
        count(1, 8).map((strip) => faultOf(`strip.${strip}.over`)),
        4,
      ),
    ).toBe(4)
  })

  test('is each strip’s own', () => {
    expect(
      oilOf(
        count(1, 8).map((strip) => faultOf(`strip.${strip}.slow=${100 * strip}`)),
        4,
      ),
    ).toBe(100)
    expect(
      oilOf(
        count(2, 8).map((strip) => faultOf(`strip.${strip}.slow=${100 * strip}`)),
        4,
      ),
    ).toBe(4)
  })
})

describe('a row of fabric', () => {
  test('is computed once for a run and a pass', () => {
    const run = machine([0xa53c96])
    expect(knittedRow(run, 2)).toBe(knittedRow(run, 2))
    expect(askedRow(run, 2)).toBe(askedRow(run, 2))
    expect(knittedRow(run, 3)).not.toBe(knittedRow(run, 2))
    expect(knittedRow(machine([0xa53c96]), 2)).not.toBe(knittedRow(run, 2))
  })

  test('has a stitch as soon as the presser’s ramp is at its needle', () => {
    expect([99.4, 99.5, 99.6].map((x) => hasKnitted(x, toNeedle(102), 1))).toEqual([false, true, true])
    expect([104.6, 104.5, 104.4].map((x) => hasKnitted(x, toNeedle(102), -1))).toEqual([false, true, true])
  })

  test('has as its longest float the first of equals', () => {
    const row = Array.from({ length: 200 }, (_, n): Stitch => ('o--o-o--o'[n] === 'o' ? 'second' : 'first'))
    expect(longestFloat([row])).toEqual({ yarn: 'second', first: 1, last: 2 })
    expect(longestFloat([row, row])).toEqual({ yarn: 'second', first: 1, last: 2 })
  })
})

describe('the card is to blame', () => {
  const partAt = (card: readonly number[], faults: readonly string[], pass: number): string | undefined =>
    machine(card, faults)
      .passOf(pass)
      .departures.find(({ needle }) => needle === 102)?.part

  test('for its own hole, where a pawl’s two steps bring the row due all the same', () => {
    expect(partAt([0xffffff], ['pawl.double', 'card.blocked.1.3'], 2)).toBe('card')
    expect(partAt([0, 0xffffff], ['pawl.double'], 2)).toBe('pawl')
  })

  test('no more than the turn that was short of the mark, where that turn’s pawl is dead too', () => {
    expect(partAt([0, 0xffffff, 0], ['turn.short.2', 'pawl.right'], 2)).toBe('turn')
    expect(partAt([0, 0, 0xffffff], ['turn.short.9', 'pawl.left'], 3)).toBe('pawl.left')
    expect(partAt([0, 0xffffff, 0], ['turn.short.9', 'pawl.right'], 2)).toBe('pawl.right')
  })
})
