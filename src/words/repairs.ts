import type { Opening, PartId, RepairId, ToolId } from '../find/repairs.ts'
import type { PartCount } from '../find/mending.ts'
import type { Place } from '../find/place.ts'
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

const numbered = ['strip', 'column', 'needle'] as const

/** Places in a phrase, those of a kind together: strips 3 and 6, column 5 and the belt. */
export const placesWords = (places: readonly Place[]): string => {
  const groups = numbered.flatMap((kind) => {
    const numbers = places
      .filter((place) => place.startsWith(`${kind}.`))
      .map((place) => place.slice(kind.length + 1))
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
