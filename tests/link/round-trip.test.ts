import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { read } from '@/link/read.ts'
import { write } from '@/link/write.ts'
import { states } from './arbitraries.ts'
import { library } from './library.ts'
import { mutated } from './mutated.ts'

const order = ['card', 'pass', 'at', 'break', 'speed', 'wear', 'seed', 'needles', 'first', 'own', 'note']

describe('writing and reading', () => {
  test('gives every state back as it was, with nothing to say', () => {
    fc.assert(
      fc.property(states, (state) => {
        expect(read(write(state, library), library)).toEqual({ state, troubles: [] })
      }),
      { numRuns: 600 },
    )
  })

  test('gives the same state from the canonical text of whatever was read', () => {
    fc.assert(
      fc.property(mutated, (text) => {
        const { state } = read(text, library)
        const canonical = write(state, library)
        const again = read(canonical, library)
        expect(again).toEqual({ state, troubles: [] })
        expect(write(again.state, library)).toBe(canonical)
      }),
      { numRuns: 2000 },
    )
  })

  test('puts the keys in their order, each once but for the faults, which it sorts', () => {
    fc.assert(
      fc.property(states, (state) => {
        const pairs = [...new URLSearchParams(write(state, library))]
        const places = pairs.map(([key]) => order.indexOf(key))
        expect(places).toEqual(places.toSorted((one, other) => one - other))
        const single = pairs.map(([key]) => key).filter((key) => key !== 'break')
        expect(new Set(single).size).toBe(single.length)
        const faults = pairs.filter(([key]) => key === 'break').map(([, id]) => id)
        expect(faults).toEqual(faults.toSorted())
      }),
    )
  })

  test('does not depend on the order of the faults', () => {
    fc.assert(
      fc.property(states, (state) => {
        const turned = { ...state, faults: state.faults.toReversed() }
        expect(write(turned, library)).toBe(write(state, library))
      }),
    )
  })

  test('needs no change to stand after # in an address', () => {
    fc.assert(
      fc.property(states, (state) => {
        const text = write(state, library)
        expect(new URL(`https://example.org/page#${text}`).hash.slice(1)).toBe(text)
        expect(text).toMatch(/^[\w.*+%=&-]*$/)
      }),
    )
  })
})
