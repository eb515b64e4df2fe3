import { type CardPlace, columnOfNeedle, needleName, sideOfWay, stripOfNeedle } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Pass } from '../mechanism/pass.ts'
import type { Departure } from '../mechanism/reason.ts'
import { type Needle, ofNeedle } from '../mechanism/indices.ts'
import { listed, needlesListed, withUnit } from '../words/lists.ts'
import { causeOf, departureWords } from '../words/departures.ts'
import { type NeedleRange, needlesIn } from './needle-range.ts'
import { type Setup } from './setup.ts'
import type { Picture } from './question.ts'

/** The needles of a range that came out otherwise than the card asks. */
export const departuresIn = (pass: Pass, { first, count }: NeedleRange): Departure[] =>
  pass.departures.filter(({ needle }) => needle >= first && needle < first + count)

/** A text that is the same for two passes where a range of the bed shows the same after both. */
export const outcomesKey = (pass: Pass, { first, count }: NeedleRange): string =>
  pass.came.slice(first, first + count).join()

/** What is wrong on a range of the bed: R3 and R11 missed. */
export const wrongWords = (pass: Pass, range: NeedleRange): string => {
  const wrong = departuresIn(pass, range)
  if (wrong.length === 0) return 'every needle right'
  const came = new Set(pass.came.slice(range.first, range.first + range.count))
  if (came.size === 1 && came.has('plain')) return 'nothing selected'
  if (came.size === 1 && came.has('selected')) return 'everything selected'
  return listed(
    Object.entries(departureWords).flatMap(([outcome, { brief }]) => {
      const some = wrong.filter((departure) => departure.came === outcome)
      return some.length === 0 ? [] : [`${needlesListed(some.map(({ needle }) => needle))} ${brief}`]
    }),
  )
}

/** Why a needle came out as it did, in one sentence, with the card at a place along the bed. */
export const needleReason = (pass: Pass, index: Needle, place: CardPlace): string => {
  const name = needleName(index)
  const departure = pass.departures.find(({ needle }) => needle === index)
  if (departure) return `${name} ${departureWords[departure.came].clause}: ${causeOf(departure)}.`
  const came = ofNeedle(pass.came, index) === 'selected' ? 'is selected' : 'stays plain'
  return `${name} is on strip ${stripOfNeedle(index, place)} and ${came}, as the card asks of column ${columnOfNeedle(index, place)}.`
}

/** A range of the bed after a pass, as a picture. */
export const bedPicture = (pass: Pass, range: NeedleRange, setup: Setup): Picture => {
  const speed =
    setup.speed === undefined || setup.speed === dimensions.speed ? '' : `, ${withUnit(setup.speed, 'mm/s')}`
  const row = pass.row === null ? 'no card' : `card row ${pass.row}`
  const indexes = needlesIn(range)
  return {
    kind: 'bed',
    title: `Pass ${pass.pass}, to the ${sideOfWay(pass.way)}, ${row}${speed}`,
    first: range.first,
    asked: indexes.map((index) => ofNeedle(pass.asked, index)),
    came: indexes.map((index) => ofNeedle(pass.came, index)),
    words: wrongWords(pass, range),
  }
}
