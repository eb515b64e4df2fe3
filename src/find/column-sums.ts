import { stickyChances } from './chances.ts'
import { needleValue, type NeedleSums } from './needle-sums.ts'

/** The needles that follow a column, and in which looks something else offers each of them a hold whatever it does. */
export interface Followers {
  readonly needles: readonly number[]
  /** By follower: the looks in which a pin that stays pushed over keeps their strip shifted for them. */
  readonly forced: Int32Array
}

/** How likely the notes of a column's needles are, by what the column does. */
export interface ColumnSums {
  /** Its pushes come as the card asks, in no look, in every look that pushes. */
  readonly follows: number
  readonly never: number
  readonly always: number
  /** By stickiness, weighed. */
  readonly sticky: number
  readonly stickyBy: readonly number[]
  /** By look's row that a hole may be wrong in. */
  readonly holes: readonly number[]
  /** Pushes in each look with a chance of one half. */
  readonly other: number
}

/** How likely the notes of some needles are with these looks offered to all of them. */
export const followersValue = (sums: NeedleSums, { needles, forced }: Followers, offered: number): number => {
  let value = 1
  for (let n = 0; n < needles.length; n++) value *= needleValue(sums, needles[n]!, offered | forced[n]!)
  return value
}

export const bitCount = (bits: number): number => {
  let count = 0
  for (let left = bits; left !== 0; left &= left - 1) count++
  return count
}

const indicesOf = (bits: number): number[] => {
  const list: number[] = []
  for (let left = bits; left !== 0; left &= left - 1) list.push(31 - Math.clz32(left & -left))
  return list
}

/** Above so many looks to choose from, the sum goes over which needles follow instead of over which looks are offered. */
const mostChoices = 9

/** Sum over every choice of looks out of `choices`, each offered with the chance `share`. */
export const sumOfChoices = (
  sums: NeedleSums,
  followers: Followers,
  choices: number,
  share: number,
): number => {
  const { needles, forced } = followers
  let some = 0
  for (let n = 0; n < needles.length; n++) some |= sums.telling[needles[n]!]! & ~forced[n]!
  const looks = indicesOf(choices & some)
  return looks.length <= mostChoices
    ? byLooks(sums, followers, looks, share)
    : byNeedles(sums, followers, looks, share)
}

/** The terms of a needle: what each look multiplies it with, and what it begins with. */
interface Term {
  readonly weight: number
  readonly factors: Float64Array | null
  readonly from: number
}

const termsOf = (sums: NeedleSums, needle: number, forced: number): Term[] => {
  const { looks } = sums
  const from = needle * looks
  const times = (start: number, factors: Float64Array): number =>
    indicesOf(forced).reduce((product, look) => product * factors[from + look]!, start)
  return [
    { weight: times(sums.hears[needle]!, sums.factors), factors: sums.factors, from },
    ...(sums.stiffHears
      ? [{ weight: times(sums.stiff[needle]!, sums.stiffFactors), factors: sums.stiffFactors, from }]
      : []),
    { weight: sums.deaf[needle]!, factors: null, from },
  ]
}

const byLooks = (
  sums: NeedleSums,
  { needles, forced }: Followers,
  looks: readonly number[],
  share: number,
): number => {
  const terms = needles.map((needle, n) => termsOf(sums, needle, forced[n]!))
  const flat = terms.flat()
  const count = flat.length
  const depths = looks.length
  const weights = new Float64Array((depths + 1) * count)
  for (let t = 0; t < count; t++) weights[t] = flat[t]!.weight
  const ends: number[] = []
  for (const own of terms) ends.push((ends.at(-1) ?? 0) + own.length)
  const isFree = flat.map(({ from }, t) => {
    const n = ends.findIndex((end) => t < end)
    return looks.map((look) => from >= 0 && (forced[n]! & (1 << look)) === 0)
  })
  const go = (depth: number, chance: number): number => {
    const base = depth * count
    if (depth === depths) {
      let product = chance
      let t = 0
      for (const end of ends) {
        let value = 0
        for (; t < end; t++) value += weights[base + t]!
        product *= value
      }
      return product
    }
    const next = base + count
    for (let t = 0; t < count; t++) weights[next + t] = weights[base + t]!
    const without = share < 1 ? go(depth + 1, chance * (1 - share)) : 0
    const look = looks[depth]!
    for (let t = 0; t < count; t++) {
      const { factors, from } = flat[t]!
      weights[next + t] =
        factors && isFree[t]![depth] ? weights[base + t]! * factors[from + look]! : weights[base + t]!
    }
    return without + go(depth + 1, chance * share)
  }
  return go(0, 1)
}

const byNeedles = (
  sums: NeedleSums,
  { needles, forced }: Followers,
  looks: readonly number[],
  share: number,
): number => {
  const count = looks.length
  const products = new Float64Array((needles.length + 1) * count).fill(1)
  const go = (depth: number, weight: number): number => {
    const base = depth * count
    if (weight === 0) return 0
    if (depth === needles.length) {
      let product = weight
      for (let n = 0; n < count; n++) product *= 1 - share + share * products[base + n]!
      return product
    }
    let sum = 0
    const next = base + count
    for (const { weight: own, factors, from } of termsOf(sums, needles[depth]!, forced[depth]!)) {
      for (let n = 0; n < count; n++) {
        const look = looks[n]!
        const isFree = factors !== null && (forced[depth]! & (1 << look)) === 0
        products[next + n] = products[base + n]! * (isFree ? factors[from + look]! : 1)
      }
      sum += go(depth + 1, weight * own)
    }
    return sum
  }
  return go(0, 1)
}

/**
 * The sums of a column's needles. `asked` are the looks in which a sound pin pushes, `pushes` those in which a pin that
 * is up does; `rows` has, by row of a card that was under the pins, the looks in which it was.
 */
export const columnSumsOf = (
  sums: NeedleSums,
  followers: Followers,
  asked: number,
  pushes: number,
  rows: readonly number[],
  isRough: boolean,
): ColumnSums => {
  const follows = followersValue(sums, followers, asked)
  const stickyBy = stickyChances.map(({ share }) => sumOfChoices(sums, followers, asked, 1 - share))
  return {
    follows,
    never: followersValue(sums, followers, 0),
    always: followersValue(sums, followers, pushes),
    stickyBy,
    sticky: stickyChances.reduce((sum, { chance }, n) => sum + chance * stickyBy[n]!, 0),
    holes: isRough ? [] : rows.map((looks) => followersValue(sums, followers, asked ^ (looks & pushes))),
    other: isRough ? 0 : sumOfChoices(sums, followers, pushes, 0.5),
  }
}
