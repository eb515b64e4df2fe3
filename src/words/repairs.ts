import { dimensions } from '../mechanism/dimensions.ts'
import type { Opening, PartId, RepairId, ToolId } from '../find/repairs.ts'
import type { PartCount } from '../find/mending.ts'
import type { SoundPart } from '../find/sound-parts.ts'
import { isWidePlace, type Place } from '../find/place.ts'
import { counted, listed } from './lists.ts'
import { placeName } from './whole-finding.ts'

/** What is done, as an order of work has it. */
export const repairWords: Readonly<Record<RepairId, string>> = {
  settings: 'Put the settings right',
  card: 'Mend the card, or punch a new one',
  retainer: 'Put in a new retainer bar',
  needles: 'Exchange needles',
  belt: 'Refit the belt',
  carriage: 'Set presser and first gate',
  strips: 'Clean the strips',
  catches: 'Exchange catches',
  turn: 'Clean and set the turn',
  reader: 'Take the card reader off, clean it and mend it',
}

/** What was done, to its owner, where the repairer has written nothing of it. */
export const doneWords: Readonly<Record<RepairId, string>> = {
  settings: 'The settings were put right.',
  card: 'The card was mended or put in again.',
  retainer: 'A new padded bar was put in.',
  needles: 'Needles were exchanged.',
  belt: 'The belt was refitted.',
  carriage: 'The carriage was set.',
  strips: 'The long bars inside were cleaned and oiled.',
  catches: 'The small fingers that catch the needles were exchanged.',
  turn: 'What turns the card on was cleaned and set.',
  reader: 'The card reader was cleaned and mended.',
}

/** What comes off or out, as a sentence names it. */
const openingWords: Readonly<Record<Opening, string>> = {
  bar: 'the retainer bar',
  carriage: 'the carriage',
  cover: 'one cover',
  covers: 'the other covers',
  reader: 'the card reader',
}

/** What has to come off, in a phrase. */
export const openingsWords = (openings: readonly Opening[]): string =>
  openings.length === 0 ? 'nothing comes off' : `${listed(openings.map((one) => openingWords[one]))} off`

const partWords: Readonly<Record<PartId, readonly [one: string, more: string]>> = {
  card: ['card', 'cards'],
  'retainer-bar': ['retainer bar', 'retainer bars'],
  needle: ['needle', 'needles'],
  belt: ['belt', 'belts'],
  presser: ['presser', 'pressers'],
  strip: ['strip', 'strips'],
  catch: ['catch', 'catches'],
  pawl: ['pawl', 'pawls'],
  pin: ['feeler pin', 'feeler pins'],
  rocker: ['rocker', 'rockers'],
}

/** A part by its name. */
export const partIdWords = (part: PartId): string => partWords[part][0]

/** What has to be bought, and what perhaps has to be; “no parts” where nothing is. */
export const partsWords = (parts: readonly PartCount[]): string => {
  const named = ({ part, count }: PartCount): string => `${count} ${partWords[part][count === 1 ? 0 : 1]}`
  const sure = parts.filter(({ isSure }) => isSure).map(named)
  const perhaps = parts.filter(({ isSure }) => !isSure).map(named)
  const all = [
    ...(sure.length > 0 ? [listed(sure)] : []),
    ...(perhaps.length > 0 ? [`perhaps ${listed(perhaps)}`] : []),
  ]
  return all.length === 0 ? 'no parts' : all.join(', ')
}

/** Tools by their names. */
export const toolWords: Readonly<Record<ToolId, string>> = {
  lamp: 'a lamp',
  tweezers: 'tweezers',
  magnet: 'a magnet',
  screwdrivers: 'screwdrivers that fit',
  punch: 'a card punch',
  feeler: 'feeler gauges',
  brush: 'a soft brush',
  cloth: 'cloths that leave no fluff',
  solvent: 'a solvent that is safe on the plastic, tried on a hidden spot',
  oil: 'thin machine oil',
  tray: 'a tray for screws and springs',
  marker: 'a marker for how things lay',
  camera: 'a camera',
  gloves: 'gloves',
  glasses: 'safety glasses',
}

/** More numbered places of a kind than these are counted only. */
const mostNamed = 12

const numbered = ['strip', 'column', 'needle'] as const
const countOf = { strip: dimensions.strips, column: dimensions.columns, needle: dimensions.needles } as const

/** The places of some work where its own words do not name them: those with numbers. */
export const namedPlaces = (places: readonly Place[]): string =>
  placesWords(places.filter((place) => !isWidePlace(place)))

/** Places in a phrase, those of a kind together: strips 3 and 6, column 5 and the belt; of many only how many. */
export const placesWords = (places: readonly Place[]): string => {
  const groups = numbered.flatMap((kind) => {
    const numbers = places
      .filter((place) => place.startsWith(`${kind}.`))
      .map((place) => place.slice(kind.length + 1))
    if (numbers.length === countOf[kind]) return [`all ${numbers.length} ${kind}s`]
    if (numbers.length > mostNamed) return [counted(numbers.length, kind)]
    const inOrder = kind === 'needle' ? numbers : numbers.sort((one, other) => Number(one) - Number(other))
    return numbers.length === 0 ? [] : [`${kind}${numbers.length === 1 ? '' : 's'} ${listed(inOrder)}`]
  })
  const others = places.filter((place) => !numbered.some((kind) => place.startsWith(`${kind}.`)))
  return listed([...groups, ...others.map(placeName)])
}

/** A time in words: 25 minutes, 1 hour 20. */
export const durationWords = (minutes: number): string => {
  const whole = Math.round(minutes)
  if (whole < 60) return counted(whole, 'minute')
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  return `${counted(hours, 'hour')}${rest === 0 ? '' : ` ${rest}`}`
}

/** So many parts that were not shown right are named by their numbers. */
const mostNumbered = 4

const servingPhrase = ({ part, right, of }: SoundPart): string => {
  const [one, more] = partWords[part]
  if (of === 1) return `the ${one}`
  if (right.length === of) return `all ${of} ${more}`
  const missing = Array.from({ length: of }, (_, n) => n + 1).filter((number) => !right.includes(number))
  const isNumbered = part !== 'needle' && part !== 'catch' && missing.length <= mostNumbered
  return `${right.length} of ${of} ${more}${isNumbered ? ` (not ${listed(missing.map(String))})` : ''}`
}

/** What of a machine is shown sound enough to serve others, and what is not, in a sentence or two. */
export const servingWords = (parts: readonly SoundPart[]): string => {
  const shown = parts.filter(({ right }) => right.length > 0)
  const others = parts.filter(({ right }) => right.length === 0)
  if (shown.length === 0) return 'Nothing of it is shown right yet: look at more passes first.'
  const right = `Shown right: ${listed(shown.map(servingPhrase))}.`
  const rest = others.map(({ part, of }) => (of === 1 ? `the ${partWords[part][0]}` : partWords[part][1]))
  return others.length === 0 ? right : `${right} Not yet shown right: ${listed(rest)}.`
}
