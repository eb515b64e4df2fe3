import { toBed } from '@/mechanism/bed.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { describe, expect, test } from 'vitest'
import { defaultState, read } from '@/link/read.ts'
import type { State } from '@/link/state.ts'
import { write } from '@/link/write.ts'
import { library } from './library.ts'

const usual = defaultState(library)

describe('the canonical text', () => {
  test('of the usual state is empty', () => expect(write(usual, library)).toBe(''))

  test.each<[string, Partial<State>]>([
    ['card=two-rows', { card: { kind: 'site', id: 'two-rows' } }],
    ['card=none', { card: { kind: 'none' } }],
    ['card=x.AAAB____', { card: { kind: 'own', rows: [1, 0xffffff] } }],
    ['pass=3', { pass: 3 }],
    ['at=R12.5', { at: 111.5 }],
    ['pass=2&at=L112', { pass: 2 }],
    ['pass=2', { pass: 2, at: 211 }],
    ['break=gate.1.low%3D0.5', { faults: [faultOf('gate.1.low=0.5')] }],
    ['break=strip.2.slow', { faults: [faultOf('strip.2.slow=300')] }],
    ['speed=2000', { speed: 2000 }],
    ['wear=0.35', { wear: 0.35 }],
    ['seed=0', { seed: 0 }],
    ['at=L112&needles=L24-R24', { bed: toBed({ first: 76, last: 123 }) }],
    ['first=R13', { columnOne: toNeedle(112) }],
    ['needles=L24-R24', { bed: toBed({ first: 76, last: 123 }), at: 64 }],
    ['note=a%26b%3Dc+%2B+%23', { note: 'a&b=c + #' }],
  ])('%s says only what differs', (text, change) => {
    expect(write({ ...usual, ...change }, library)).toBe(text)
  })

  test.each<[string, Partial<State>]>([
    ['', { at: -12 + 1e-9 }],
    ['at=L1', { at: 99.00000001 }],
    ['', { speed: 500.000001 }],
    ['', { wear: 1e-9 }],
    ['wear=0.3333', { wear: 1 / 3 }],
    ['wear=1', { wear: 0.99999 }],
  ])('“%s” keeps four decimals of what a hand or a slider gave', (text, change) => {
    expect(write({ ...usual, ...change }, library)).toBe(text)
    expect(read(text, library).troubles).toEqual([])
  })
})
