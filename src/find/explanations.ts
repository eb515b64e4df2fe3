import { allStrips } from '../mechanism/indices.ts'
import { logSum } from './log-sum.ts'
import { type Place, stripPlace } from './place.ts'
import type { PossibleBed } from './close-search.ts'
import { chanceLog } from './rough-search.ts'
import type { SumSetting } from './sum-setting.ts'

/** States that explain the notes as well as this, as a logarithm, are alike; others say of the bed that it is not right. */
const alike = 2
const notRight = 5

/** How likely the notes are with all strips seized on a bed that is right otherwise, as a logarithm. */
const allSeized = ({ sums }: PossibleBed): number =>
  sums.strips.reduce((sum, { log, seized }) => sum + log + Math.log(seized), 0)

/**
 * Where nothing is selected that should be: all that explains it as well as the likeliest does, however rare it is, the
 * strips among them, all of which may be seized at once. None where all strips seized explain less.
 */
export const explanations = (setting: SumSetting, beds: readonly PossibleBed[]): Place[] => {
  const states = [...Map.groupBy(beds, ({ state }) => state)].map(([state, own]) => ({
    state,
    own,
    log: logSum(own.map(({ log }) => log)) - chanceLog(setting, state),
  }))
  const best = Math.max(...states.map(({ log }) => log))
  const right = states.find(({ state }) => state.causes.length === 0)
  if (!right || right.log > best - notRight) return []
  if (Math.max(...right.own.map(allSeized)) < best - alike) return []
  const wide = states
    .filter(({ state, log }) => state.causes.length === 1 && log > best - alike)
    .flatMap(({ state }) => state.causes.map(({ place }) => place))
  return [...new Set<Place>([...wide, ...allStrips.map(stripPlace)])]
}
