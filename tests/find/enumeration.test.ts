import { describe, test } from 'vitest'
import { slips } from '@/find/chances.ts'
import { rightBed, type WideState } from '@/find/wide-states.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { allNeedles, toStrip } from '@/mechanism/indices.ts'
import type { Own } from '@/mechanism/own.ts'
import type { SmallMachine } from './enumeration.ts'
import { expectTheSame, stateOf } from './small-machine.ts'

/** Needles of strip 3 next to one another: R3 is of column 3, R11 of 11, R19 of 19. */
const needles = [102, 110, 118].map((n) => allNeedles[n]!)
const card = [0xffffff, 0, 0x200000, 0x20]
const strip = toStrip(3)

const look = (pass: number, letters: string, speed = 500) => ({ pass, speed, letters })

/** Needles of strip 3 near the left end of the bed: the third on after a push of column 3 is of column 3 again. */
const endNeedles = [6, 14, 22, 30].map((n) => allNeedles[n]!)

describe(
  'the sum over every combination of what a strip, its columns and its needles may be in',
  { timeout: 180_000 },
  () => {
    test.each<[string, SmallMachine['looks'], WideState]>([
      ['nothing wrong', [look(1, 'sss'), look(2, 'ppp')], rightBed],
      ['one needle missed', [look(1, 'sps'), look(1, 'sps', 900)], rightBed],
      ['one of two misses', [look(1, 'sps'), look(1, 'sss', 900)], rightBed],
      ['a strip missed', [look(1, 'ppp'), look(2, 'ppp')], rightBed],
      ['ghosts', [look(3, 'ssp', 900), look(4, 'ppp', 900)], rightBed],
      ['ghosts the other way', [look(4, 'pss', 900), look(2, 'ppp')], rightBed],
      ['everything selected', [look(2, 'sss'), look(3, 'sss')], rightBed],
      ['unmoved', [look(1, 'usu'), look(2, 'upp')], rightBed],
      ['not looked at', [look(1, 's?p'), look(3, '?p?', 900)], rightBed],
      ['a card the wrong way round', [look(3, 'sps', 900), look(4, 'psp')], stateOf('card.reversed')],
    ])('is that of the model itself to nine places: %s', (_, looks, state) => {
      const faults = state.causes.flatMap(({ fault }) => fault ?? [])
      expectTheSame({ card, strip, needles, looks, faults, slip: slips.sure }, state)
    })

    test.each<[FaultId, SmallMachine['looks']]>([
      ['belt.slack=2', [look(3, 'spps', 900)]],
      ['belt.slack=4', [look(3, 'psss', 900)]],
      ['belt.timing=3', [look(3, 'pspp')]],
      ['belt.timing=-3', [look(4, 'spsp', 900)]],
      ['belt.slack=16', [look(3, 'spsp')]],
      ['belt.timing=8', [look(3, 'ssps', 900)]],
      ['belt.timing=-0.9', [look(3, 'pssp'), look(4, 'sspp', 900)]],
      ['belt.timing=0.9', [look(3, 'psps', 900)]],
    ])('is that of the model where the sweep comes at the wrong time, by %s', (id, looks) => {
      const state = stateOf(id)
      const faults = state.causes.flatMap(({ fault }) => fault ?? [])
      expectTheSame({ card, strip, needles: endNeedles, looks, faults, slip: slips.sure }, state)
    })

    test.each<[string, Own, SmallMachine['looks']]>([
      ['wide apart', { pitch: 9 }, [look(3, 'sssp', 900)]],
      ['a light strip', { reach: 0.9, preload: 1.2, letGo: 0.4 }, [look(3, 'sspp', 900)]],
      ['a long way to the gate', { gateLag: 2.2, sweepFlat: 1.6 }, [look(4, 'pssp')]],
      ['butts that come up slowly', { buttReturn: 9 }, [look(1, 'spss', 900)]],
      ['a second gate that lets held butts through', { gate2: 0.8 }, [look(1, 'uuup')]],
      ['a rocker that gives too little', { ratio: 0.6 }, [look(1, 'ppsp')]],
    ])('is that of the model with other dimensions: %s', (_, own, looks) => {
      const machine = { card, strip, needles: endNeedles, looks, faults: [], slip: slips.sure, own }
      expectTheSame(machine, rightBed)
    })

    test.each<[string, Own, FaultId]>([
      ['a low second gate, belt out by eights', { presserLeft: 1.3, gate2: 2 }, 'belt.timing=8'],
      ['a far gate, belt out', { gateLag: 2 }, 'belt.timing=3'],
      ['a narrow wedge, belt one way', { sweepFlat: 1 }, 'belt.timing=-0.7'],
    ])('is that of the model with other dimensions and a belt: %s', (_, own, id) => {
      const state = stateOf(id, own)
      const faults = state.causes.flatMap(({ fault }) => fault ?? [])
      expectTheSame(
        { card, strip, needles: endNeedles, looks: [look(3, 'spsp')], faults, slip: slips.sure, own },
        state,
      )
    })
  },
)
