import { at } from '../mechanism/lookup.ts'
import { columnStates } from './fast-lines.ts'
import type { ColumnState } from './strip-sums.ts'

/** What a column may be in a whole machine: amounts, and whether it is merely worn, are summed over. */
const columnKinds = ['right', 'dead', 'high', 'over', 'sticky', 'other'] as const
export type ColumnKind = (typeof columnKinds)[number]

const kindOf: Readonly<Record<ColumnState, number>> = {
  sound: 0,
  worn: 0,
  hole: 0,
  dead: 1,
  high: 2,
  over: 3,
  sticky: 4,
  other: 5,
}
const kindCount = columnKinds.length
const kindsOfStates = columnStates.map((state) => kindOf[state])

/** What of a strip and its columns is wrong at once, with how likely that is in one bed. */
export interface StripBlock {
  readonly strip: 'right' | 'seized' | 'over' | 'slow'
  readonly columns: readonly ColumnKind[]
  readonly weight: number
}

/** Shares below this of what a column may be are left out. */
const least = 1e-4

/** How likely each combination of a strip's columns is, whether the strip is sound or slow. */
export class Blocks {
  seized = 0
  over = 0
  private readonly sound = new Float64Array(kindCount ** 3)
  private readonly slow = new Float64Array(kindCount ** 3)

  /** Adds a strip that follows at once; `parts` are by column and by state, `totals` their sums. */
  addFast(parts: readonly Float64Array[], totals: readonly number[], weight: number): void {
    const shares = parts.map((part, n) => {
      const all = new Float64Array(kindCount)
      for (const [state, value] of part.entries()) all[kindsOfStates[state]!]! += value / totals[n]!
      return all
    })
    this.addProduct(this.sound, shares, weight)
  }

  /** Adds a slow strip; by column the states that it may be in, with their shares. */
  addSlow(
    columns: readonly { readonly states: readonly ColumnState[]; readonly shares: Float64Array }[],
    weight: number,
  ): void {
    const shares = columns.map(({ states, shares: own }) => {
      const all = new Float64Array(kindCount)
      for (const [n, state] of states.entries()) all[kindOf[state]]! += own[n]!
      return all
    })
    this.addProduct(this.slow, shares, weight)
  }

  private addProduct(onto: Float64Array, shares: readonly Float64Array[], weight: number): void {
    const [first, second, third] = shares as [Float64Array, Float64Array, Float64Array]
    for (let a = 0; a < kindCount; a++) {
      if (first[a]! < least) continue
      for (let b = 0; b < kindCount; b++) {
        if (second[b]! < least) continue
        for (let c = 0; c < kindCount; c++)
          onto[(a * kindCount + b) * kindCount + c]! += weight * first[a]! * second[b]! * third[c]!
      }
    }
  }

  list(): StripBlock[] {
    const right: ColumnKind[] = ['right', 'right', 'right']
    const of = (strip: 'right' | 'slow', weights: Float64Array): StripBlock[] =>
      [...weights.keys()].map((n) => ({
        strip,
        weight: weights[n]!,
        columns: [Math.floor(n / kindCount ** 2), Math.floor(n / kindCount) % kindCount, n % kindCount].map(
          (kind) => at(columnKinds, kind),
        ),
      }))
    const still: StripBlock[] = [
      { strip: 'seized', columns: right, weight: this.seized },
      { strip: 'over', columns: right, weight: this.over },
    ]
    return [...of('right', this.sound), ...of('slow', this.slow), ...still].filter(({ weight }) => weight > 0)
  }
}
