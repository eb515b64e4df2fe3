import { describe, expect, test } from 'vitest'
import { stateSumsOf } from '@/find/bed-sums.ts'
import { pivotChances, readerChances, readers, retainerChances, slips, wearChances } from '@/find/chances.ts'
import { weighingOf } from '@/find/hidden.ts'
import { logSum } from '@/find/log-sum.ts'
import { looksOf } from '@/find/looks.ts'
import { oilStates } from '@/find/oil-states.ts'
import type { Query } from '@/find/query.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, rightBed, type WideState } from '@/find/wide-states.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { allNeedles, toStrip } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { enumerated, type SmallMachine } from './enumeration.ts'

/** Holes in columns 3, 4 and 12: a slow strip shows ghosts at its next needle. */
const card = [0x301000]
const look = { pass: 1, speed: 900 }

/** Needles of two strips next to one another, one of each column: R3, R11, R19 of strip 3, R4, R12, R20 of strip 4. */
const strips = [
  { strip: toStrip(3), needles: [102, 110, 118].map((n) => allNeedles[n]!) },
  { strip: toStrip(4), needles: [103, 111, 119].map((n) => allNeedles[n]!) },
]

/** What was noted of them, by strip; nothing was of any other needle. */
type Noted = readonly [third: string, fourth: string]

const smallMachine = (noted: Noted, nth: number, faults: readonly Fault[]): SmallMachine => ({
  card,
  ...strips[nth]!,
  looks: [{ ...look, letters: noted[nth]! }],
  faults,
  slip: slips.sure,
})

const queryOf = (noted: Noted): Query => ({
  ...usualPlace,
  card,
  passes: [
    {
      ...look,
      card,
      row: 1,
      way: wayOfPass(look.pass),
      needles: allNeedles
        .map((needle) => {
          const nth = strips.findIndex(({ needles }) => needles.includes(needle))
          return nth < 0 ? '?' : noted[nth]!.charAt(strips[nth]!.needles.indexOf(needle))
        })
        .join(''),
    },
  ],
  slip: slips.sure,
  checks: [],
})

const states: readonly WideState[] = [
  rightBed,
  ...wideCauses()
    .filter(({ causes }) => ['carriage.plain', 'card.reversed', 'belt.timing=8'].includes(causes[0]!))
    .map(alone),
]

/** How likely the notes are with each state of a bed as new whose bar and pivots are sound, by the search's own sums. */
const summed = (noted: Noted): number[] => {
  const query = queryOf(noted)
  const looks = looksOf(query)
  const setting = sumSettingOf(query, looks)
  const before = Math.log(wearChances[0]!.chance * pivotChances[0]!.chance)
  return states.map((state) => {
    const { hidden, strips: sums } = stateSumsOf(
      setting,
      wideBedOf(state, looks),
      -1,
      { meets: 1, wears: [0] },
      'whole',
    )
    return state.chance * Math.exp(logSum(weighingOf(setting.byHand, -1, hidden, sums).logs) - before)
  })
}

/** The same by running the model for every combination of what two strips, their columns and their needles may be in. */
const run = (noted: Noted): number[] =>
  states.map(({ causes, chance }) => {
    const faults = causes.flatMap(({ fault }) => fault ?? [])
    const each = strips.map((_, nth) => enumerated(smallMachine(noted, nth, faults)))
    const whole = oilStates.reduce(
      (sum, oil) =>
        sum +
        readers.reduce((within, reader) => {
          const both = each.reduce(
            (product, all) =>
              product * all.find((one) => one.oil === oil && one.reader === reader)!.likelihood,
            1,
          )
          return within + oil.chance * (1 - retainerChances[oil.oil]) * readerChances[reader] * both
        }, 0),
      0,
    )
    return chance * whole
  })

describe('the sum over every combination on a whole small bed of two strips', { timeout: 300_000 }, () => {
  test.each<[string, Noted]>([
    ['all as it should be', ['spp', 'ssp']],
    ['ghosts on one strip, a needle missed on the other', ['ssp', 'psp']],
  ])('is that of the model for each state of the bed: %s', (_, noted) => {
    const [ours, model] = [summed(noted), run(noted)]
    for (const [n, likelihood] of model.entries()) expect(ours[n]! / likelihood).toBeCloseTo(1, 9)
  })

  test('is a product over strips, as the model has it: what is wrong on one changes nothing on the other', () => {
    const faults = [
      ['strip.3.slow=300', 'strip.3.seized', 'strip.3.over', 'pin.11.over', 'pin.19.high', 'needle.R3.stiff'],
      [
        'strip.4.slow=600',
        'strip.4.seized',
        'strip.4.over',
        'pin.12.over',
        'rocker.20.dead',
        'catch.R4.broken',
      ],
    ].map((ids) => ids.map((id) => faultOf(id)))
    const came = (own: readonly Fault[]) =>
      startRun({ ...soundScenario(card), faults: own, speed: look.speed }).passOf(look.pass).came
    for (const one of faults[0]!)
      for (const other of faults[1]!) {
        const both = came([one, other])
        const alone = [came([one]), came([other])]
        for (const [nth, { needles }] of strips.entries())
          for (const needle of needles) expect(both[needle]).toBe(alone[nth]![needle])
      }
  })
})
