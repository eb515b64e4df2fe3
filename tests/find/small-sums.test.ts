import { describe, test } from 'vitest'
import { slips } from '@/find/chances.ts'
import { rightBed } from '@/find/wide-states.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { allNeedles, toStrip } from '@/mechanism/indices.ts'
import type { Own } from '@/mechanism/own.ts'
import { expectTheSame, stateOf } from './small-machine.ts'

/** Needles of strip 3: two in the middle of the bed, of columns 3 and 11, and the leftmost of all three columns. */
const middle = [102, 110].map((n) => allNeedles[n]!)
const end = [6, 14, 22].map((n) => allNeedles[n]!)
const card = [0xffffff, 0, 0x200000, 0x20]
const machine = { card, strip: toStrip(3), slip: slips.rough }

// One look each, so that all combinations are run in a fraction of a second: enumeration.test.ts has two.
describe('the sum over every combination, for one look at a few needles', () => {
  test.each<[string, number, number, string]>([
    ['all as it should be', 1, 500, 'ss'],
    ['a needle missed, another unmoved', 1, 900, 'pu'],
    ['a ghost', 3, 900, 'ss'],
  ])('is that of the model in the middle of the bed: %s', (_, pass, speed, letters) => {
    expectTheSame({ ...machine, needles: middle, looks: [{ pass, speed, letters }], faults: [] }, rightBed)
  })

  test.each<[string, number, number, string]>([
    ['ghosts to the right', 3, 900, 'ssp'],
    ['ghosts to the left', 4, 900, 'pss'],
  ])('is that of the model at an end of it: %s', (_, pass, speed, letters) => {
    expectTheSame({ ...machine, needles: end, looks: [{ pass, speed, letters }], faults: [] }, rightBed)
  })

  test.each<[FaultId, number, string]>([
    ['belt.slack=16', 3, 'sps'],
    ['belt.timing=-3', 4, 'psp'],
    ['card.reversed', 3, 'ps?'],
  ])('is that of the model with %s', (id, pass, letters) => {
    const state = stateOf(id)
    const faults = state.causes.flatMap(({ fault }) => fault ?? [])
    expectTheSame({ ...machine, needles: end, looks: [{ pass, speed: 500, letters }], faults }, state)
  })

  test.each<[string, Own, string]>([
    ['a light strip and a slow butt', { reach: 0.9, preload: 1.2, letGo: 0.4, buttReturn: 9 }, 'ssp'],
    ['a rocker that gives too little', { ratio: 0.6 }, 'psp'],
  ])('is that of the model with other dimensions: %s', (_, own, letters) => {
    const looks = [{ pass: 3, speed: 900, letters }]
    expectTheSame({ ...machine, needles: end, looks, faults: [], own }, rightBed)
  })
})
