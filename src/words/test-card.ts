import type { OilPass } from '../find/oil-card.ts'
import type { Progress } from '../find/test-card.ts'
import type { PlaceKind } from '../find/together-parted.ts'
import { sideOfWay } from '../mechanism/bed.ts'
import { bedTime } from './pace.ts'
import { counted, listed } from './lists.ts'

/** How far the search for a test card has come. */
export const progressWords = ({ tried, rows, classes, most }: Progress): string =>
  `${counted(tried, 'card')} tried, now with ${counted(rows, 'row')}. The best parts ${classes} of ${most} classes.`

/** A computed test card, in numbers. */
export interface CardNumbers {
  readonly card: readonly number[]
  readonly runs: readonly number[]
  readonly classes: number
  readonly most: number
  readonly hidden: number
  readonly fewest: number
}

/** What a test card does, and how near it comes to the best that any card can do. */
export const testCardWords = ({ card, runs, classes, most, hidden, fewest }: CardNumbers): string => {
  const shows = hidden === 0 ? 'It shows every single fault' : `It hides ${counted(hidden, 'fault')}`
  const length =
    card.length === fewest ? 'the fewest any card can do with' : `the fewest there could be are ${fewest}`
  const parts =
    classes === most ? `${classes} classes, as many as any card can part` : `${classes} of ${most} classes`
  return `A card of ${counted(card.length, 'row')}, ${length}, to be passed from end to end ${runs.length} times. ${shows} and sorts them into ${parts}.`
}

const placeWords: Readonly<Record<PlaceKind, readonly [string, string]>> = {
  strip: ['the strip', 'strips'],
  column: ['a column', 'columns'],
  needle: ['a needle', 'needles'],
}

/** Places of one strip that are wrong at once: the strip and two columns. */
export const atOnceWords = (places: readonly PlaceKind[]): string =>
  listed(
    [...Map.groupBy(places, (place) => place)].map(([place, { length }]) => {
      const [one, many] = placeWords[place]
      return length === 1 ? one : `${length === 2 ? 'two' : 'three'} ${many}`
    }),
  )

/** A pass of the card for set oil, as it is to be made. */
export const oilPassWords = ({ row, way, speed }: OilPass): string =>
  `Row ${row}, to the ${sideOfWay(way)}, the whole bed in ${bedTime(speed)}.`
