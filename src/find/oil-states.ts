import { hardSet, oilChances, stripChances } from './chances.ts'
import { type Oil, oils } from './finding.ts'

/** The chances of a strip's states but sound. */
export type StripStates = Readonly<Record<'slow' | 'seized' | 'over', number>>

/** How the oil lies along the whole bed. Given one of these, strips do not touch one another. */
export interface OilState {
  readonly oil: Oil
  readonly chance: number
  readonly strips: StripStates
}

/** What is left of a chance for machines whose oil has not set hard. */
const softly = (state: keyof StripStates): number =>
  (stripChances.set[state] - hardSet.share * hardSet.strips[state]) / (1 - hardSet.share)

const statesOf = (oil: Oil): OilState[] => {
  const chance = oilChances[oil]
  if (oil !== 'set') return [{ oil, chance, strips: stripChances[oil] }]
  const soft = { slow: softly('slow'), seized: softly('seized'), over: softly('over') }
  return [
    { oil, chance: chance * (1 - hardSet.share), strips: soft },
    { oil, chance: chance * hardSet.share, strips: hardSet.strips },
  ]
}

/** Every state of the oil; those of one kind of oil add up to its row of the table, and so do a strip's chances. */
export const oilStates: readonly OilState[] = oils.flatMap(statesOf)
