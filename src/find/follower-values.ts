import { needleValue, type NeedleSums, placeOnStrip } from './needle-sums.ts'

/** The needles that follow a column, and in which looks something else offers each of them a hold whatever it does. */
export interface Followers {
  readonly needles: readonly number[]
  /** By follower: the looks in which a pin that stays pushed over keeps their strip shifted for them. */
  readonly forced: Int32Array
}

/** Above so many looks, few of all the choices of looks are ever asked for. */
const mostListed = 12
/** So often a value is computed again before room is made to keep values: most are asked for a few times only. */
const fewAsked = 24
/** The list of those of which no value is kept yet. */
const nothingKept = new Float64Array(1 << mostListed).fill(-1)

/** How likely the notes of some needles are, by the looks that are offered to all of them; kept once they are asked for often. */
export class FollowerValues {
  readonly sums: NeedleSums
  readonly followers: Followers
  /** The looks in which some of them show whether they were offered a hold. */
  readonly showing: number
  private readonly places: Int32Array
  private asked = 0
  /** By choice of looks: its value, where it is not negative. */
  private list = nothingKept
  private map: Map<number, number> | null = null

  constructor(sums: NeedleSums, followers: Followers) {
    this.sums = sums
    this.followers = followers
    this.places = Int32Array.from(followers.needles, placeOnStrip)
    this.showing = this.places.reduce(
      (some, place, n) => some | (sums.showing[place]! & ~followers.forced[n]!),
      0,
    )
  }

  /** How likely the notes are with these looks offered to all of the needles. */
  of(offered: number): number {
    const value = this.list[offered & this.showing]!
    return value >= 0 ? value : this.unknown(offered & this.showing)
  }

  private unknown(own: number): number {
    const { looks } = this.sums
    if (looks <= mostListed) {
      const value = this.computed(own)
      if (this.asked++ === fewAsked) this.list = new Float64Array(1 << looks).fill(-1)
      if (this.asked > fewAsked) this.list[own] = value
      return value
    }
    const map = (this.map ??= new Map<number, number>())
    let value = map.get(own)
    if (value === undefined) map.set(own, (value = this.computed(own)))
    return value
  }

  private computed(offered: number): number {
    const { sums, places } = this
    const { forced } = this.followers
    let value = 1
    for (let n = 0; n < places.length; n++) value *= needleValue(sums, places[n]!, offered | forced[n]!)
    return value
  }
}

/** The values of some followers, the same each time they are asked for. */
export const valuesOf = (sums: NeedleSums, followers: Followers): FollowerValues => {
  let found = sums.known.get(followers)
  if (!found) sums.known.set(followers, (found = new FollowerValues(sums, followers)))
  return found
}
