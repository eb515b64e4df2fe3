/** Something that looks must meet: how much of it each look meets, 0 to 1, by the look's number; whole at 1. */
export type Demand = Float64Array

/** Which looks to take, in their order, and how sure it is that fewer will not do. */
export interface FewestLooks {
  readonly taken: readonly number[]
  /** No set of fewer looks than this meets every demand. */
  readonly atLeast: number
}

/** Among so many looks the fewest are found however many sets must be tried; among more, that many are tried. */
const certain = { looks: 20, tries: 2000 } as const

/** Sums of shares are whole from here on: they come from logarithms. */
const whole = 1 - 1e-9

const isMetBy = (demand: Demand, looks: Iterable<number>): boolean => {
  let sum = 0
  for (const look of looks) sum += demand[look]!
  return sum >= whole
}

/** Whether whatever meets one demand meets another. */
const implies = (one: Demand, other: Demand): boolean => one.every((share, look) => share <= other[look]!)

/** The demands that no other implies, each once. */
const hardestOf = (demands: readonly Demand[]): Demand[] => {
  const distinct = [...new Map(demands.map((demand) => [demand.join(), demand])).values()]
  return distinct.filter((demand) => !distinct.some((other) => other !== demand && implies(other, demand)))
}

/** The look that meets most of what is left, the first of equals. */
const bestLook = (left: readonly (readonly [Demand, number])[], count: number): number => {
  let best = { look: 0, gain: -1 }
  for (let look = 0; look < count; look++) {
    const gain = left.reduce((sum, [demand, missing]) => sum + Math.min(missing, demand[look]!), 0)
    if (gain > best.gain + 1e-12) best = { look, gain }
  }
  return best.look
}

type Left = readonly (readonly [Demand, number])[]

/** What is left of demands after one more look. */
const after = (left: Left, look: number): Left =>
  left.flatMap(([demand, missing]) => {
    const next = missing - demand[look]!
    return next <= 1 - whole ? [] : [[demand, next] as const]
  })

/** Always the look that meets most, and then without those that are not needed. */
const greedy = (demands: readonly Demand[], count: number): number[] => {
  let left: Left = demands.map((demand) => [demand, 1])
  const taken: number[] = []
  while (left.length > 0) {
    // A look that was taken meets no more.
    const next = bestLook(
      left.map(([demand, missing]) => [
        demand.map((share, look) => (taken.includes(look) ? 0 : share)),
        missing,
      ]),
      count,
    )
    taken.push(next)
    left = after(left, next)
  }
  return taken.reduce<number[]>((kept, look) => {
    const without = kept.filter((one) => one !== look)
    return demands.every((demand) => isMetBy(demand, without)) ? without : kept
  }, taken)
}

/** How many of the looks that are still open a demand takes at least, those that meet most of it first. */
const fewestFor = ([demand, missing]: Left[number], isOpen: (look: number) => boolean): number => {
  const shares = [...demand].filter((share, look) => share > 0 && isOpen(look)).sort((a, b) => b - a)
  let sum = 0
  for (const [n, share] of shares.entries()) if ((sum += share) >= missing - (1 - whole)) return n + 1
  return Infinity
}

/** So many looks are needed at least: demands that share no look need theirs each. */
const leastFor = (left: Left, isOpen: (look: number) => boolean): number => {
  const used = new Set<number>()
  let sum = 0
  const looksOf = ([demand]: Left[number]): number[] =>
    [...demand.keys()].filter((look) => demand[look]! > 0 && isOpen(look))
  const byNeed = left
    .map((one) => ({ looks: looksOf(one), need: fewestFor(one, isOpen) }))
    .sort((one, other) => other.need - one.need || one.looks.length - other.looks.length)
  for (const { looks, need } of byNeed) {
    if (looks.some((look) => used.has(look))) continue
    for (const look of looks) used.add(look)
    sum += need
  }
  return sum
}

/**
 * The fewest looks that meet every demand, each look at most once. All demands can be met by all looks together, or it
 * throws a RangeError. By branch and bound from what a greedy choice finds: exact among few looks, and mostly among many;
 * where there is too much to try, the best set found stands, with a bound below which none can be.
 */
export const fewestLooks = (all: readonly Demand[], count: number): FewestLooks => {
  const demands = hardestOf(all)
  const every = Array.from({ length: count }, (_, look) => look)
  if (demands.some((demand) => !isMetBy(demand, every))) throw new RangeError('a demand can’t be met')
  const column = every.map((look) => demands.map((demand) => demand[look]).join())
  let best = greedy(demands, count)
  const first = leastFor(
    demands.map((demand) => [demand, 1]),
    () => true,
  )
  const mostTries = count <= certain.looks ? Infinity : certain.tries
  let tries = 0
  const closed = new Set<number>()
  const isOpen = (look: number): boolean => !closed.has(look)
  const follow = (left: Left, taken: readonly number[]): void => {
    if (left.length === 0) {
      if (taken.length < best.length) best = [...taken]
      return
    }
    if (tries++ > mostTries || taken.length + leastFor(left, isOpen) >= best.length) return
    const [hardest] = left.reduce((one, other) =>
      other[0].filter((share, look) => share > 0 && isOpen(look)).length <
      one[0].filter((share, look) => share > 0 && isOpen(look)).length
        ? other
        : one,
    )
    const own = every.filter((look) => hardest[look]! > 0 && isOpen(look))
    const tried = new Set<string>()
    for (const look of own) {
      closed.add(look)
      // Of looks that meet the same, one that was tried stands for the others.
      if (tried.has(column[look]!)) continue
      tried.add(column[look]!)
      follow(after(left, look), [...taken, look])
    }
    for (const look of own) closed.delete(look)
  }
  if (first < best.length)
    follow(
      demands.map((demand) => [demand, 1]),
      [],
    )
  return { taken: best.sort((a, b) => a - b), atLeast: tries <= mostTries ? best.length : first }
}
