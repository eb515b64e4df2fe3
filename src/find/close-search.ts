import { type Depth, type StateSums, stateSumsOf } from './bed-sums.ts'
import { weighingOf } from './hidden.ts'
import { logSum } from './log-sum.ts'
import { lastOf } from '../mechanism/lookup.ts'
import { type MeetingClass, meetingClasses, oneClass } from './meeting.ts'
import { type Asked, chanceLog, type Rough, roughLags } from './rough-search.ts'
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

/**
 * How many bars of a state are looked into, if they lag behind its best by no more; others go with the nearest of those. And
 * how far a worn machine may lag behind the best to be looked into.
 */
const worth = { bars: 3, barLag: 3.5, worn: 16 } as const

/** What is expected to lag behind the best by more, as a logarithm, is not summed: it changes nothing that is said. */
const expectedLag = 8.5

/** A bar that is looked into, with those that it speaks for. */
interface BarGroup {
  readonly retainer: number
  readonly bars: readonly BarShare[]
  /** The log of how much likelier all of them are than it alone. */
  readonly more: number
  /** Roughly how likely the notes are with them, as a logarithm; null where that says nothing. */
  readonly log: number | null
}

/** A sound bar by itself. */
const soundBar: BarGroup = { retainer: -1, bars: [{ retainer: -1, share: 1 }], more: 0, log: null }

/**
 * The bars that are looked into, the likeliest first, each with those that go with it as the nearest. A sound one always is
 * one of them: what rough sums leave out, such as a pin up on a slow strip, looks to them like a worn bar.
 */
const barGroups = (rough: Rough, least: number, most: number): BarGroup[] => {
  const bars = [...rough.bars]
    .sort((one, other) => other.log - one.log)
    .filter(({ log }) => log > rough.best.log - roughLags.bar && log > least)
  const groups = bars
    .slice(0, most)
    .filter(({ log }) => log > rough.best.log - worth.barLag)
    .map((own) => ({ own, bars: [] as typeof bars }))
  for (const bar of bars) {
    const distance = ({ own }: (typeof groups)[number]): number => Math.abs(own.retainer - bar.retainer)
    groups.reduce((best, group) => (distance(group) < distance(best) ? group : best)).bars.push(bar)
  }
  const found = groups.map(({ own, bars: those }): BarGroup => {
    const more = logSum(those.map(({ log }) => log - own.log))
    return {
      retainer: own.retainer,
      bars: those.map(({ retainer, log }) => ({ retainer, share: Math.exp(log - own.log - more) })),
      more,
      log: own.log + more,
    }
  })
  return bars.some(({ retainer }) => retainer < 0) ? found : [...found, soundBar]
}

/** Sums states of the whole bed closely: for each all bars and wears that may matter beside the best that was found so far. */
export class CloseSearch {
  readonly beds: PossibleBed[] = []
  private readonly asked: Asked
  private readonly roughMost: number
  private most = -Infinity

  /** `roughMost` is the log of the likeliest state, roughly. */
  constructor(asked: Asked, roughMost: number) {
    this.asked = asked
    this.roughMost = roughMost
  }

  /** Adds a state that was roughly weighed; the likeliest come first. */
  add(rough: Rough, depth: Depth): void {
    const bed = wideBedOf(rough.state, this.asked.looks)
    const classes = this.classesOf(bed, rough)
    const groups = barGroups(rough, this.roughMost - roughLags.state, bed.holds === 0 ? 1 : worth.bars)
    /** By how much close sums of this state come to more than rough ones. */
    let gain = 0
    for (const [n, group] of groups.entries()) {
      const expected = (group.log ?? rough.best.log) + gain
      if (n > 0 && expected < this.most - expectedLag) continue
      const log = this.addBar(rough.state, bed, group, classes, depth)
      if (n === 0 && group.log !== null) gain = log - group.log
    }
  }

  /** The classes of wear that are worth a sum of their own. */
  private classesOf({ meets, holds, peaks }: WideBed, { best, wornLag }: Rough): MeetingClass[] {
    // Where nothing is offered a hold, dips that miss their catches make no difference.
    if ((meets & holds) === 0) return [oneClass]
    const isWornWorth = this.roughMost - best.log + wornLag < worth.worn
    return meetingClasses(peaks.dimensions).filter((_, n) => n === 0 || isWornWorth)
  }

  /** Adds a state with some bars, class of wear by class of wear; gives the log of how likely the notes are with them. */
  private addBar(
    state: WideState,
    bed: WideBed,
    { retainer, bars, more }: BarGroup,
    classes: readonly MeetingClass[],
    depth: Depth,
  ): number {
    const { setting } = this.asked
    const own: number[] = []
    for (const meeting of classes) {
      const sums = stateSumsOf(setting, bed, retainer, meeting, depth)
      const { logs } = weighingOf(setting.byHand, retainer, sums.hidden, sums.strips)
      const log = chanceLog(setting, state) + more + logSum(logs)
      this.beds.push({ state, sums, bars, logs, log })
      this.most = Math.max(this.most, log)
      // Further wear is further behind, once it is.
      const isFalling = own.length > 0 && log <= lastOf(own)
      own.push(log)
      if (isFalling && log < this.most - expectedLag) break
    }
    return logSum(own)
  }
}
