import { type Depth, type Setting, type StateSums, stateSumsOf } from './bed-sums.ts'
import { retainerMs, wearChances } from './chances.ts'
import { meetingClasses, type Weighed, weighHidden } from './hidden.ts'
import type { Look } from './looks.ts'
import type { Cause } from './place.ts'
import { logSum } from './log-sum.ts'
import {
  alone,
  rightBed,
  turnCauses,
  type WideBed,
  wideBedOf,
  type WideCause,
  wideCauses,
  type WideState,
  withCause,
} from './wide.ts'

/** A state of the whole bed with a retainer bar, and what was made of it. */
export interface PossibleBed {
  readonly state: WideState
  readonly sums: StateSums
  /** The states of the bar that these sums speak for, by index or -1, with their shares; they add up to 1. */
  readonly bars: readonly { readonly retainer: number; readonly share: number }[]
  readonly hidden: readonly Weighed[]
  /** Log of its chance and of how likely the notes are. */
  readonly log: number
}

/** A state of the whole bed, roughly weighed with each state of the bar that was tried. */
interface Rough {
  readonly state: WideState
  readonly bars: readonly { readonly retainer: number; readonly log: number }[]
  readonly best: { readonly retainer: number; readonly log: number }
  /** By how much, as a logarithm, a machine too worn to dip every butt lags behind. */
  readonly wornLag: number
}

/** Wears that stand for all where beds are weighed roughly, by their index in the table. */
const roughWears = [0, 4, 7, 10, 12] as const
const mostWorn = 12

/** How far, as a logarithm, states of the bed may lag behind the best; and how many are looked into. */
const worth = { state: 18, bar: 7, states: 8, bars: 3, worn: 14, loose: 2, looseLag: 5 } as const

/** With how many of the likeliest states every other is tried at once. */
const leaders = 3

const wideIds: readonly Cause[] = wideCauses().flatMap(({ causes }) => causes)

/** Log of the chance of a state, by its own and by what was found by hand. */
const chanceLog = ({ byHand }: Setting, { causes, chance }: WideState): number => {
  const hand =
    causes.length === 0
      ? byHand.right(wideIds)
      : causes.reduce((product, own) => product * byHand.causes(own.causes, wideIds), 1)
  return Math.log(chance * hand)
}

const roughlyWith = (
  setting: Setting,
  bed: WideBed,
  retainers: Iterable<number>,
  isEnough: (logs: readonly number[]) => boolean,
  certainty = 1,
): Rough => {
  const bars: { retainer: number; log: number; worn: number }[] = []
  for (const retainer of retainers) {
    const hidden = weighHidden(stateSumsOf(setting, bed, retainer, 1, 'rough', certainty), roughWears)
    const log = chanceLog(setting, bed.state) + logSum(hidden.map((one) => one.log))
    const worn = logSum(hidden.filter(({ wear }) => wear === mostWorn).map((one) => one.log))
    bars.push({ retainer, log, worn: log - chanceLog(setting, bed.state) - worn })
    if (isEnough(bars.map((bar) => bar.log))) break
  }
  const best = bars.reduce((most, bar) => (bar.log > most.log ? bar : most))
  return { state: bed.state, bars, best, wornLag: Math.min(...bars.map(({ worn }) => worn)) }
}

/** How likely the notes are rises with how worn the bar is, and falls again. */
const roughly = (setting: Setting, looks: readonly Look[], state: WideState): Rough =>
  roughlyWith(
    setting,
    wideBedOf(state, looks),
    [-1, ...retainerMs.keys()],
    (logs) => logs.length > 2 && logs.at(-1)! < Math.max(...logs) - worth.bar,
  )

const likelier = (one: Rough, other: Rough): number => other.best.log - one.best.log

/** Turns that went wrong, added one by one to a state for as long as each makes the notes likelier. */
const withTurns = (
  setting: Setting,
  looks: readonly Look[],
  turns: readonly WideCause[],
  start: Rough,
): Rough[] => {
  const all: Rough[] = []
  let leader = start
  for (let more = 0; more < 3; more++) {
    // Rows read at the wrong time look like a worn bar, so that a sound one is tried as well.
    const bars = new Set([-1, leader.best.retainer])
    const tried = turns
      .flatMap((turn) => withCause(leader.state, turn) ?? [])
      .map((state) => roughlyWith(setting, wideBedOf(state, looks), bars, () => false))
      .sort(likelier)
    const [first, ...others] = tried
    if (!first) break
    const best = roughly(setting, looks, first.state)
    all.push(best, ...others)
    if (best.best.log <= leader.best.log) break
    leader = best
  }
  return all
}

const stateKey = ({ causes }: WideState): string =>
  causes
    .map((cause) => cause.causes[0])
    .sort()
    .join(' ')

/** The states of the whole bed that the notes leave possible, closely weighed. */
export const possibleBeds = (setting: Setting, looks: readonly Look[]): PossibleBed[] => {
  const causes = wideCauses()
  const last = Math.max(1, ...looks.map(({ view }) => view.pass))
  const turns = Array.from({ length: last - 1 }, (_, n) => turnCauses(n + 2)).flat()
  const right = roughly(setting, looks, rightBed)
  const singles = [right, ...causes.map((cause) => roughly(setting, looks, alone(cause)))].sort(likelier)
  const turned = withTurns(setting, looks, turns, right)
  const known = new Set<string>()
  const pairs: Rough[] = []
  for (const leader of [...singles, ...turned].sort(likelier).slice(0, leaders)) {
    if (leader.state.causes.length === 0) continue
    for (const cause of causes) {
      const both = withCause(leader.state, cause)
      if (!both || known.has(stateKey(both))) continue
      known.add(stateKey(both))
      const rough = roughlyWith(setting, wideBedOf(both, looks), [leader.best.retainer], () => true)
      const alike = leader.bars.find(({ retainer }) => retainer === leader.best.retainer)!
      // A second thing that changes nothing that was seen is as likely as before, and not worth telling.
      if (rough.best.log > alike.log) pairs.push(rough)
    }
  }
  const all = [...singles, ...turned, ...pairs].sort(likelier)
  const most = all[0]!.best.log
  const kept = all.filter(({ best }) => best.log > most - worth.state).slice(0, worth.states)
  const loosely = new Map(
    [...new Set([right, ...kept.slice(0, worth.loose)])].map((rough) => [
      rough,
      roughlyWith(setting, wideBedOf(rough.state, looks), retainersOf(rough), () => false, rattling),
    ]),
  )
  const mostOfAll = Math.max(most, ...[...loosely.values()].map(({ best }) => best.log))
  return [...new Set([...kept, ...loosely.keys()])].flatMap((rough) => {
    const loose = loosely.get(rough)
    const isLoose =
      loose !== undefined && loose.best.log > mostOfAll - worth.looseLag && !hidesPushes(rough.state, looks)
    if (!isLoose && rough.best.log < mostOfAll - worth.state) return []
    return closely(
      setting,
      looks,
      isLoose ? likeliest(rough, loose) : rough,
      mostOfAll,
      isLoose ? 'loose' : 'firm',
    )
  })
}

/** Whether a bed shows nothing of how well pushes do, so that loose pivots are as likely as before. */
export const hidesPushes = (state: WideState, looks: readonly Look[]): boolean => {
  const { meets, holds } = wideBedOf(state, looks)
  return (meets & holds) === 0
}

/** A certainty of pushes by which loose pivots are weighed roughly. */
const rattling = 0.9

const retainersOf = ({ bars }: Rough): number[] => bars.map(({ retainer }) => retainer)

/** Each bar at the likelier of two rough weighings. */
const likeliest = (one: Rough, other: Rough): Rough => {
  const bars = one.bars.map((bar, n) => ({ ...bar, log: Math.max(bar.log, other.bars[n]!.log) }))
  const best = bars.reduce((most, bar) => (bar.log > most.log ? bar : most))
  return { ...one, bars, best, wornLag: Math.min(one.wornLag, other.wornLag) }
}

const closely = (
  setting: Setting,
  looks: readonly Look[],
  rough: Rough,
  most: number,
  depth: Depth,
): PossibleBed[] => {
  const bed = wideBedOf(rough.state, looks)
  const bars = [...rough.bars]
    .sort((one, other) => other.log - one.log)
    .filter(({ log }) => log > rough.best.log - worth.bar && log > most - worth.state)
  // Where nothing is offered a hold, dips that miss their catches make no difference.
  const classes =
    (bed.meets & bed.holds) === 0
      ? [{ meets: 1, wears: [...wearChances.keys()] }]
      : meetingClasses().filter((_, n) => n === 0 || rough.wornLag < worth.worn)
  // The rest of the bars go with the nearest that is looked into.
  const looked = bars.slice(0, bed.holds === 0 ? 1 : worth.bars)
  const groups = looked.map(({ retainer }) => ({ retainer, bars: [] as typeof bars }))
  for (const bar of bars) {
    const nearest = groups.reduce((best, group) =>
      Math.abs(group.retainer - bar.retainer) < Math.abs(best.retainer - bar.retainer) ? group : best,
    )
    nearest.bars.push(bar)
  }
  return groups.flatMap((group) => {
    const own = rough.bars.find(({ retainer }) => retainer === group.retainer)!
    const more = logSum(group.bars.map(({ log }) => log - own.log))
    const shares = group.bars.map((bar) => ({
      retainer: bar.retainer,
      share: Math.exp(bar.log - own.log - more),
    }))
    return classes.map(({ meets, wears }) => {
      const sums = stateSumsOf(setting, bed, group.retainer, meets, depth)
      const hidden = weighHidden(sums, wears)
      const log = chanceLog(setting, rough.state) + more + logSum(hidden.map((one) => one.log))
      return { state: rough.state, sums, bars: shares, hidden, log }
    })
  })
}
