import { CloseSearch, type PossibleBed } from './close-search.ts'
import type { Look } from './looks.ts'
import { type Asked, likelier, type Rough, roughBeds, roughLags, roughly } from './rough-search.ts'
import type { SumSetting } from './sum-setting.ts'
import { wideBedOf } from './wide-bed.ts'
import type { WideState } from './wide-states.ts'

/** How many states of the bed are looked into, and with loose pivots, if those lag behind by no more. */
const worth = { states: 8, loose: 2, looseLag: 5 } as const

/** Certainties of pushes by which pivots that are a little and very loose are weighed roughly. */
const rattling = [0.98, 0.9] as const

/** Whether a bed shows nothing of how well pushes do, so that loose pivots are as likely as before. */
export const hidesPushes = (state: WideState, looks: readonly Look[]): boolean => {
  const { meets, holds } = wideBedOf(state, looks)
  return (meets & holds) === 0
}

/** Each bar at the likelier of two rough weighings. */
const likeliest = (one: Rough, other: Rough): Rough => {
  const bars = one.bars.map((bar) => {
    const twin = other.bars.find(({ retainer }) => retainer === bar.retainer)
    return { ...bar, log: Math.max(bar.log, twin?.log ?? -Infinity) }
  })
  const best = bars.reduce((most, bar) => (bar.log > most.log ? bar : most))
  return { ...one, bars, best, wornLag: Math.min(one.wornLag, other.wornLag) }
}

/** The states of the whole bed that the notes leave possible, closely weighed. */
export const possibleBeds = (setting: SumSetting, looks: readonly Look[]): PossibleBed[] => {
  const asked: Asked = { setting, looks }
  const { right, all } = roughBeds(asked)
  const most = all[0]!.best.log
  const kept = all.filter(({ best }) => best.log > most - roughLags.state).slice(0, worth.states)
  const loosely = new Map(
    [...new Set([right, ...kept.slice(0, worth.loose)])].map((rough) => {
      const bars = rough.bars.map(({ retainer }) => retainer)
      return [
        rough,
        rattling.map((certainty) => roughly(asked, rough.state, -Infinity, bars, certainty)!),
      ] as const
    }),
  )
  const mostOf = (loose: readonly Rough[]): number => Math.max(...loose.map(({ best }) => best.log))
  const mostOfAll = Math.max(most, ...[...loosely.values()].map(mostOf))
  const search = new CloseSearch(asked, mostOfAll)
  for (const rough of [...new Set([...kept, ...loosely.keys()])].sort(likelier)) {
    const loose = loosely.get(rough)
    const isLoose =
      loose !== undefined && mostOf(loose) > mostOfAll - worth.looseLag && !hidesPushes(rough.state, looks)
    if (isLoose) search.add(loose.reduce(likeliest, rough), 'loose')
    else if (rough.best.log >= mostOfAll - roughLags.state) search.add(rough, 'firm')
  }
  return search.beds
}
