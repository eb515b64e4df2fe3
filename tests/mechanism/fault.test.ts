import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readNumber, roundNumber } from '@/mechanism/number.ts'
import { faultId, partOfFault, indexKindsOf } from '@/mechanism/fault.ts'
import { contradict } from '@/mechanism/fault-list.ts'
import { readFault, faultOf } from '@/mechanism/read-fault.ts'
import { faultKinds, stages } from '@/mechanism/fault-kinds.ts'
import { faultAmong, kinds } from './arbitraries.ts'
import { check } from './check.ts'

/** Each id of the fault table with what it means. */
const table: readonly (readonly [string, string, readonly number[], number | null, string])[] = [
  ['card.torn.3.12', 'card.torn', [3, 12], null, 'card'],
  ['card.blocked.200.24', 'card.blocked', [200, 24], null, 'card'],
  ['card.side=-1.2', 'card.side', [], -1.2, 'card'],
  ['card.skew=0.12', 'card.skew', [], 0.12, 'card'],
  ['card.reversed', 'card.reversed', [], null, 'card'],
  ['card.locked', 'card.locked', [], null, 'card'],
  ['pawl.right', 'pawl.right', [], null, 'pawl.right'],
  ['pawl.left', 'pawl.left', [], null, 'pawl.left'],
  ['pawl.double', 'pawl.double', [], null, 'pawl'],
  ['turn.short.4', 'turn.short', [4], null, 'turn'],
  ['turn.twice', 'turn.twice', [], null, 'lever'],
  ['pawl.skips.4', 'pawl.skips', [4], null, 'pawl.right'],
  ['pawl.skips.9999', 'pawl.skips', [9999], null, 'pawl.left'],
  ['pawl.jumps.3', 'pawl.jumps', [3], null, 'pawl.left'],
  ['pin.24.sticky=0.35', 'pin.sticky', [24], 0.35, 'pin.24'],
  ['carriage.plain', 'carriage.plain', [], null, 'carriage'],
  ['belt.off', 'belt.off', [], null, 'belt'],
  ['pivots.loose=0.4', 'pivots.loose', [], 0.4, 'pivots'],
  ['pin.1.low', 'pin.low', [1], null, 'pin.1'],
  ['pin.24.high', 'pin.high', [24], null, 'pin.24'],
  ['pin.5.over', 'pin.over', [5], null, 'pin.5'],
  ['sweep.worn=0.4', 'sweep.worn', [], 0.4, 'sweep'],
  ['rocker.5.dead', 'rocker.dead', [5], null, 'rocker.5'],
  ['rocker.5.worn=0.8', 'rocker.worn', [5], 0.8, 'rocker.5'],
  ['strip.3.seized', 'strip.seized', [3], null, 'strip.3'],
  ['strip.8.over', 'strip.over', [8], null, 'strip.8'],
  ['strip.1.slow', 'strip.slow', [1], 300, 'strip.1'],
  ['strip.1.slow=120', 'strip.slow', [1], 120, 'strip.1'],
  ['catch.R3.broken', 'catch.broken', [102], null, 'catch.R3'],
  ['needle.L100.bent', 'needle.bent', [0], null, 'needle.L100'],
  ['needle.R100.gone', 'needle.gone', [199], null, 'needle.R100'],
  ['needle.L1.stiff', 'needle.stiff', [99], 50, 'needle.L1'],
  ['needle.L1.stiff=80', 'needle.stiff', [99], 80, 'needle.L1'],
  ['retainer.worn=12', 'retainer.worn', [], 12, 'retainer'],
  ['presser.right.worn=0.8', 'presser.right.worn', [], 0.8, 'presser.right'],
  ['presser.left.worn=0.8', 'presser.left.worn', [], 0.8, 'presser.left'],
  ['gate.1.low=0.5', 'gate.1.low', [], 0.5, 'gate.1'],
  ['gate.1.high=0.5', 'gate.1.high', [], 0.5, 'gate.1'],
  ['belt.timing=-8', 'belt.timing', [], -8, 'belt'],
  ['belt.slack=2', 'belt.slack', [], 2, 'belt'],
]

describe('an id', () => {
  test.each(table)('%s is %s at %j with %j, in part %s', (id, kind, at, amount, part) => {
    expect(readFault(id)).toEqual({ kind: 'fault', fault: { kind, at, amount }, remark: null })
    expect(faultId(faultOf(id))).toBe(id)
    expect(partOfFault(faultOf(id))).toBe(part)
  })

  test('is there for each kind', () => {
    expect(new Set(table.map(([, kind]) => kind))).toEqual(new Set(kinds))
  })

  test('of any fault leads back to that fault', () => {
    check(
      fc.property(faultAmong(kinds), (any) => {
        expect(readFault(faultId(any))).toEqual({ kind: 'fault', fault: any, remark: null })
      }),
      1000,
    )
  })

  test.each([
    ['strip.3.slow=300', 'strip.3.slow'],
    ['needle.R3.stiff=50.00001', 'needle.R3.stiff'],
    ['card.side=+1.20', 'card.side=1.2'],
    ['card.side=.5', 'card.side=0.5'],
    ['card.side=-0', 'card.side=0'],
    ['sweep.worn=1.', 'sweep.worn=1'],
    ['gate.1.low=0.123456', 'gate.1.low=0.1235'],
  ])('%s has the one form %s', (id, form) => {
    expect(faultId(faultOf(id))).toBe(form)
  })

  test.each([
    ['sweep.worn=9', 3],
    ['sweep.worn=-1', 0],
    ['card.side=-77', -5],
    ['strip.3.slow=0', 1],
    ['strip.3.slow=99999999', 5000],
    ['belt.timing=1000', 96],
    ['pivots.loose=1', 0.6],
    ['pivots.loose=0', 0.05],
    ['pin.3.sticky=1', 0.95],
  ])('%s is brought to %d, with a remark', (id, amount) => {
    const reading = readFault(id)
    expect(reading).toMatchObject({
      kind: 'fault',
      fault: { amount },
      remark: expect.stringContaining(String(amount)) as string,
    })
  })

  test.each([
    ['nonsense', 'no such fault'],
    ['', 'its name is missing'],
    ['pin.3.5.low', 'no column 3.5'],
    ['pin..low', 'no column is named'],
    ['strip.3', 'no such fault'],
    ['strip.3.seized.now', 'no such fault'],
    ['strip.9.seized', '1 to 8'],
    ['strip.0.seized', '1 to 8'],
    ['strip.03.seized', '1 to 8'],
    ['pin.25.low', '1 to 24'],
    ['pin.x.low', '1 to 24'],
    ['card.torn.201.1', '1 to 200'],
    ['turn.short.1', '2 to 9999'],
    ['catch.R101.broken', 'L100 to R100'],
    ['needle.5.bent', 'L100 to R100'],
    ['card.locked=1', 'no number'],
    ['sweep.worn', 'sweep.worn=0.8'],
    ['sweep.worn=', 'the number is missing'],
    ['sweep.worn=1e3', 'not a number'],
    ['sweep.worn=0,5', 'not a number'],
    ['sweep.worn=0.5=0.6', 'not a number'],
    ['constructor', 'no such fault'],
    ['__proto__', 'no such fault'],
  ])('“%s” is no fault, and the reason says so: %s', (id, words) => {
    const reading = readFault(id)
    expect(reading).toEqual({ kind: 'refused', reason: expect.stringContaining(words) as string })
  })

  test('that is written wrong in the code is refused there, with its name and the reason', () => {
    expect(() => faultOf('strip.9.seized')).toThrow(RangeError)
    expect(() => faultOf('strip.9.seized')).toThrow(/^strip\.9\.seized: \S/)
  })

  test('however hostile never throws, and is refused or read to a fault within its range', () => {
    const words = fc.constantFrom(
      ...kinds.flatMap((kind) => faultKinds[kind].pattern.split('.')),
      'toString',
      '',
    )
    const numbers = fc.constantFrom(
      '1',
      '0',
      '-1',
      '24',
      '1e9',
      'R1',
      'L0',
      'NaN',
      'Infinity',
      '9'.repeat(400),
      '０',
    )
    const like = fc
      .tuple(fc.array(fc.oneof(words, numbers), { maxLength: 6 }), fc.constantFrom('', '=', '=='), numbers)
      .map(([parts, equals, amount]) => parts.join('.') + equals + (equals ? amount : ''))
    check(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), like), (id) => {
        const reading = readFault(id)
        if (reading.kind === 'refused') expect(reading.reason).not.toBe('')
        else expect(readFault(faultId(reading.fault))).toEqual({ ...reading, remark: null })
      }),
      3000,
    )
  })
})

test.each([
  ['1.23456', 1.2346],
  ['-0.00004', 0],
  ['7', 7],
  ['', null],
  ['.', null],
  ['0x10', null],
  ['NaN', null],
  [' 1', null],
])('the number “%s” is read as %j', (text, value) => {
  expect(readNumber(text)).toBe(value)
})

test('numbers are rounded to four decimals', () => {
  expect(roundNumber(0.123449)).toBe(0.1234)
  expect(Object.is(roundNumber(-0.00001), 0)).toBe(true)
})

test.each([
  ['pin.5.low', 'pin.5.high', true],
  ['pin.5.low', 'pin.6.high', false],
  ['pin.5.low', 'pin.5.over', false],
  ['strip.3.seized', 'strip.3.slow', true],
  ['rocker.3.dead', 'rocker.3.worn=1', true],
  ['card.torn.1.2', 'card.blocked.1.2', true],
  ['card.torn.1.2', 'card.blocked.2.1', false],
  ['card.side=1', 'card.side=0.5', true],
  ['card.side=1', 'card.skew=0.5', false],
  ['gate.1.low=0.5', 'gate.1.high=0.5', true],
  ['presser.right.worn=1', 'presser.left.worn=1', false],
  ['turn.short.2', 'turn.short.3', false],
  ['catch.R3.broken', 'needle.R3.bent', false],
  ['needle.R3.gone', 'needle.R3.bent', true],
  ['needle.R3.gone', 'needle.R3.stiff', true],
  ['needle.R3.bent', 'needle.R3.stiff', false],
])('%s and %s contradict each other: %j', (one, other, does) => {
  expect(contradict(faultOf(one), faultOf(other))).toBe(does)
  expect(contradict(faultOf(other), faultOf(one))).toBe(does)
})

test('each kind belongs to a stage of the chain and is in the chain’s order', () => {
  const order = kinds.map((kind) => stages.indexOf(faultKinds[kind].stage))
  expect(order).toEqual([...order].sort((a, b) => a - b))
  expect(Math.min(...order)).toBe(0)
})

test('places are named in the order of the pattern', () => {
  expect(indexKindsOf('card.torn')).toEqual(['row', 'column'])
  expect(indexKindsOf('needle.bent')).toEqual(['needle'])
  expect(indexKindsOf('gate.1.low')).toEqual([])
})
