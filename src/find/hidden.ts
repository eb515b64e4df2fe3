import { dimensions } from '../mechanism/dimensions.ts'
import { normalCdf } from '../mechanism/normal.ts'
import { scatter, wornDimensions } from '../mechanism/wear.ts'
import type { StateSums, StripValues } from './bed-sums.ts'
import {
  oilChances,
  pivotChances,
  readerChances,
  readers,
  retainerChances,
  retainerMs,
  slowChances,
  stripChances,
  wearChances,
} from './chances.ts'
import { type Oil, oils } from './finding.ts'
import { certainties, certaintyChances, sufficientChances } from './peaks.ts'
import { caseAlways, caseSuffices, caseWeak, firstLasting } from './slow-sums.ts'

const { strips, catchDepth } = dimensions

/** What is hidden of a machine beside its bed's state: indices in the tables of wear, pivots, readers and oils. */
interface Hidden {
  readonly wear: number
  readonly pivots: number
  readonly reader: number
  readonly oil: number
}

const sure = certainties.length - 1
const whole = (share: Float64Array): number => share.reduce((sum, one) => sum + one, 0)

/** The point of the grid nearest to the mean certainty of pushes that suffice. */
export const meanCertainty = (wear: number, pivots: number): number => {
  if (pivots === 0) return sure
  const share = certaintyChances()[wear]![pivots]!
  const mean = share.reduce((sum, one, n) => sum + one * certainties[n]!, 0) / (whole(share) || 1)
  return certainties.reduce<number>(
    (best, one, n) => (Math.abs(one - mean) < Math.abs(certainties[best]! - mean) ? n : best),
    sure,
  )
}

/** By wear: the chance that the dip of a butt still meets its catch, and that the catch keeps it low enough. */
const meetsBy: readonly number[] = wearChances.map(({ wear }) => {
  const deviation = Math.hypot(scatter(wear).catch, scatter(wear).butt)
  if (deviation === 0) return 1
  const { presser } = wornDimensions(wear)
  return (
    normalCdf((presser - catchDepth) / deviation) - normalCdf((dimensions.gate1 - catchDepth) / deviation)
  )
})

/** Below this the chance that a dip misses is left out of the sums. */
const slight = 1e-4

/** The wears whose dips are weighed together, and the chance that theirs meet. */
export const meetingClasses = (): { meets: number; wears: number[] }[] => {
  const sound = { meets: 1, wears: [] as number[] }
  const worn: { meets: number; wears: number[] }[] = []
  for (const [wear, meets] of meetsBy.entries())
    if (1 - meets < slight) sound.wears.push(wear)
    else worn.push({ meets, wears: [wear] })
  return [sound, ...worn]
}

/** What a strip that follows at once adds up to. */
const fastValue = (state: StateSums, strip: number, wear: number, pivots: number, reader: number): number => {
  const { lines, fast } = state.strips[strip]!
  const size = 1 + fast.length
  const share = pivots === 0 ? null : certaintyChances()[wear]![pivots]!
  const suffices = sufficientChances()[wear]!
  let total = 0
  for (let set = 0; set < state.sets.length; set++) {
    let product = 1
    for (let n = 0; n < 3; n++) {
      const from = ((set * 3 + n) * readers.length + reader) * size
      let value = lines[from]!
      if (share === null) value += suffices * lines[from + size - 1]!
      else for (let g = 0; g < share.length; g++) value += share[g]! * lines[from + 1 + g]!
      product *= value
    }
    total += product
  }
  return total
}

/** The chance of each case of a column of a slow strip that is so slow. */
export const caseChances = (state: StateSums, wear: number, slow: number): Float64Array => {
  const lasting = state.lastings.chances[wear]![slow]!
  const all = new Float64Array(lasting.length + firstLasting)
  all[caseAlways] = 1
  all[caseSuffices] = sufficientChances()[wear]!
  all[caseWeak] = 1 - all[caseSuffices]
  all.set(lasting, firstLasting)
  return all
}

/** What a strip that is so slow adds up to. */
const slowValue = (
  state: StateSums,
  strip: number,
  wear: number,
  certainty: number,
  reader: number,
  slow: number,
): number => {
  const tensor = state.strips[strip]!.slow[state.depth === 'loose' ? certainty : 0]!
  const chances = caseChances(state, wear, slow)
  const size = chances.length
  const from = reader * size ** 3
  let total = 0
  for (let a = 0; a < size; a++) {
    if (chances[a] === 0) continue
    for (let b = 0; b < size; b++) {
      if (chances[b] === 0) continue
      const both = chances[a]! * chances[b]!
      const row = from + (a * size + b) * size
      for (let c = 0; c < size; c++) total += both * chances[c]! * tensor[row + c]!
    }
  }
  return total
}

/** The log of a hidden state's weight and what it is made of, strip by strip. */
export interface Weighed extends Hidden {
  readonly log: number
  /** By strip. */
  readonly parts: readonly StripValues[]
}

const logOf = (chance: number): number => (chance > 0 ? Math.log(chance) : -Infinity)

/** The chance of a retainer bar in this state, by the oil. */
const retainerChance = ({ retainer, byHand }: StateSums, oil: Oil): number =>
  retainer < 0
    ? byHand.right(['retainer.worn=8']) * (1 - retainerChances[oil])
    : (byHand.causes(['retainer.worn=8'], ['retainer.worn=8']) * retainerChances[oil]) / retainerMs.length

const pivotChance = ({ byHand }: StateSums, pivots: number): number => {
  const { mm, chance } = pivotChances[pivots]!
  return (
    chance *
    (mm > 0 ? byHand.causes(['pivots.loose=0.4'], ['pivots.loose=0.4']) : byHand.right(['pivots.loose=0.4']))
  )
}

/** The chances of a strip's states, by the oil and by what was found by hand. */
export const stripChancesOf = (
  { byHand }: Pick<StateSums, 'byHand'>,
  strip: number,
  oil: Oil,
): { sound: number; slow: number; seized: number; over: number } => {
  const { slow, seized, over } = stripChances[oil]
  const hand = byHand.strips[strip]!
  return {
    sound: hand.right * (1 - slow - seized - over),
    slow: hand.slow * slow,
    seized: hand.seized * seized,
    over: hand.over * over,
  }
}

/** Every hidden state of the wears given, with its weight under a bed in some state. */
export const weighHidden = (state: StateSums, wears: readonly number[]): Weighed[] => {
  const all: Weighed[] = []
  const looseness = state.depth === 'loose' ? pivotChances.map((_, n) => n) : [0]
  for (const wear of wears)
    for (const pivots of looseness) {
      const certainty = meanCertainty(wear, pivots)
      for (const [reader, readerName] of readers.entries()) {
        const place = (wear * pivotChances.length + pivots) * readers.length + reader
        const parts = state.strips.map(({ values }, strip): StripValues => {
          let found = values.get(place)
          if (!found)
            values.set(
              place,
              (found = {
                fast: fastValue(state, strip, wear, pivots, reader),
                slow: slowChances.map((_, slow) => slowValue(state, strip, wear, certainty, reader, slow)),
              }),
            )
          return found
        })
        const slows = parts.map(({ slow }) =>
          slow.reduce((sum, value, n) => sum + slowChances[n]!.chance * value, 0),
        )
        const before =
          state.log +
          Math.log(wearChances[wear]!.chance * pivotChance(state, pivots) * readerChances[readerName])
        for (const [oil, oilName] of oils.entries()) {
          let log = before + logOf(oilChances[oilName] * retainerChance(state, oilName))
          for (let strip = 0; strip < strips; strip++) {
            const { seized, over } = state.strips[strip]!
            const chances = stripChancesOf(state, strip, oilName)
            log += logOf(
              chances.sound * parts[strip]!.fast +
                chances.slow * slows[strip]! +
                chances.seized * seized +
                chances.over * over,
            )
          }
          all.push({ wear, pivots, reader, oil, log, parts })
        }
      }
    }
  return all
}
