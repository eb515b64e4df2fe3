import { type Depth, type StateSums, stateSumsOf } from './bed-sums.ts'
import { weighingOf } from './hidden.ts'
import { logSum } from './log-sum.ts'
import type { Look } from './looks.ts'
import { type MeetingClass, meetingClasses, oneClass } from './meeting.ts'
import { type Asked, chanceLog, likelier, type Rough, roughBeds, roughLags, roughly } from './rough-search.ts'
import type { SumSetting } from './sum-setting.ts'
import { type WideBed, wideBedOf } from './wide-bed.ts'
import type { WideState } from './wide-states.ts'

/** A state of the bar: an index in `retainerMs`, -1 for a sound one; and its share among some. */
interface BarShare {
  readonly retainer: number
  readonly share: number
}

/** A state of the whole bed with a retainer bar, and what was made of it. */
export interface PossibleBed {
  readonly state: WideState
  readonly sums: StateSums
  /** The states of the bar that these sums speak for, with their shares; they add up to 1. */
  readonly bars: readonly BarShare[]
  /** By oil and hidden state, the oil first: the log of its weight. */
  readonly logs: Float64Array
  /** Log of its chance and of how likely the notes are. */
  readonly log: number
}

/** How many states of the bed are looked into, how many bars of each, and where wear and loose pivots are. */
const worth = { states: 8, bars: 3, worn: 14, loose: 2, looseLag: 5 } as const

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
  return [...new Set([...kept, ...loosely.keys()])].sort(likelier).flatMap((rough) => {
    const loose = loosely.get(rough)
    const isLoose =
      loose !== undefined && mostOf(loose) > mostOfAll - worth.looseLag && !hidesPushes(rough.state, looks)
    if (!isLoose && rough.best.log < mostOfAll - roughLags.state) return []
    return closely(
      asked,
      isLoose ? loose.reduce(likeliest, rough) : rough,
      mostOfAll,
      isLoose ? 'loose' : 'firm',
    )
  })
}

/** The classes of wear that are worth a sum of their own. */
const classesOf = ({ meets, holds }: WideBed, wornLag: number): MeetingClass[] =>
  // Where nothing is offered a hold, dips that miss their catches make no difference.
  (meets & holds) === 0 ? [oneClass] : meetingClasses().filter((_, n) => n === 0 || wornLag < worth.worn)

/** A bar that is looked into, with those that it speaks for; `more` is the log of how much likelier they are than it alone. */
interface BarGroup {
  readonly retainer: number
  readonly more: number
  readonly bars: readonly BarShare[]
}

/** A sound bar by itself. */
const soundBar: BarGroup = { retainer: -1, more: 0, bars: [{ retainer: -1, share: 1 }] }

/**
 * The bars that are looked into, each with those that go with it as the nearest. A sound one always is: what rough sums
 * leave out, such as a pin up on a slow strip, looks to them like a worn bar.
 */
const barGroups = (rough: Rough, least: number, most: number): BarGroup[] => {
  const bars = [...rough.bars]
    .sort((one, other) => other.log - one.log)
    .filter(({ log }) => log > rough.best.log - roughLags.bar && log > least)
  const groups = bars.slice(0, most).map((own) => ({ own, bars: [] as typeof bars }))
  for (const bar of bars) {
    const distance = ({ own }: (typeof groups)[number]): number => Math.abs(own.retainer - bar.retainer)
    groups.reduce((best, group) => (distance(group) < distance(best) ? group : best)).bars.push(bar)
  }
  const found = groups.map(({ own, bars: those }): BarGroup => {
    const more = logSum(those.map(({ log }) => log - own.log))
    return {
      retainer: own.retainer,
      more,
      bars: those.map(({ retainer, log }) => ({ retainer, share: Math.exp(log - own.log - more) })),
    }
  })
  return bars.some(({ retainer }) => retainer < 0) ? found : [...found, soundBar]
}

const closely = ({ setting, looks }: Asked, rough: Rough, most: number, depth: Depth): PossibleBed[] => {
  const bed = wideBedOf(rough.state, looks)
  return barGroups(rough, most - roughLags.state, bed.holds === 0 ? 1 : worth.bars).flatMap(
    ({ retainer, more, bars }) =>
      classesOf(bed, rough.wornLag).map((meeting): PossibleBed => {
        const sums = stateSumsOf(setting, bed, retainer, meeting, depth)
        const { logs } = weighingOf(setting.byHand, retainer, sums.hidden, sums.strips)
        return {
          state: rough.state,
          sums,
          bars,
          logs,
          log: chanceLog(setting, rough.state) + more + logSum(logs),
        }
      }),
  )
}
