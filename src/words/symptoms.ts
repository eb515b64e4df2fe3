import { type Look, speeds } from '../find/battery.ts'
import type { Symptom } from '../find/likeness.ts'
import { wayOfPass } from '../mechanism/bed.ts'
import type { Pass } from '../mechanism/pass.ts'
import { counted } from './lists.ts'
import { patternOf, patterns } from './patterns.ts'

const cards: Readonly<Record<Look['card'], string>> = {
  pattern: 'a patterned card',
  holes: 'a card of all holes',
  blank: 'a blank card',
}

/** A look in words: with which card, which way, in which pass, how fast. */
export const lookWords = (look: Look): string => {
  const way = wayOfPass(look.pass) === 1 ? 'right' : 'left'
  const fast = look.speed === speeds.slow ? ', slowly' : look.speed === speeds.fast ? ', fast' : ''
  return `${cards[look.card]}, pass ${look.pass} to the ${way}${fast}`
}

/** What came out of a pass, in a phrase with its count. */
export const passOutcomeWords = (pass: Pass): string => {
  const pattern = patternOf(pass)
  if (pattern === 'none') return 'as it should'
  const missed = pass.departures.filter(({ came }) => came === 'plain').length
  const extra = pass.departures.filter(({ came }) => came === 'selected').length
  const unmoved = pass.departures.length - missed - extra
  const parts = [
    missed > 0 ? `${missed} missed` : '',
    extra > 0 ? `${extra} not asked for` : '',
    unmoved > 0 ? `${counted(unmoved, 'needle')} not moved` : '',
  ].filter(Boolean)
  return `${patterns[pattern]}: ${parts.join(', ')}`
}

/** The headings under which faults are looked up, by what is visible on the bed. */
export const symptomTitles: Readonly<Record<Symptom, string>> = {
  nothing: 'Nothing selected, or far too little',
  everything: 'Everything selected, or far too much',
  eighth: 'Every eighth needle',
  twentyFourth: 'Every twenty-fourth needle',
  one: 'One needle',
  oneWay: 'Only in passes one way',
  fast: 'Only when fast, or worse when fast',
  oneRow: 'Only in one card row',
  rows: 'The pattern itself: rows repeated, missing, or mirrored',
}

/** What is to be ruled out before any part is suspected, where a setting does the same; in a sentence that asks. */
export const settingsFirst: Partial<Record<Symptom, string>> = {
  nothing:
    'Before anything is broken: is the carriage set to pattern, is the belt engaged, and is the card off its lock?',
  everything:
    'Before anything is broken: is there a card at all, and does it lie in the reader where the pins feel it?',
}
