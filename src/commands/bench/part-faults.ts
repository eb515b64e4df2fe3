import { type NeedleName, needleName } from '../../mechanism/bed.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultOf } from '../../mechanism/read-fault.ts'
import { allColumns, allNeedles, allStrips, type Column, type Strip } from '../../mechanism/indices.ts'
import type { Draws } from './draws.ts'

/** A number as an id writes it, to a hundredth. */
export const amount = (value: number): string => String(Math.round(value * 100) / 100)

/** A time constant in ms, long ones as rare as in a pot of oils of every thickness. */
const slowness = ({ between }: Draws): string =>
  String(Math.round(Math.exp(between(Math.log(120), Math.log(1000)))))

const stripStates = ['slow', 'seized', 'over'] as const
type StripState = (typeof stripStates)[number]

const stripIn = (draws: Draws, strip: Strip, state: StripState): Fault =>
  faultOf(state === 'slow' ? `strip.${strip}.slow=${slowness(draws)}` : `strip.${strip}.${state}`)

/** Something wrong with one strip. */
export const stripFault = (draws: Draws): Fault =>
  stripIn(draws, draws.pick(allStrips), draws.pick(stripStates))

/** Faults of strips, where each strip is in a state with this chance. */
export const stripFaults = (
  draws: Draws,
  { slow, seized, over }: Readonly<Record<StripState, number>>,
): Fault[] =>
  allStrips.flatMap((strip) => {
    const part = draws.between(0, 1)
    if (part < slow) return [stripIn(draws, strip, 'slow')]
    if (part < slow + seized) return [stripIn(draws, strip, 'seized')]
    return part < slow + seized + over ? [stripIn(draws, strip, 'over')] : []
  })

const columnStates = ['low', 'high', 'over', 'sticky', 'dead', 'worn'] as const
type ColumnState = (typeof columnStates)[number]

/** What goes wrong with the columns of a reader whose pins are gummed, each as often as it is listed. */
export const gummed: readonly ColumnState[] = ['low', 'low', 'sticky', 'sticky', 'sticky', 'over']

const columnFault = (draws: Draws, column: Column, state: ColumnState): Fault => {
  switch (state) {
    case 'sticky':
      return faultOf(`pin.${column}.sticky=${draws.whole(4, 17) / 20}`)
    case 'dead':
      return faultOf(`rocker.${column}.dead`)
    case 'worn':
      return faultOf(`rocker.${column}.worn=${amount(draws.between(0.7, 2))}`)
    case 'low':
    case 'high':
    case 'over':
      return faultOf(`pin.${column}.${state}`)
  }
}

/** Something wrong with so many columns. */
export const columnFaults = (
  draws: Draws,
  count: number,
  states: readonly ColumnState[] = columnStates,
): Fault[] => draws.several(allColumns, count).map((column) => columnFault(draws, column, draws.pick(states)))

const needleFault = ({ pick }: Draws, name: NeedleName): Fault =>
  faultOf(
    pick([`catch.${name}.broken`, `needle.${name}.bent`, `needle.${name}.stiff`, `needle.${name}.gone`]),
  )

/** Something wrong with so many needles, or with their catches. */
export const needleFaults = (draws: Draws, count: number): Fault[] =>
  draws.several(allNeedles, count).map((needle) => needleFault(draws, needleName(needle)))

/** A worn retainer bar. */
export const barFault = ({ between }: Draws): Fault => faultOf(`retainer.worn=${Math.round(between(3, 15))}`)

/** A worn retainer bar where it is drawn with this chance. */
export const barFaults = (draws: Draws, chance: number): Fault[] =>
  draws.is(chance) ? [barFault(draws)] : []
