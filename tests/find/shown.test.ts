import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import type { Fault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { dictionaryOf } from '@/find/dictionary.ts'
import { changedCode, changedSlot, codes, packChange } from '@/find/packed-change.ts'
import { shownByAll } from '@/find/shown.ts'
import { scenarioIn, type View, viewsOf } from '@/find/view.ts'
import { allNeedles, toNeedle } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { firstPasses, randomCard } from './make.ts'

const card = randomCard(5, 12)
const views: View[] = [
  ...viewsOf(
    card,
    [...firstPasses(5, 5, 500), { row: 1, way: -1, speed: 1800 }, { row: 3, way: -1, speed: 90 }],
    usualPlace,
  ),
  ...viewsOf(randomCard(4, 3), [{ row: 2, way: 1, speed: 700 }], usualPlace),
  { card: null, pass: 2, speed: 500, shift: null, ...usualPlace },
  { card: [0], pass: 1, speed: 2000, shift: null, ...usualPlace },
  { card: [0xffffff], pass: 1, speed: 2000, shift: null, ...usualPlace },
]

/** One or two of each kind, in rows, columns, strips and needles that the views look at. */
const ids = [
  ...[
    'card.torn.1.3',
    'card.torn.2.24',
    'card.blocked.1.5',
    'card.blocked.3.9',
    'card.side=1.2',
    'card.skew=0.12',
  ],
  ...[
    'card.reversed',
    'card.locked',
    'pawl.right',
    'pawl.left',
    'pawl.double',
    'turn.short.2',
    'turn.short.4',
  ],
  ...[
    'pin.3.low',
    'pin.24.high',
    'pin.5.over',
    'sweep.worn=0.8',
    'belt.timing=8',
    'belt.timing=-3',
    'belt.slack=2',
  ],
  ...[
    'belt.slack=16',
    'rocker.7.dead',
    'rocker.1.worn=0.8',
    'strip.3.seized',
    'strip.8.over',
    'strip.2.slow=1000',
  ],
  ...[
    'strip.2.slow=100',
    'catch.R3.broken',
    'catch.L100.broken',
    'needle.R9.bent',
    'needle.L1.gone',
    'needle.R100.gone',
  ],
  ...['needle.R9.stiff', 'needle.R10.stiff=10', 'presser.right.worn=0.8', 'presser.left.worn=0.8'],
  ...['gate.1.low=0.5', 'gate.1.high=0.4', 'gate.1.high=0.5'],
]

const bedIn = (view: View, faults: readonly Fault[]): number[] =>
  startRun(scenarioIn(view, faults))
    .passOf(view.pass)
    .came.map((outcome) => codes[outcome])

describe('what a fault shows', () => {
  test.each(ids)(
    '%s, is the bed that the whole model gives, and only what differs from a sound machine',
    (id) => {
      const { entries, settings } = dictionaryOf(views, [faultOf(id)])
      const [{ shown }] = entries as [(typeof entries)[0]]
      for (const [n, view] of views.entries()) {
        const { changed, chance } = shown[n]!
        const sound = settings[n]!.sound.codes
        const bed = [...sound]
        for (const one of changed) bed[changedSlot(one)] = changedCode(one)
        expect(bed.join('')).toBe(bedIn(view, [faultOf(id)]).join(''))
        expect(chance).toBe(0)
        expect([...changed]).toEqual([...changed].sort((one, other) => one - other))
        for (const one of changed) expect(changedCode(one)).not.toBe(sound[changedSlot(one)])
      }
    },
  )

  test('of a worn retainer bar is a chance and no certain needle', () => {
    const bar = dictionaryOf(views, [faultOf('retainer.worn=12')]).entries[0]!
    for (const [n, { changed, chance }] of bar.shown.entries()) {
      expect(changed).toHaveLength(0)
      expect(chance).toBeGreaterThan(0)
      expect(chance).toBeLessThan(1)
      if (views[n]!.speed === 2000) expect(chance).toBeGreaterThan(0.95)
    }
  })
})

describe('what several faults show together', () => {
  test.each([
    [['strip.3.seized', 'belt.timing=8']],
    [['pin.5.over', 'pin.13.low', 'needle.R5.gone']],
    [['card.reversed', 'pawl.right']],
    [['card.torn.1.3', 'gate.1.low=0.5']],
  ])('%j, is the bed that the whole model gives', (together) => {
    const { settings } = dictionaryOf(views, [])
    const faults = together.map(faultOf)
    const shown = shownByAll(faults, allNeedles, settings)
    for (const [n, view] of views.entries()) {
      const bed = [...settings[n]!.sound.codes]
      for (const one of shown[n]!.changed) bed[changedSlot(one)] = changedCode(one)
      expect(bed.join('')).toBe(bedIn(view, faults).join(''))
    }
  })

  test('is looked for on the needles given only', () => {
    const { settings } = dictionaryOf(views, [])
    for (const { changed } of shownByAll([faultOf('gate.1.low=0.5')], [7, 150].map(toNeedle), settings))
      for (const one of changed) expect([7, 150]).toContain(changedSlot(one))
  })
})

test('a change is a needle and how it comes out', () => {
  for (const needle of [0, 1, 102, 199])
    for (const code of [codes.selected, codes.plain, codes.unmoved]) {
      expect(changedSlot(packChange(needle, code))).toBe(needle)
      expect(changedCode(packChange(needle, code))).toBe(code)
    }
})
