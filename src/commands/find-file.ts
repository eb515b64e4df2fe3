import type { Case, Sighting } from '../find/case.ts'
import { letters } from '../find/evidence.ts'
import { decodeCard } from '../link/card-text.ts'
import { quote } from '../link/quote.ts'
import { type CardLibrary, limits } from '../link/state.ts'
import { needleName } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { badLine } from './json-line.ts'

/** Why a file can't be read, in one sentence for its writer. */
export class BadFile extends Error {}

type Fields = Readonly<Record<string, unknown>>

const mostPasses = 400

const kindOf = (value: unknown): string => {
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'string') return quote(value)
  return typeof value === 'object' ? 'an object' : JSON.stringify(value)
}

/** The fields of an object that has all of `needed` and no others than these and `optional`. */
const fieldsOf = (
  value: unknown,
  where: string,
  needed: readonly string[],
  optional: readonly string[] = [],
): Fields => {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new BadFile(`${where} should be an object with ${needed.join(', ')}, but is ${kindOf(value)}.`)
  const missing = needed.find((name) => !Object.hasOwn(value, name))
  if (missing !== undefined) throw new BadFile(`${where} has no “${missing}”.`)
  const stray = Object.keys(value).find((name) => ![...needed, ...optional].includes(name))
  if (stray !== undefined) throw new BadFile(`${where} has ${quote(stray)}, which is not known here.`)
  return value as Fields
}

const readCard = (value: unknown, { cards }: CardLibrary): Card | null => {
  if (typeof value !== 'string') throw new BadFile(`“card” should be a text, but is ${kindOf(value)}.`)
  if (value === 'none') return null
  if (!value.startsWith('x.')) {
    const card = cards.get(value)
    if (!card) throw new BadFile(`There is no card ${quote(value)} here.`)
    return card
  }
  const reading = decodeCard(value.slice(2))
  if (!reading.rows) throw new BadFile(`The card can't be read: ${reading.reason}.`)
  if (reading.remark !== null) throw new BadFile(`The card can't be read whole: ${reading.remark}.`)
  return reading.rows
}

const readRow = (value: unknown, where: string, card: Card | null): number | null => {
  if (!card) {
    if (value === undefined || value === null) return null
    throw new BadFile(`${where} has row ${kindOf(value)}, but there is no card.`)
  }
  if (typeof value !== 'number' || !Number.isInteger(value) || value < 1 || value > card.length)
    throw new BadFile(`${where} has row ${kindOf(value)}; the card's rows run from 1 to ${card.length}.`)
  return value
}

const readSpeed = (value: unknown, where: string): number => {
  const [least, most] = limits.speed
  if (typeof value !== 'number' || !(value >= least && value <= most))
    throw new BadFile(`${where} has speed ${kindOf(value)}; speeds run from ${least} to ${most} mm/s.`)
  return value
}

const readNeedles = (value: unknown, where: string): string => {
  if (typeof value !== 'string') throw new BadFile(`${where} has needles ${kindOf(value)}, not a text.`)
  const marks = Array.from(value)
  const bad = marks.findIndex((mark) => !letters.includes(mark))
  if (bad >= 0 && bad < dimensions.needles)
    throw new BadFile(
      `${where} has ${quote(marks[bad] ?? '')} at needle ${needleName(bad)}; each is s, p, u or ?.`,
    )
  if (marks.length !== dimensions.needles)
    throw new BadFile(
      `${where} has ${marks.length} needles; it needs ${dimensions.needles}, one letter each, ${needleName(0)} first.`,
    )
  return value
}

const readPass = (value: unknown, where: string, card: Card | null): Sighting => {
  const needed = [...(card ? ['row'] : []), 'way', 'speed', 'needles']
  const { row, way, speed, needles } = fieldsOf(value, where, needed, ['row'])
  if (way !== 'right' && way !== 'left')
    throw new BadFile(`${where} has way ${kindOf(way)}; it is “right” or “left”.`)
  return {
    row: readRow(row, where, card),
    way: way === 'right' ? 1 : -1,
    speed: readSpeed(speed, where),
    needles: readNeedles(needles, where),
  }
}

const parse = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new BadFile(`Line ${badLine(text)} is not JSON as it should be.`, { cause: error })
  }
}

/** Reads what somebody saw. Throws a `BadFile` that says in one sentence what is wrong and where. */
export const readCase = (text: string, library: CardLibrary): Case => {
  const { card: cardText, passes } = fieldsOf(parse(text.replace(/^\uFEFF/, '')), 'The file', [
    'card',
    'passes',
  ])
  const card = readCard(cardText, library)
  if (!Array.isArray(passes)) throw new BadFile(`“passes” should be a list, but is ${kindOf(passes)}.`)
  if (passes.length === 0 || passes.length > mostPasses)
    throw new BadFile(`“passes” has ${passes.length} passes; it needs 1 to ${mostPasses}.`)
  return { card, passes: passes.map((pass, n) => readPass(pass, `Pass ${n + 1}`, card)) }
}
