import { type Finding, oils, type PlaceFinding } from '../find/finding.ts'
import { speeds } from '../find/battery.ts'
import type { NotedPass } from '../find/query.ts'
import { faultOfCause, type Place, stripPlace } from '../find/place.ts'
import type { Fault } from '../mechanism/fault.ts'
import type { Way } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { allStrips, needlesOfBed } from '../mechanism/indices.ts'
import { faultPhrase } from './faults.ts'
import { counted, listed, needlesListed } from './lists.ts'
import { parsePart } from '../mechanism/part.ts'
import { capital, lower, partName } from './parts.ts'
import { percent } from './finding.ts'

/** A place is said to be wrong from this chance on. */
const said = 0.5

/** A machine is said to be worn from this mean on, which is where it begins to miss needles. */
const wornFrom = 0.75

/** The faults of the likeliest way in which a place is wrong: more than one where no look parts them. */
const faultsOf = ({ ways }: PlaceFinding): Fault[] =>
  (ways[0]?.causes ?? []).flatMap((cause) => faultOfCause(cause) ?? [])

/** The numbers of places of one kind of fault, as they come in their ids. */
const numbersOf = (faults: readonly Fault[]): string =>
  listed(
    faults
      .map(({ at }) => Number(at[0]))
      .sort((one, other) => one - other)
      .map(String),
  )

const strips = (faults: readonly Fault[], one: string, more: string): string[] =>
  faults.length === 0
    ? []
    : [`strip${faults.length === 1 ? '' : 's'} ${numbersOf(faults)} ${faults.length === 1 ? one : more}`]

const stripWords = (faults: readonly Fault[]): string[] => {
  const of = (kind: Fault['kind']): Fault[] => faults.filter((fault) => fault.kind === kind)
  return [
    ...strips(of('strip.seized'), 'no longer moves', 'no longer move'),
    ...strips(of('strip.slow'), 'is slow', 'are slow'),
    ...strips(of('strip.over'), 'is stuck shifted', 'are stuck shifted'),
  ]
}

const isStrip = ({ kind }: Fault): boolean => kind.startsWith('strip.')

/**
 * The whole of a finding in one or a few sentences that a customer understands: the strips together, with the oil where
 * it has set, then each other place by itself, and wear.
 */
export const wholeWords = ({ places, oil, wear }: Finding): string => {
  const wrong = places.filter((place) => place.wrong > said)
  const faults = wrong.map(faultsOf)
  const onStrips = stripWords(faults.flat().filter(isStrip))
  const isOut = wrong.some(({ ways }) => ways[0]?.causes[0] === 'card.out')
  const unknown = wrong.filter(({ ways }) => ways[0]?.causes[0] === 'other')
  const sentences = [
    ...(onStrips.length === 0 ? [] : [`${oil.set > said ? 'The oil has set: ' : ''}${listed(onStrips)}`]),
    ...(isOut ? ['there is no card in the reader'] : []),
    ...faults
      .filter((ways) => ways.length > 0 && !ways.some(isStrip))
      .map((ways) => ways.map((fault) => lower(faultPhrase(fault))).join(', or ')),
    ...(unknown.length === 0 ? [] : [`something else is wrong at ${counted(unknown.length, 'place')}`]),
    ...(wear.mean >= wornFrom ? ['the machine is worn out'] : []),
  ]
  if (sentences.length === 0) return 'Nothing is wrong, as far as this shows.'
  return sentences.map((sentence) => `${capital(sentence)}.`).join(' ')
}

/** A place's name as the trade says it; a column is its pin and its rocker. */
export const placeName = (place: Place): string => {
  if (place.startsWith('column.')) return `column ${place.slice('column.'.length)}`
  const part = place === 'gate' ? 'gate.1' : place
  return parsePart(part) === null ? place : partName(part as Parameters<typeof partName>[0])
}

const oilWords: Readonly<Record<(typeof oils)[number], string>> = {
  fresh: 'The oil seems fresh',
  old: 'The oil seems old',
  set: 'The oil seems set',
}

/** Whether all of some places are among others, which are more. */
const isWithin = (some: readonly Place[], others: readonly Place[]): boolean =>
  others.length > some.length && some.every((place) => others.includes(place))

/** Places of which one is wrong; all strips together are one thing that may be. */
const alternatives = (places: readonly Place[]): string => {
  const hasAll = allStrips.every((strip) => places.includes(stripPlace(strip)))
  const single = hasAll ? places.filter((place) => !place.startsWith('strip.')) : places
  return listed([...single.map(placeName), ...(hasAll ? ['all eight strips at once'] : [])])
}

/** What else a finding says: the oil, wear where it is great, and places of which one is wrong. */
export const findingRemarks = ({ oil, wear, together }: Finding): string[] => {
  const likeliest = oils.reduce((best, one) => (oil[one] > oil[best] ? one : best))
  const range = `${wear.low.toFixed(1)} to ${wear.high.toFixed(1)}`
  return [
    `${oilWords[likeliest]}: ${percent(oil[likeliest])}.`,
    `Wear, from 0 as new to 1 worn out: about ${wear.mean.toFixed(1)}, most likely ${range}.`,
    ...together
      .filter(({ places }) => !together.some((other) => isWithin(places, other.places)))
      .map(
        ({ places, wrong }) =>
          `One of these is wrong, and nothing says which: ${alternatives(places)} (${percent(wrong)}).`,
      ),
  ]
}

/** What was not looked at yet, in a sentence: needles, passes one way, and a fast one, which alone shows some slow strips. */
export const notLookedAtWords = (
  passes: readonly Pick<NotedPass, 'needles' | 'way' | 'speed'>[],
): string[] => {
  const bed = needlesOfBed(passes[0]?.needles.length ?? dimensions.needles)
  const unseen = bed.filter((_, slot) => passes.every(({ needles }) => !/[spu]/.test(needles.charAt(slot))))
  const isMissing = (way: Way): boolean => passes.every((pass) => pass.way !== way)
  const missing = [
    isMissing(1) ? 'a pass to the right' : '',
    isMissing(-1) ? 'a pass to the left' : '',
    passes.every(({ speed }) => speed <= speeds.ordinary)
      ? 'a fast pass, which alone shows some slow strips'
      : '',
    unseen.length === 0 ? '' : unseen.length === bed.length ? 'any needle' : needlesListed(unseen),
  ].filter(Boolean)
  return missing.length === 0 ? [] : [`Not looked at yet: ${missing.join('; ')}.`]
}

/** Says that passes beyond the most that are weighed together are left out; nothing where there are none. */
export const unweighedWords = (count: number, most: number): string[] =>
  count <= 0
    ? []
    : [
        `Only the first ${most} passes are weighed together; ${count === 1 ? 'the last one is' : `the last ${count} are`} kept, but not weighed.`,
      ]

/** What the answers say before anything is entered. */
export const nothingEntered =
  'Nothing wrong is entered yet. Pick the picture that looks like it, or press each needle that came out wrong.'
