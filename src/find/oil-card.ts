import { columnsOfStrip, needlesOfStrip, usualPlace, type Way } from '../mechanism/bed.ts'
import { type Card, columnBit, type RowHoles } from '../mechanism/card.ts'
import { conditionOf } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { passDrive } from '../mechanism/drive.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import { allColumns, type Strip, toStrip } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { speeds } from './battery.ts'
import { slowChances } from './chances.ts'
import { needleCode } from './needle-code.ts'
import { scenarioIn, type View } from './view.ts'

const { strips } = dimensions

/** A pass of the card for oil that has set: its row, from 1, which way, and how fast in mm/s. */
export interface OilPass {
  readonly row: number
  readonly way: Way
  readonly speed: number
}

/** A card that shows of each strip whether it moves, is slow, is seized or stuck over, with its passes. */
export interface OilCard {
  readonly card: Card
  readonly passes: readonly OilPass[]
}

/** A row in which each strip's three columns have the same holes: bit n is the strip's column n, from 0. */
const rowOf = (pattern: number): RowHoles =>
  allColumns.reduce<number>(
    (row, column) => ((pattern >> Math.floor((column - 1) / strips)) & 1 ? row | columnBit(column) : row),
    0,
  )

/** Every row that treats all strips alike. */
const patterns = Array.from({ length: 1 << (allColumns.length / strips) }, (_, pattern) => pattern)

/** What a strip may be where oil has set, each by itself; those that are slow count as one thing, however slow. */
const states = (strip: Strip): { readonly name: string; readonly faults: readonly Fault[] }[] => [
  { name: 'right', faults: [] },
  { name: 'seized', faults: [makeFault('strip.seized', [strip], null)] },
  { name: 'over', faults: [makeFault('strip.over', [strip], null)] },
  ...slowChances.map(({ ms }) => ({ name: 'slow', faults: [makeFault('strip.slow', [strip], ms)] })),
]

const viewOf = (row: RowHoles, way: Way, speed: number): View => ({
  card: [row],
  pass: way === 1 ? 1 : 2,
  speed,
  shift: null,
  ...usualPlace,
})

/** What one needle of each column of a strip, far from the ends, does on a machine in a pass. */
const looksOf = (strip: Strip, faults: readonly Fault[], view: View): string => {
  const condition = conditionOf(scenarioIn(view, faults))
  const drive = passDrive(condition, view.pass)
  const own = needlesOfStrip(strip, usualPlace)
  const middle = Math.floor(own.length / 2)
  return own
    .slice(middle, middle + columnsOfStrip(strip).length)
    .map((needle) => needleCode(condition, drive, needle))
    .join('')
}

/** A pass that may be one of the card's, with which pairs of states it parts. */
interface Option {
  readonly pattern: number
  readonly speed: number
  readonly parts: readonly boolean[]
}

/** The most passes that are tried. */
const mostPasses = 4

/** Every order of so many passes, slower ones first, that may be made: none is fast before a slow one has run freely. */
const ordersOf = (options: readonly (readonly Option[])[], count: number): Option[][] =>
  count === 0
    ? [[]]
    : ordersOf(options, count - 1).flatMap((before) =>
        at(options, (count - 1) % options.length)
          .filter(({ speed }) => speed >= (before.at(-1)?.speed ?? 0))
          .filter(({ speed }) => speed <= speeds.ordinary || before[0]?.speed === speeds.slow)
          .map((option) => [...before, option]),
      )

const speedOf = (order: readonly Option[]): number => order.reduce((sum, { speed }) => sum + speed, 0)

/**
 * The card for a machine whose oil has set: the fewest passes, each of a row and a speed, the first to the right and then to and
 * fro, after which every strip that moves freely, is slow, is seized or is stuck over is known from the others, whatever the
 * other strips do. Every order of rows and speeds is tried, so that no fewer do; of as few the slowest. A strip
 * counts as slow from the shortest time constant in the table of chances on. Throws where no passes do so.
 */
export const oilCard = (): OilCard => {
  const strip = toStrip(1)
  const all = states(strip)
  const pairs = all.flatMap((one, n) =>
    all.slice(n + 1).flatMap((other, m) => (one.name === other.name ? [] : [[n, n + 1 + m] as const])),
  )
  const options = ([1, -1] as const).map((way) =>
    [speeds.slow, speeds.ordinary, speeds.fast].flatMap((speed) =>
      patterns.map((pattern): Option => {
        const view = viewOf(rowOf(pattern), way, speed)
        const shown = all.map(({ faults }) => looksOf(strip, faults, view))
        return { pattern, speed, parts: pairs.map(([one, other]) => shown[one] !== shown[other]) }
      }),
    ),
  )
  for (let count = 1; count <= mostPasses; count++) {
    const [best] = ordersOf(options, count)
      .filter((order) => pairs.every((_, n) => order.some(({ parts }) => parts[n])))
      .sort((one, other) => speedOf(one) - speedOf(other))
    if (best)
      return {
        card: best.map(({ pattern }) => rowOf(pattern)),
        passes: best.map(({ speed }, n) => ({ row: n + 1, way: n % 2 === 0 ? 1 : -1, speed })),
      }
  }
  throw new RangeError('no passes part slow strips from seized ones')
}
