import type { Followers } from './follower-values.ts'
import type { NeedleShares } from './needle-shares.ts'

/** Weights below this say nothing of needles. */
const slight = 1e-6

/** In which looks some needles were offered a hold, with how likely that is. */
class Offered {
  private readonly weights = new Map<number, number>()

  add(offered: number, weight: number): void {
    if (weight > 0) this.weights.set(offered, (this.weights.get(offered) ?? 0) + weight)
  }

  addTo(shares: NeedleShares, needles: readonly number[], forced: Int32Array): void {
    for (const [offered, weight] of this.weights)
      if (weight >= slight)
        for (const [n, needle] of needles.entries()) shares.add(needle, offered | forced[n]!, weight)
  }
}

/** What groups of needles were offered, but for what is forced on each of them, added up before it is computed needle by needle. */
export class Offers {
  private readonly byGroup = new Map<Followers, Offered>()

  add(group: Followers, offered: number, weight: number): void {
    let known = this.byGroup.get(group)
    if (!known) this.byGroup.set(group, (known = new Offered()))
    known.add(offered, weight)
  }

  addTo(shares: NeedleShares): void {
    for (const [group, offered] of this.byGroup) offered.addTo(shares, group.needles, group.forced)
  }
}
