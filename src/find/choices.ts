import { type NeedleSums, placeOnStrip } from './needle-sums.ts'

/** The needles that follow a column, and in which looks something else offers each of them a hold whatever it does. */
export interface Followers {
  readonly needles: readonly number[]
  /** By follower: the looks in which a pin that stays pushed over keeps their strip shifted for them. */
  readonly forced: Int32Array
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

/** The looks in which some of these needles show whether they were offered a hold. */
const showingIn = (sums: NeedleSums, { needles, forced }: Followers): number => {
  let some = 0
  for (let n = 0; n < needles.length; n++) some |= sums.showing[placeOnStrip(needles[n]!)]! & ~forced[n]!
  return some
}

/** Sum over every choice of looks out of `choices`, each offered with the chance `share`. */
export const sumOfChoices = (
  sums: NeedleSums,
  followers: Followers,
  choices: number,
  share: number,
): number => {
  const looks = indicesOf(choices & showingIn(sums, followers))
  return looks.length <= mostChoices
    ? byLooks(sums, followers, looks, share)
    : byNeedles(sums, followers, looks, share)
}

/** A term of a needle: what each look multiplies it with, what it begins with, and the most that it can come to. */
interface Term {
  readonly weight: number
  readonly most: number
  readonly factors: Float64Array | null
  readonly from: number
}

/** The terms of a needle that some of these looks may be offered to, the one that may come to most first. */
const termsOf = (sums: NeedleSums, needle: number, forced: number, looks: readonly number[]): Term[] => {
  const slot = placeOnStrip(needle)
  const from = slot * sums.looks
  const term = (start: number, factors: Float64Array): Term => {
    const weight = indicesOf(forced).reduce((product, look) => product * factors[from + look]!, start)
    const most = looks.reduce((product, look) => product * Math.max(1, factors[from + look]!), weight)
    return { weight, most, factors, from }
  }
  const deaf = sums.deaf[slot]!
  const terms: Term[] = [
    term(sums.hears[slot]!, sums.factors),
    ...(sums.stiffHears ? [term(sums.stiff[slot]!, sums.stiffFactors)] : []),
    { weight: deaf, most: deaf, factors: null, from },
  ]
  return terms.sort((one, other) => other.most - one.most)
}

const byLooks = (
  sums: NeedleSums,
  { needles, forced }: Followers,
  looks: readonly number[],
  share: number,
): number => {
  const count = needles.length
  const depths = looks.length
  const { stiffHears, factors, stiffFactors } = sums
  const hears = new Float64Array((depths + 1) * count)
  const stiff = new Float64Array(stiffHears ? (depths + 1) * count : 0)
  for (let n = 0; n < count; n++) {
    const needle = needles[n]!
    const from = placeOnStrip(needle) * sums.looks
    let [own, ownStiff] = [sums.hears[placeOnStrip(needle)]!, sums.stiff[placeOnStrip(needle)]!]
    for (let left = forced[n]!; left !== 0; left &= left - 1) {
      const look = 31 - Math.clz32(left & -left)
      if (look >= sums.looks) continue
      own *= factors[from + look]!
      ownStiff *= stiffFactors[from + look]!
    }
    hears[n] = own
    if (stiffHears) stiff[n] = ownStiff
  }
  const go = (depth: number): number => {
    const base = depth * count
    if (depth === depths) {
      let product = 1
      for (let n = 0; n < count; n++)
        product *=
          hears[base + n]! + sums.deaf[placeOnStrip(needles[n]!)]! + (stiffHears ? stiff[base + n]! : 0)
      return product
    }
    const next = base + count
    const look = looks[depth]!
    let without = 0
    if (share < 1) {
      for (let n = 0; n < count; n++) hears[next + n] = hears[base + n]!
      if (stiffHears) for (let n = 0; n < count; n++) stiff[next + n] = stiff[base + n]!
      without = (1 - share) * go(depth + 1)
    }
    for (let n = 0; n < count; n++) {
      const isFree = (forced[n]! & (1 << look)) === 0
      const place = placeOnStrip(needles[n]!) * sums.looks + look
      hears[next + n] = isFree ? hears[base + n]! * factors[place]! : hears[base + n]!
      if (stiffHears) stiff[next + n] = isFree ? stiff[base + n]! * stiffFactors[place]! : stiff[base + n]!
    }
    return without + share * go(depth + 1)
  }
  return go(0)
}

/** A product of terms that can't come to such a share of the sum so far is left out, and all smaller ones. */
const leastTerm = 1e-14

const byNeedles = (
  sums: NeedleSums,
  { needles, forced }: Followers,
  looks: readonly number[],
  share: number,
): number => {
  const count = looks.length
  const terms = needles.map((needle, n) => termsOf(sums, needle, forced[n]!, looks))
  /** By needle: the most that it and those after it can come to. */
  const mostLeft = new Float64Array(needles.length + 1).fill(1)
  for (let n = needles.length - 1; n >= 0; n--) mostLeft[n] = mostLeft[n + 1]! * terms[n]![0]!.most
  const products = new Float64Array((needles.length + 1) * count).fill(1)
  let sum = 0
  const go = (depth: number, weight: number, most: number): void => {
    const base = depth * count
    if (depth === needles.length) {
      let product = weight
      for (let n = 0; n < count; n++) product *= 1 - share + share * products[base + n]!
      sum += product
      return
    }
    const next = base + count
    for (const { weight: own, most: ownMost, factors, from } of terms[depth]!) {
      if (most * ownMost * mostLeft[depth + 1]! <= leastTerm * sum) return
      for (let n = 0; n < count; n++) {
        const look = looks[n]!
        const isFree = factors !== null && (forced[depth]! & (1 << look)) === 0
        products[next + n] = products[base + n]! * (isFree ? factors[from + look]! : 1)
      }
      go(depth + 1, weight * own, most * ownMost)
    }
  }
  go(0, 1, 1)
  return sum
}

/** Choices of looks, each with its chance; the unlikely are left out. */
export type Choices = readonly { readonly offered: number; readonly chance: number }[]

/** A choice with less than this share of all is left out. */
const leastShare = 1e-2

/**
 * How likely each choice of looks out of `choices` was, each offered with the chance `share`, for what was noted of needles;
 * looks that show nothing are left out.
 */
export const choicesOf = (
  sums: NeedleSums,
  followers: Followers,
  choices: number,
  share: number,
): Choices => {
  const found: { offered: number; chance: number }[] = []
  const { needles, forced } = followers
  const whole = sumOfChoices(sums, followers, choices, share)
  const go = (chosen: number, rest: number, chance: number): void => {
    const own = { needles, forced: forced.map((looks) => looks | chosen) }
    const bound = chance * sumOfChoices(sums, own, rest, share)
    if (!(bound > leastShare * whole)) return
    if (rest === 0) {
      found.push({ offered: chosen, chance: bound / whole })
      return
    }
    const bit = rest & -rest
    go(chosen | bit, rest & ~bit, chance * share)
    go(chosen, rest & ~bit, chance * (1 - share))
  }
  go(0, choices & showingIn(sums, followers), 1)
  return found
}
