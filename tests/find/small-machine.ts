import { expect } from 'vitest'
import { stateSumsOf } from '@/find/bed-sums.ts'
import { pivotChances, readerChances, readers, retainerChances, wearChances } from '@/find/chances.ts'
import { weighingOf } from '@/find/hidden.ts'
import { looksOf } from '@/find/looks.ts'
import { oilStates } from '@/find/oil-states.ts'
import type { Query } from '@/find/query.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, type WideState } from '@/find/wide-states.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { dimensionsOf, nothingOwn, type Own } from '@/mechanism/own.ts'
import { enumerated, type SmallMachine } from './enumeration.ts'
import { notesOf } from './noted.ts'

/** What somebody knows who noted some needles of one strip. */
const queryOf = ({ card, needles, looks, slip, own }: SmallMachine): Query => ({
  ...usualPlace,
  ...(own && { own }),
  card,
  passes: looks.map(({ pass, speed, letters }) => ({
    card,
    row: ((pass - 1) % card.length) + 1,
    way: wayOfPass(pass),
    speed,
    pass,
    needles: notesOf(needles, letters),
  })),
  slip,
  checks: [],
})

/** How likely the notes are by the search's own sums, for a machine as new whose pivots and bar are sound. */
const summed = (machine: SmallMachine, state: WideState) => {
  const query = queryOf(machine)
  const looks = looksOf(query)
  const setting = sumSettingOf(query, looks)
  const { hidden, strips } = stateSumsOf(
    setting,
    wideBedOf(state, looks),
    -1,
    { meets: 1, wears: [0] },
    'whole',
  )
  const { logs } = weighingOf(setting.byHand, -1, hidden, strips)
  return oilStates.flatMap((oil, o) =>
    hidden.map((one, h) => {
      const reader = readers[one.reader]!
      const before =
        wearChances[0]!.chance *
        pivotChances[0]!.chance *
        readerChances[reader] *
        oil.chance *
        (1 - retainerChances[oil.oil])
      return { reader, oil, likelihood: Math.exp(logs[o * hidden.length + h]!) / before }
    }),
  )
}

/** A bed with one thing wrong that reaches all of it. */
export const stateOf = (id: FaultId, own: Own = nothingOwn): WideState =>
  alone(wideCauses(dimensionsOf(own)).find(({ causes }) => causes[0] === id)!)

/** Expects the search's own sums to be those of every combination, run by the model, to nine places. */
export const expectTheSame = (machine: SmallMachine, state: WideState): void => {
  const found = summed(machine, state)
  for (const { reader, oil, likelihood } of enumerated(machine)) {
    const is = found.find((one) => one.reader === reader && one.oil === oil)!.likelihood
    expect([reader, oil.oil, is / likelihood]).toEqual([reader, oil.oil, expect.closeTo(1, 9)])
  }
}
