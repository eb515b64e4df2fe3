/** Something that looks must meet: how much of it each look meets, 0 to 1, by the look's number; whole at 1. */
export type Demand = Float64Array

/** Demands with what is missing of each. */
export type Missing = readonly (readonly [Demand, number])[]

/** Shares come from logarithms: what is missing counts as nothing from here down. */
const nothing = 1e-9

/** All of each demand. */
export const missingAll = (demands: readonly Demand[]): Missing => demands.map((demand) => [demand, 1])

/** Whether looks together meet a demand. */
export const isMetBy = (demand: Demand, looks: readonly number[]): boolean =>
  looks.reduce((sum, look) => sum + demand[look]!, 0) >= 1 - nothing

/** What is missing after one more look. */
export const after = (missing: Missing, look: number): Missing =>
  missing.flatMap(([demand, left]) => {
    const next = left - demand[look]!
    return next <= nothing ? [] : [[demand, next] as const]
  })

/** Whether whatever meets one demand meets another. */
const implies = (one: Demand, other: Demand): boolean => one.every((share, look) => share <= other[look]!)

/** The demands that no other implies, each once. */
export const hardestOf = (demands: readonly Demand[]): Demand[] => {
  const distinct = [...new Map(demands.map((demand) => [demand.join(), demand])).values()]
  return distinct.filter((demand) => !distinct.some((other) => other !== demand && implies(other, demand)))
}

/** How many of these shares a demand takes at least, the largest first; Infinity where all are not enough. */
const fewestShares = (shares: readonly number[], missing: number): number => {
  let sum = 0
  for (const [n, share] of shares.toSorted((one, other) => other - one).entries())
    if ((sum += share) >= missing - nothing) return n + 1
  return Infinity
}

/** Of some looks those that meet any of a demand. */
export const looksFor = (demand: Demand, looks: readonly number[]): number[] =>
  looks.filter((look) => demand[look]! > 0)

/** So many of these looks are needed at least: demands that share no look need theirs each. */
export const leastFor = (missing: Missing, looks: readonly number[]): number => {
  const byNeed = missing
    .map(([demand, left]) => {
      const own = looksFor(demand, looks)
      return {
        own,
        need: fewestShares(
          own.map((look) => demand[look]!),
          left,
        ),
      }
    })
    .sort((one, other) => other.need - one.need || one.own.length - other.own.length)
  const used = new Set<number>()
  let sum = 0
  for (const { own, need } of byNeed) {
    if (own.some((look) => used.has(look))) continue
    for (const look of own) used.add(look)
    sum += need
  }
  return sum
}
