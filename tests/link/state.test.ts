import { describe, expect, test } from 'vitest'
import { rowsOf, scenarioOf, type State } from '@/link/state.ts'
import { defaultState } from '@/link/read.ts'
import { library } from './library.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'

const main = [0x28a02a, 0xffffff, 0, 0x123456]

describe('the card of a state', () => {
  test.each<[string, State['card'], number[] | null]>([
    ['a card of the site', { kind: 'site', id: 'two-rows' }, [0xf0f0f0, 0x0f0f0f]],
    ['a card that the site lacks, for which the main card is used', { kind: 'site', id: 'gone' }, main],
    ['a card of its own', { kind: 'own', rows: [1, 2, 3] }, [1, 2, 3]],
    ['no card', { kind: 'none' }, null],
  ])('may be %s', (_, choice, rows) => expect(rowsOf(choice, library)).toEqual(rows))

  test('is none in a library without cards', () => {
    expect(rowsOf({ kind: 'site', id: 'main' }, { main: 'main', cards: new Map() })).toBeNull()
  })
})

describe('the scenario of a state', () => {
  test('holds all that the machine depends on, and neither pass, place nor note', () => {
    const state: State = {
      ...defaultState(library),
      faults: [faultOf('pin.4.low')],
      speed: 700,
      wear: 0.5,
      seed: 12,
      bed: { first: toNeedle(50), last: toNeedle(60) },
      columnOne: toNeedle(112),
      own: { pitch: 5 },
    }
    const scenario = {
      card: main,
      faults: [faultOf('pin.4.low')],
      speed: 700,
      wear: 0.5,
      seed: 12,
      bed: { first: 50, last: 60 },
      columnOne: 112,
      own: { pitch: 5 },
    }
    expect(scenarioOf(state, library)).toEqual(scenario)
    expect(scenarioOf({ ...state, pass: 9, at: 100, note: 'Hello' }, library)).toEqual(scenario)
  })
})
