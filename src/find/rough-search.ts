import { retainerMs } from './chances.ts'
import type { Look } from './looks.ts'
import type { Cause } from './place.ts'
import { roughLogOf } from './rough-sums.ts'
import type { SumSetting } from './sum-setting.ts'
import { dimensionsAt } from './view.ts'
import { wideBedOf } from './wide-bed.ts'
import { turnCauses, type WideCause, wideCauses } from './wide-causes.ts'
import { alone, rightBed, type WideState, withCause } from './wide-states.ts'

/** A state of the bar: an index in `retainerMs`, -1 for a sound one; and the log of how likely the notes are with it. */
interface RoughBar {
  readonly retainer: number
  readonly log: number
}

/** A state of the whole bed, roughly weighed with each state of the bar that is not far behind the best. */
export interface Rough {
  readonly state: WideState
  readonly bars: readonly RoughBar[]
  readonly best: RoughBar
  /** By how much, as a logarithm, a machine too worn to dip every butt lags behind. */
  readonly wornLag: number
}

/** What is asked. */
export interface Asked {
  readonly setting: SumSetting
  readonly looks: readonly Look[]
}

/** How far, as a logarithm, a bed, and a bar of a bed, may lag behind the best to be looked into. */
export const roughLags = { state: 18, bar: 7 } as const

/** With how many of the likeliest states every other is tried at once. */
const leaders = 3
/** How many turns that went wrong are added to one another. */
const mostTurns = 3

const wideIds: readonly Cause[] = wideCauses().flatMap(({ causes }) => causes)

/** Log of the chance of a state, by its own and by what was found by hand. */
export const chanceLog = ({ byHand }: SumSetting, { causes, chance }: WideState): number => {
  const hand =
    causes.length === 0
      ? byHand.right(wideIds)
      : causes.reduce((product, own) => product * byHand.causes(own.causes, wideIds), 1)
  return Math.log(chance * hand)
}

const allBars = [-1, ...retainerMs.keys()]

/**
 * A state weighed with these bars, where pushes suffice with the chance `certainty`; null where the notes are less likely
 * than `least` with each of them.
 */
export const roughly = (
  { setting, looks }: Asked,
  state: WideState,
  least: number,
  retainers: Iterable<number> = allBars,
  certainty = 1,
): Rough | null => {
  const bed = wideBedOf(state, looks)
  const own = chanceLog(setting, state)
  const found: (RoughBar & { worn: number })[] = []
  let best: RoughBar | null = null
  for (const retainer of retainers) {
    const floor = Math.max(least, best ? best.log - roughLags.bar : -Infinity)
    const weighed = roughLogOf({ setting, bed, retainer, certainty }, floor - own)
    if (!weighed) continue
    const bar = { retainer, log: own + weighed.log, worn: weighed.log - weighed.worn }
    found.push(bar)
    if (!best || bar.log > best.log) best = bar
  }
  if (!best) return null
  const { log: most } = best
  const bars = found.filter(({ log }) => log >= most - roughLags.bar)
  return { state, bars, best, wornLag: Math.min(...bars.map(({ worn }) => worn)) }
}

export const likelier = (one: Rough, other: Rough): number => other.best.log - one.best.log

/** The best logs so far: what a state must reach to matter. */
class Bests {
  private logs: number[] = []

  add(one: Rough | null): void {
    if (one) this.logs = [...this.logs, one.best.log].sort((a, b) => b - a).slice(0, leaders)
  }

  /** What is looked into: not far behind the best. */
  get state(): number {
    return (this.logs[0] ?? -Infinity) - roughLags.state
  }

  /** The same, or one of the likeliest that others are tried with. */
  get leader(): number {
    return Math.min(this.state, this.logs[leaders - 1] ?? -Infinity)
  }
}

const isFound = (one: Rough | null): one is Rough => one !== null

/** Turns that went wrong, added one by one to a state for as long as each makes the notes likelier. */
const withTurns = (asked: Asked, turns: readonly WideCause[], start: Rough): Rough[] => {
  const all: Rough[] = []
  let leader = start
  for (let more = 0; more < mostTurns; more++) {
    // Rows read at the wrong time look like a worn bar, so that a sound one is tried as well.
    const bars = new Set([-1, leader.best.retainer])
    const bests = new Bests()
    const tried = turns.flatMap((turn) => {
      const state = withCause(leader.state, turn)
      const one = state && roughly(asked, state, bests.state, bars)
      bests.add(one)
      return one ?? []
    })
    const [first, ...others] = tried.sort(likelier)
    if (!first) break
    const best = roughly(asked, first.state, -Infinity)!
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

/** The likeliest states by themselves, each with every other thing that may reach the whole bed at once. */
const withOthers = (asked: Asked, causes: readonly WideCause[], all: readonly Rough[]): Rough[] => {
  const least = all[0]!.best.log - roughLags.state
  const known = new Set<string>()
  return all.slice(0, leaders).flatMap((leader) => {
    if (leader.state.causes.length === 0) return []
    return causes.flatMap((cause) => {
      const both = withCause(leader.state, cause)
      if (!both || known.has(stateKey(both))) return []
      known.add(stateKey(both))
      // A second thing that changes nothing that was seen is as likely as before, and not worth saying.
      const alike = leader.best.log
      const one = roughly(asked, both, Math.max(least, alike), [leader.best.retainer])
      return one && one.best.log > alike ? [one] : []
    })
  })
}

/**
 * More turns than this between two noted passes are taken as one, at the chance of so many: no look can show at which of them
 * something went wrong, and what did long before would have been seen.
 */
const mostApart = 20

/** What may have gone wrong at the turns before the passes that were noted. */
const turnsOf = (looks: readonly Look[]): WideCause[] => {
  const noted = [...new Set(looks.map(({ view }) => view.pass))].sort((one, other) => one - other)
  return noted.flatMap((pass, n) => {
    const before = noted[n - 1] ?? 1
    const count = pass - before
    return count > mostApart
      ? turnCauses(pass, mostApart)
      : Array.from({ length: count }, (_, m) => turnCauses(before + 1 + m)).flat()
  })
}

/** What the whole bed may be in: a bed that is right, and all that is not far behind the best, the likeliest first. */
export const roughBeds = (asked: Asked): { readonly right: Rough; readonly all: readonly Rough[] } => {
  const causes = wideCauses(dimensionsAt(asked.looks[0]?.view ?? {}))
  const turns = turnsOf(asked.looks)
  const bests = new Bests()
  const right = roughly(asked, rightBed, -Infinity)!
  bests.add(right)
  const singles = causes.map((cause) => {
    const one = roughly(asked, alone(cause), bests.leader)
    bests.add(one)
    return one
  })
  const found = [right, ...singles.filter(isFound), ...withTurns(asked, turns, right)].sort(likelier)
  return { right, all: [...found, ...withOthers(asked, causes, found)].sort(likelier) }
}
