import { needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { at } from '../mechanism/lookup.ts'
import { allColumns, allNeedles, toStrip } from '../mechanism/indices.ts'
import type { StateSums } from './bed-sums.ts'
import { columnChances, pivotChances, readers, slowChances, stickyChances } from './chances.ts'
import { bitCount, type ColumnSums, sumOfChoices } from './column-sums.ts'
import { type Oil, oils } from './finding.ts'
import { caseChances, meanCertainty, stripChancesOf, type Weighed } from './hidden.ts'
import { needleValue, slipValue, stiffValue } from './needle-sums.ts'
import { certaintyChances, sufficientChances } from './peaks.ts'
import { columnPlace, needlePlace, type Place, stripPlace } from './place.ts'
import type { PossibleBed } from './possible-beds.ts'
import { eachSlowTerm, firstLasting, offersAtEnd, offersOf } from './slow-sums.ts'
import { columnParts, type ColumnState, type FastSums, followersOf, stripColumns } from './strip-sums.ts'
import type { Tally } from './tally.ts'

const { strips, needles: needleCount, columns: columnCount } = dimensions

/** Weights below this share of the whole are left out of what is said of places. */
const slight = 1e-6

/** Columns whose chance of a choice of looks is less, and choices with less than such a share, say nothing of needles. */
const leastFast = 1e-9
const leastKind = 1e-4
const leastChosen = 1e-3
const leastShare = 1e-2

/** What is added up of columns, before the shares of sticky pins. */
const columnTallies = ['dead', 'high', 'over', 'other'] as const
const tallySize = columnTallies.length + stickyChances.length
const setCount = 8

/** Everything that the possible beds say together; chances add up over all of them. */
export interface Posterior {
  readonly tally: Tally
  readonly oil: Readonly<Record<Oil, number>>
  readonly wear: Float64Array
  readonly reader: Float64Array
  /** By strip from 0: the chance that it and its three columns are right. */
  readonly rightStrips: Float64Array
  /** Sets of whole-bed places that are wrong at once, with their chances. */
  readonly wide: readonly { readonly places: readonly Place[]; readonly weight: number }[]
  /** By needle and look: the chance that the note is a slip, or of a needle that nothing explains. */
  readonly slips: Float64Array
}

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

/** What of a strip and its columns is wrong at once, with how likely that is in one bed. */
export interface StripBlock {
  readonly strip: 'right' | 'seized' | 'over' | 'slow'
  readonly columns: readonly ColumnKind[]
  readonly weight: number
}

/** What a bed says of whole machines: its strips, and by needle the chance of each way in which it is wrong. */
export interface WholeBed {
  readonly strips: readonly (readonly StripBlock[])[]
  /** By needle: no hold, stiff, gone, other. */
  readonly needles: Float64Array
}

/** How often each choice of looks was offered to a needle, summed over what is possible, for one certainty. */
class Offers {
  readonly byKey = new Map<number, number>()
  add(offered: number, weight: number): void {
    this.byKey.set(offered, (this.byKey.get(offered) ?? 0) + weight)
  }
}

/** How likely each combination of a strip's columns is, whether the strip is sound or slow. */
class Blocks {
  seized = 0
  over = 0
  private readonly sound = new Float64Array(kindCount ** 3)
  private readonly slow = new Float64Array(kindCount ** 3)

  addFast(
    parts: readonly (ReturnType<typeof columnParts> | number)[],
    totals: readonly number[],
    product: number,
  ): void {
    const shares = parts.map((part, n) => {
      const all = new Float64Array(kindCount)
      if (typeof part === 'number') all[kindOf.over] = 1
      else
        for (const [state, value] of Object.entries(part))
          all[kindOf[state as ColumnState]]! += value / totals[n]!
      return all
    })
    this.addProduct(this.sound, shares, product)
  }

  addSlow(
    entries: readonly { whens: readonly { state: ColumnState }[] }[],
    weights: readonly Float64Array[],
    whole: number,
  ): void {
    const shares = entries.map(({ whens }, m) => {
      const all = new Float64Array(kindCount)
      for (const [n, { state }] of whens.entries()) all[kindOf[state]]! += weights[m]![n]! / whole
      return all
    })
    this.addProduct(this.slow, shares, whole)
  }

  private addProduct(onto: Float64Array, shares: readonly Float64Array[], whole: number): void {
    const [first, second, third] = shares as [Float64Array, Float64Array, Float64Array]
    for (let a = 0; a < kindCount; a++) {
      if (first[a]! < leastKind) continue
      for (let b = 0; b < kindCount; b++) {
        if (second[b]! < leastKind) continue
        for (let c = 0; c < kindCount; c++)
          onto[(a * kindCount + b) * kindCount + c]! += whole * first[a]! * second[b]! * third[c]!
      }
    }
  }

  list(): StripBlock[] {
    const right: ColumnKind[] = ['right', 'right', 'right']
    const of = (strip: 'right' | 'slow', weights: Float64Array): StripBlock[] =>
      [...weights].flatMap((weight, n) =>
        weight > 0
          ? [
              {
                strip,
                weight,
                columns: [
                  at(columnKinds, Math.floor(n / kindCount ** 2)),
                  at(columnKinds, Math.floor(n / kindCount) % kindCount),
                  at(columnKinds, n % kindCount),
                ],
              },
            ]
          : [],
      )
    const still: StripBlock[] = [
      { strip: 'seized', columns: right, weight: this.seized },
      { strip: 'over', columns: right, weight: this.over },
    ]
    return [...of('right', this.sound), ...of('slow', this.slow), ...still].filter(({ weight }) => weight > 0)
  }
}

/** What a bed adds to the posterior. */
export class BedPosterior {
  private readonly state: StateSums
  private readonly tally: Tally
  private readonly rightStrips: Float64Array
  /** By needle, by certainty. */
  private readonly offers: Offers[][]

  private readonly whole: Posterior
  private readonly columnWeights = new Float64Array(columnCount * tallySize)
  private readonly blocks = Array.from({ length: strips }, () => new Blocks())
  private readonly needleWeights = new Float64Array(needleCount * 4)
  private readonly columnOffers = new Map<number, Map<number, number>>()
  /** Choices of looks that columns may have made, with their weights. */
  private readonly chosen = new Map<
    string,
    { column: number; set: number; certainty: number; choices: number; share: number; weight: number }
  >()

  constructor(bed: PossibleBed, whole: Posterior) {
    this.whole = whole
    this.state = bed.sums
    this.tally = whole.tally
    this.rightStrips = whole.rightStrips
    this.offers = this.state.sums().map(() => Array.from({ length: needleCount }, () => new Offers()))
  }

  /** Adds everything, where each hidden state has the weight given. */
  addAll(weights: readonly { hidden: Weighed; weight: number }[]): WholeBed {
    for (let strip = 0; strip < strips; strip++) this.addStrip(strip, weights)
    this.addChosen()
    this.addColumns()
    this.addOffers()
    this.addNeedles()
    return { strips: this.blocks.map((block) => block.list()), needles: this.needleWeights }
  }

  private addStrip(strip: number, weights: readonly { hidden: Weighed; weight: number }[]): void {
    const { seized, over } = at(this.state.strips, strip)
    const place = stripPlace(toStrip(strip + 1))
    const id = strip + 1
    const byKey = new Map<number, { hidden: Weighed; fast: number; slow: Float64Array }>()
    const unseen = new Float64Array(readers.length)
    let [seizedAll, overAll] = [0, 0]
    const slowAll = new Float64Array(slowChances.length)
    for (const { hidden, weight } of weights) {
      const chances = stripChancesOf(this.state, strip, at(oils, hidden.oil))
      const parts = at(hidden.parts, strip)
      const { sound } = chances
      const slow = parts.slow.map((value, n) => chances.slow * at(slowChances, n).chance * value)
      const still = chances.seized * seized + chances.over * over
      const all = sound * parts.fast + still + slow.reduce((sum, value) => sum + value, 0)
      if (all === 0) continue
      const unit = weight / all
      seizedAll += unit * chances.seized * seized
      overAll += unit * chances.over * over
      unseen[hidden.reader]! += unit * still
      const key = (hidden.wear * pivotChances.length + hidden.pivots) * readers.length + hidden.reader
      let known = byKey.get(key)
      if (!known) byKey.set(key, (known = { hidden, fast: 0, slow: new Float64Array(slowChances.length) }))
      known.fast += unit * sound
      for (const [n, value] of slow.entries()) {
        slowAll[n]! += unit * value
        known.slow[n]! += unit * chances.slow * at(slowChances, n).chance
      }
    }
    at(this.blocks, strip).seized += seizedAll
    at(this.blocks, strip).over += overAll
    this.tally.add(place, [`strip.${id}.seized`], seizedAll)
    this.tally.add(place, [`strip.${id}.over`], overAll)
    for (const [n, weight] of slowAll.entries())
      this.tally.add(place, [`strip.${id}.slow=${at(slowChances, n).ms}`], weight)
    for (const [reader, weight] of unseen.entries()) this.addUnseen(strip, reader, weight)
    for (const column of stripColumns(strip)) {
      this.offerColumn(column, 0, this.sure, 0, seizedAll)
      this.offerColumn(column, 0, this.sure, -1, overAll)
    }
    for (const { hidden, fast } of byKey.values()) this.addFast(strip, hidden, fast)
    if (slowAll.reduce((sum, weight) => sum + weight, 0) > slight) this.addSlow(strip, [...byKey.values()])
  }

  /** Columns whose strip hides what they do are as likely wrong as before. */
  private addUnseen(strip: number, reader: number, weight: number): void {
    if (weight === 0) return
    const chances = columnChances[at(readers, reader)]
    for (const column of stripColumns(strip)) {
      const hand = at(this.state.byHand.columns, column)
      const { dead, high, over, sticky, other } = chances
      const right = hand.right * (1 - dead - high - over - sticky)
      const rest = hand.dead * dead + hand.high * high + hand.over * over + hand.sticky * sticky
      const share = weight / (right + rest)
      this.addColumn(column, 'dead', share * hand.dead * dead)
      this.addColumn(column, 'high', share * hand.high * high)
      this.addColumn(column, 'over', share * hand.over * over)
      this.addColumn(column, 'other', share * hand.right * other)
      for (const [n, { chance }] of stickyChances.entries())
        this.addSticky(column, n, share * hand.sticky * sticky * chance)
    }
  }

  private addColumn(column: number, state: ColumnState, weight: number): void {
    const n = (columnTallies as readonly string[]).indexOf(state)
    if (n >= 0) this.columnWeights[column * tallySize + n]! += weight
  }

  private addSticky(column: number, n: number, weight: number): void {
    this.columnWeights[column * tallySize + columnTallies.length + n]! += weight
  }

  private addColumns(): void {
    for (const column of allColumns) {
      const place = columnPlace(column)
      const weight = (n: number): number => this.columnWeights[(column - 1) * tallySize + n]!
      this.tally.add(place, [`pin.${column}.low`, `rocker.${column}.dead`], weight(0))
      this.tally.add(place, [`pin.${column}.high`], weight(1))
      this.tally.add(place, [`pin.${column}.over`], weight(2))
      this.tally.add(place, ['other'], weight(3))
      for (const [n, { share }] of stickyChances.entries())
        this.tally.add(place, [`pin.${column}.sticky=${share}`], weight(columnTallies.length + n))
    }
  }

  /** Index of the sums of pivots that are not loose. */
  private get sure(): number {
    return this.state.sums().length - 1
  }

  private get exact() {
    return at(this.state.sums(), this.state.sums().length - 1)
  }

  /** Adds what a strip that follows at once says, for one wear, looseness and reader; `unit` is for each unit of its sum. */
  private addFast(strip: number, hidden: Weighed, unit: number): void {
    const { fast } = at(this.state.strips, strip)
    const reader = at(readers, hidden.reader)
    const suffices = at(sufficientChances(), hidden.wear)
    const loose = hidden.pivots === 0 ? null : at(at(certaintyChances(), hidden.wear), hidden.pivots)
    const exact = at(fast, fast.length - 1)
    const certainty = this.state.depth === 'loose' ? meanCertainty(hidden.wear, hidden.pivots) : 0
    for (const [n, set] of this.state.sets.entries()) {
      const sums = at(exact, n)
      const parts = sums.map((column, m) => this.partsOf(fast, n, m, column, reader, suffices, loose))
      const totals = parts.map((part) =>
        typeof part === 'number' ? part : Object.values(part).reduce((a, b) => a + b, 0),
      )
      const product = unit * at(totals, 0) * at(totals, 1) * at(totals, 2)
      if (!(product > leastFast)) continue
      let right = set === 0 ? product : 0
      at(this.blocks, strip).addFast(parts, totals, product)
      for (const [m, column] of stripColumns(strip).entries()) {
        const part = at(parts, m)
        const total = at(totals, m)
        if (typeof part === 'number') {
          this.addColumn(column, 'over', product)
          this.offerColumn(column, set, certainty, 0, product)
          continue
        }
        const share = product / total
        right *= (part.sound + part.worn + part.hole) / total
        this.addColumnParts(column, set, certainty, part, at(sums, m) as ColumnSums, share)
      }
      this.rightStrips[strip]! += right
    }
  }

  private partsOf(
    fast: readonly (readonly FastSums[])[],
    set: number,
    column: number,
    exact: ColumnSums | number,
    reader: (typeof readers)[number],
    suffices: number,
    loose: Float64Array | null,
  ): ReturnType<typeof columnParts> | number {
    if (typeof exact === 'number') {
      const { over } = columnChances[reader]
      if (!loose) return suffices * over * exact
      return loose.reduce(
        (sum, share, g) => sum + share * over * (at(at(at(fast, g), set), column) as number),
        0,
      )
    }
    if (!loose) return columnParts(exact, reader, suffices)
    const mixed = { ...columnParts(exact, reader, 0) }
    const names = Object.keys(mixed) as (keyof typeof mixed)[]
    for (const name of names) mixed[name] *= 1 - suffices
    for (const [g, share] of loose.entries()) {
      if (share === 0) continue
      const part = columnParts(at(at(at(fast, g), set), column) as ColumnSums, reader, 1)
      for (const name of names) mixed[name] += share * part[name]
    }
    return mixed
  }

  private addColumnParts(
    column: number,
    set: number,
    certainty: number,
    part: ReturnType<typeof columnParts>,
    sums: ColumnSums,
    share: number,
  ): void {
    const { bed, rows } = this.exact
    const asked = bed.pushed[column]! & bed.meets
    const pushes = bed.pushes & bed.meets
    const push = (offered: number, weight: number): void =>
      this.offerColumn(column, set, certainty, offered, weight)
    push(asked, share * part.sound)
    push(0, share * (part.worn + part.dead))
    push(pushes, share * part.high)
    this.addColumn(column, 'dead', share * part.dead)
    this.addColumn(column, 'high', share * part.high)
    this.addColumn(column, 'other', share * part.other)
    const holes = sums.holes.reduce((a, b) => a + b, 0)
    if (share * part.hole > 0)
      for (const [n, value] of sums.holes.entries()) {
        const weight = (share * part.hole * value) / holes
        this.addHole(column, n, weight)
        push(asked ^ (at(rows, n) & pushes), weight)
      }
    const sticky = sums.stickyBy.map((value, n) => value * at(stickyChances, n).chance)
    const whole = sticky.reduce((a, b) => a + b, 0)
    if (share * part.sticky > 0 && whole > 0)
      for (const [n, value] of sticky.entries()) {
        const weight = (share * part.sticky * value) / whole
        this.addSticky(column, n, weight)
        this.addChoices(column, set, certainty, asked, 1 - at(stickyChances, n).share, weight)
      }
    this.addChoices(column, set, certainty, pushes, 0.5, share * part.other)
  }

  private addHole(column: number, row: number, weight: number): void {
    const { bed, rows } = this.exact
    const look = Math.log2(at(rows, row) & -at(rows, row)) | 0
    const { view } = at(bed.looks, look)
    if (!view.card || view.shift === null) return
    const own = ((view.pass - 1 + view.shift) % view.card.length) + 1
    const isBlocked = ((bed.pushed[column] ?? 0) & (1 << look)) !== 0
    this.tally.add(
      'card',
      [isBlocked ? `card.blocked.${own}.${column + 1}` : `card.torn.${own}.${column + 1}`],
      weight,
    )
  }

  private offerColumn(column: number, set: number, certainty: number, offered: number, weight: number): void {
    if (!(weight > 0)) return
    const key = (certainty * setCount + set) * columnCount + column
    let known = this.columnOffers.get(key)
    if (!known) this.columnOffers.set(key, (known = new Map<number, number>()))
    known.set(offered, (known.get(offered) ?? 0) + weight)
  }

  private addOffers(): void {
    for (const [key, known] of this.columnOffers) {
      const column = key % columnCount
      const set = Math.floor(key / columnCount) % setCount
      const followers = followersOf(this.exact, column, set)
      const list = at(this.offers, Math.floor(key / columnCount / setCount))
      for (const [offered, weight] of known) {
        if (weight < slight) continue
        for (const [n, needle] of followers.needles.entries())
          at(list, needle).add(offered | followers.forced[n]!, weight)
      }
    }
  }

  /** Notes that a column's looks were chosen out of some, each with the chance `share`. */
  private addChoices(
    column: number,
    set: number,
    certainty: number,
    choices: number,
    share: number,
    weight: number,
  ): void {
    if (!(weight > 0)) return
    const key = `${column} ${set} ${certainty} ${choices} ${share}`
    const known = this.chosen.get(key)
    if (known) known.weight += weight
    else this.chosen.set(key, { column, set, certainty, choices, share, weight })
  }

  /** Adds the offers of every choice of looks of a sticky pin or an unknown column, by how likely each is. */
  private addChosen(): void {
    for (const { column, set, certainty, choices, share, weight } of this.chosen.values()) {
      if (weight < leastChosen) continue
      const followers = followersOf(this.exact, column, set)
      const { needles } = at(this.state.sums(), certainty)
      const whole = sumOfChoices(needles, followers, choices, share)
      const go = (chosen: number, rest: number, chance: number): void => {
        const bound = chance * sumOfChoices(needles, withForced(followers, chosen), rest, share)
        if (!(bound > leastShare * whole)) return
        if (rest === 0) {
          this.offerColumn(column, set, certainty, chosen, (weight * bound) / whole)
          return
        }
        const bit = rest & -rest
        go(chosen | bit, rest & ~bit, chance * share)
        go(chosen, rest & ~bit, chance * (1 - share))
      }
      go(0, choices, 1)
    }
  }

  /** Adds what a slow strip says: its weights by the cases of its columns, summed over wear and slowness. */
  private addSlow(strip: number, units: readonly { hidden: Weighed; slow: Float64Array }[]): void {
    const byCertainty = new Map<number, Float64Array>()
    const size = this.state.lastings.cases.length + firstLasting
    const cube = size ** 3
    for (const { hidden, slow } of units) {
      const certainty = this.state.depth === 'loose' ? meanCertainty(hidden.wear, hidden.pivots) : 0
      let all = byCertainty.get(certainty)
      if (!all) byCertainty.set(certainty, (all = new Float64Array(readers.length * cube)))
      const from = hidden.reader * cube
      for (const [n, unit] of slow.entries()) {
        const chances = caseChances(this.state, hidden.wear, n)
        for (let a = 0; a < size; a++) {
          if (chances[a] === 0) continue
          for (let b = 0; b < size; b++) {
            const both = unit * chances[a]! * chances[b]!
            if (both === 0) continue
            const place = from + (a * size + b) * size
            for (let c = 0; c < size; c++) all[place + c]! += both * chances[c]!
          }
        }
      }
    }
    for (const [certainty, weights] of byCertainty) this.addSlowTerms(strip, certainty, weights)
  }

  private addSlowTerms(strip: number, certainty: number, weights: Float64Array): void {
    const most = weights.reduce((a, b) => Math.max(a, b), 0)
    const { slow } = at(this.state.strips, strip)
    const whole = at(slow, certainty).reduce((sum, value) => sum + value, 0)
    if (most * whole < slight) return
    const { lastings, kindOf } = this.state
    const sums = this.state.sums()
    const exact = this.exact
    const own = at(sums, certainty)
    const size = lastings.cases.length + firstLasting
    const sets = own === exact ? this.state.sets : [0]
    const columns = stripColumns(strip)
    for (const set of sets)
      eachSlowTerm(
        { sums: own, cases: lastings.cases, kindOf, isRough: own !== exact, isWhole: false },
        strip,
        set,
        whole,
        (entries, value, ends) => {
          const shares = entries.map(({ whens }) => new Float64Array(whens.length))
          let all = 0
          for (const [i, first] of entries[0].whens.entries())
            for (const [j, second] of entries[1].whens.entries())
              for (const [k, third] of entries[2].whens.entries()) {
                const place = (first.when * size + second.when) * size + third.when
                for (let r = 0; r < readers.length; r++) {
                  const weight =
                    weights[r * size ** 3 + place]! *
                    first.chances[r]! *
                    second.chances[r]! *
                    third.chances[r]! *
                    value
                  all += weight
                  shares[0]![i]! += weight
                  shares[1]![j]! += weight
                  shares[2]![k]! += weight
                }
              }
          if (all < slight * 1e-3) return
          at(this.blocks, strip).addSlow(entries, shares, all)
          for (const [m, entry] of entries.entries()) {
            const column = at(columns, m)
            for (const [n, { state }] of entry.whens.entries()) {
              const weight = shares[m]![n]!
              if (state === 'sticky') this.addStickyOf(column, entry.pushes, weight)
              else this.addColumn(column, state, weight)
            }
            const before = at(entries, (m + 2) % 3)
            const after = at(entries, (m + 1) % 3)
            const followers = followersOf(own, column, set)
            const atEnd = new Map(at(ends, m).map((end) => [end.needle, end]))
            const list = at(this.offers, certainty)
            for (const [n, needle] of followers.needles.entries()) {
              const end = atEnd.get(needle)
              const offered = end
                ? offersAtEnd(end, entry, before, after)
                : offersOf(entry, before, after) | followers.forced[n]!
              at(list, needle).add(offered, all)
            }
          }
        },
      )
  }

  private addStickyOf(column: number, pushes: number, weight: number): void {
    const asked = this.exact.bed.pushed[column]!
    const [on, count] = [bitCount(pushes), bitCount(asked)]
    const shares = stickyChances.map(
      ({ share, chance }) => chance * (1 - share) ** on * share ** (count - on),
    )
    const whole = shares.reduce((a, b) => a + b, 0)
    for (const [n, share] of shares.entries()) this.addSticky(column, n, (weight * share) / whole)
  }

  /** Adds what the needles themselves say, by which looks offered them a hold. */
  private addNeedles(): void {
    for (const [certainty, list] of this.offers.entries()) {
      const sums = at(this.state.sums(), certainty).needles
      for (const needle of allNeedles) {
        const place = needlePlace(needle)
        const name = needleName(needle)
        let [noHold, stiff, gone, other] = [0, 0, 0, 0]
        for (const [offered, weight] of at(list, needle).byKey) {
          const unit = weight / needleValue(sums, needle, offered)
          noHold += unit * sums.parts.noHold[needle]!
          gone += unit * sums.parts.gone[needle]!
          other += unit * sums.parts.other[needle]!
          stiff += unit * (sums.stiffHears ? stiffValue(sums, needle, offered) : sums.stiff[needle]!)
        }
        this.tally.add(place, [`catch.${name}.broken`, `needle.${name}.bent`], noHold)
        this.tally.add(place, [`needle.${name}.stiff`], stiff)
        this.tally.add(place, [`needle.${name}.gone`], gone)
        this.tally.add(place, ['other'], other)
        const from = needle * 4
        this.needleWeights[from]! += noHold
        this.needleWeights[from + 1]! += stiff
        this.needleWeights[from + 2]! += gone
        this.needleWeights[from + 3]! += other
        this.addSlips(certainty, needle, list[needle]!)
      }
    }
  }

  private addSlips(certainty: number, needle: number, offers: Offers): void {
    const { looks } = this.exact.bed
    const sums = at(this.state.sums(), certainty).needles
    for (const [offered, weight] of offers.byKey) {
      const unit = weight / needleValue(sums, needle, offered)
      for (let look = 0; look < looks.length; look++)
        this.whole.slips[needle * looks.length + look]! +=
          unit * slipValue(sums, needle, look, at(looks, look).noted[needle]!, offered)
    }
  }
}

const withForced = (
  followers: ReturnType<typeof followersOf>,
  forced: number,
): ReturnType<typeof followersOf> => ({
  needles: followers.needles,
  forced: followers.forced.map((own) => own | forced),
})
