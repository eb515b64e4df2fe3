import { slowHand, speeds } from '../find/battery.ts'
import type { Answer } from '../find/messages.ts'
import { needleName, type Way } from '../mechanism/bed.ts'
import { changedCode, changedSlot, codes } from '../find/packed-change.ts'
import { type Fault, bareFaultId } from '../mechanism/fault.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { needleAtSlot, toNeedle } from '../mechanism/indices.ts'
import { departureWords } from './departures.ts'
import { faultPhrase, faultWords } from './faults.ts'
import { counted, listed, needlesListed, withUnit } from './lists.ts'
import { lower } from './parts.ts'

/** An answer to what may be wrong, as sentences need it. */
export interface Answered {
  readonly kind: Answer['kind']
  readonly place?: Answer['place']
  /** The ways in which it may be so, the likeliest first. */
  readonly ways: readonly (readonly Fault[])[]
}

/** How sure an answer is, in words, by its probability. */
export const confidence = (probability: number): string => {
  if (probability >= 0.95) return 'almost certain'
  if (probability >= 0.75) return 'very likely'
  if (probability >= 0.5) return 'likely'
  if (probability >= 0.2) return 'possible'
  return probability >= 0.05 ? 'less likely' : 'unlikely'
}

/** A probability in per cent, never as certain: over 99 %, 62 %, under 1 %. */
export const percent = (probability: number): string => {
  if (probability > 0.99) return `over ${withUnit(99, '%')}`
  return probability < 0.01 ? `under ${withUnit(1, '%')}` : withUnit(Math.round(probability * 100), '%')
}

/** One way in which it may be so: Strip 3 seized, and with it pin 5 stuck down. */
export const wayPhrase = (way: readonly Fault[]): string =>
  way.map((fault, n) => (n === 0 ? faultPhrase(fault) : lower(faultPhrase(fault)))).join(', and with it ')

/** An answer's ways, the likeliest first; those that differ only in how much are one. */
export const distinctWays = (ways: Answered['ways']): (readonly Fault[])[] => {
  const found = new Map<string, readonly Fault[]>()
  for (const way of ways) {
    const key = way.map((fault) => bareFaultId(fault)).join()
    if (!found.has(key)) found.set(key, way)
  }
  return [...found.values()]
}

/** An answer's heading: the part, or what else it says. */
export const answerTitle = (answer: Answered): string => {
  if (answer.kind === 'sound') return 'Nothing is wrong, as far as this shows'
  if (answer.kind === 'unknown')
    return `Something that this page has no word for${answer.place ? `, at ${answer.place.replace('.', ' ')}` : ''}`
  if (answer.kind === 'noCard') return 'No card in the reader'
  const [first = [], ...others] = distinctWays(answer.ways)
  if (others.length === 0) return wayPhrase(first)
  return `${wayPhrase(first)}, or ${counted(others.length, 'other')} that look${others.length === 1 ? 's' : ''} the same`
}

/** How an answer's likeliest fault shows in general; empty where there is none. */
export const showsWords = ({ kind, ways }: Answered): string => {
  const [fault] = ways[0] ?? []
  if (kind !== 'faults' || !fault) return ''
  return `It shows as ${faultWords[fault.kind].shows}.`
}

/** How many notes speak for a place being wrong, and how many against. */
export const speakingWords = (speaking: number, against: number): string => {
  if (speaking + against === 0) return 'What speaks for it is how often needles fail, not which.'
  const notes = `${counted(speaking, 'note')} ${speaking === 1 ? 'speaks' : 'speak'} for it`
  return against === 0 ? `${notes}, none against.` : `${notes}, ${against} against.`
}

/** Which needles of a pass speak for an answer, and which against it. */
export const speakingInPass = (speaking: readonly number[], against: readonly number[]): string => {
  const parts = [
    ...(speaking.length > 0 ? [`For it in this pass: ${needlesListed(speaking)}.`] : []),
    ...(against.length > 0 ? [`Against it in this pass: ${needlesListed(against)}.`] : []),
  ]
  return parts.join(' ')
}

const speedWords = (speed: number): string => {
  if (speed <= slowHand) return 'slowly'
  const named = { [speeds.ordinary]: '', [speeds.fast]: 'fast' }[speed]
  return named ?? `at ${withUnit(speed, 'mm/s')}`
}

/** A pass in a phrase: Row 1 to the right, fast. */
export const passPhrase = (row: number | null, way: Way, speed: number): string => {
  const fast = speedWords(speed)
  return `${row === null ? 'No card,' : `Row ${row}`} to the ${way === 1 ? 'right' : 'left'}${fast === '' ? '' : `, ${fast}`}`
}

/** What differs from what the card asks, in a phrase, for the changed needles of a bed of so many: 12 needles … missed. */
export const changedWords = (changed: readonly number[], needles: number = dimensions.needles): string => {
  if (changed.length === 0) return 'Every needle as the card asks'
  const of = (code: number): number[] =>
    changed.filter((one) => changedCode(one) === code).map((one) => needleAtSlot(changedSlot(one), needles))
  const parts = [
    { needles: of(codes.plain), words: departureWords.plain.full },
    { needles: of(codes.selected), words: departureWords.selected.full },
    { needles: of(codes.unmoved), words: departureWords.unmoved.full },
  ]
  return parts
    .filter(({ needles }) => needles.length > 0)
    .map(({ needles, words }) => `${needlesListed(needles)} ${words}`)
    .join('; ')
}

/** How a bed was seen, in a phrase of counts. */
export const markedWords = (wrong: readonly number[], unmoved: readonly number[], unseen: number): string => {
  const parts = [
    wrong.length > 0 ? `${needlesListed(wrong)} wrong` : '',
    unmoved.length > 0 ? `${listed(unmoved.map((needle) => needleName(toNeedle(needle))))} not moved` : '',
    unseen > 0 ? `${counted(unseen, 'needle')} not looked at` : '',
  ].filter(Boolean)
  return parts.length === 0 ? 'every needle right' : parts.join('; ')
}
