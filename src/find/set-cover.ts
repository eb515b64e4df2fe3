/** Something that can be done, at a cost, and which of the numbered things it parts from the one that is meant. */
export interface CoverSet {
  readonly cost: number
  readonly parts: ReadonlySet<number>
}

/** Which means to take, by their place in the list, and whether it is proved that nothing cheaper will do. */
export interface Cover {
  readonly taken: readonly number[]
  readonly cost: number
  readonly isProved: boolean
}

/** The most sets of means that are looked at before the best one found is taken, not proved. */
const mostTries = 200_000

interface Search {
  best: Omit<Cover, 'isProved'>
  tries: number
}

/** The thing that the fewest means part: one of those must be taken. */
const hardest = (left: readonly number[], byThing: ReadonlyMap<number, readonly number[]>): number =>
  left.reduce((least, thing) => (byThing.get(thing)!.length < byThing.get(least)!.length ? thing : least))

/**
 * The cheapest means that together part every thing which any of them parts. Exact, by branch and bound: the thing that
 * is hardest to part needs one of the few means that part it, and a set as dear as the best one found is not followed up.
 */
export const cheapestCover = (means: readonly CoverSet[]): Cover => {
  const byThing = new Map<number, number[]>()
  for (const [which, { parts }] of means.entries())
    for (const thing of parts) byThing.set(thing, [...(byThing.get(thing) ?? []), which])
  for (const list of byThing.values()) list.sort((a, b) => means[a]!.cost - means[b]!.cost)
  const least = Math.min(...means.map(({ cost }) => cost))
  const search: Search = { best: { taken: [], cost: Infinity }, tries: 0 }
  const follow = (left: readonly number[], taken: readonly number[], cost: number): void => {
    if (left.length === 0) {
      // What is as dear as the best was not followed up.
      search.best = { taken, cost }
      return
    }
    for (const which of byThing.get(hardest(left, byThing))!) {
      const one = means[which]!
      if (search.tries > mostTries) return
      const next = left.filter((thing) => !one.parts.has(thing))
      const total = cost + one.cost
      if (total + (next.length > 0 ? least : 0) >= search.best.cost) continue
      search.tries++
      follow(next, [...taken, which], total)
    }
  }
  follow([...byThing.keys()], [], 0)
  return { ...search.best, isProved: search.tries <= mostTries }
}
