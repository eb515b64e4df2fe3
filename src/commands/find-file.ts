import { slips } from '../find/priors.ts'
import type { NotedPass, Query } from '../find/query.ts'
import { letters } from '../find/evidence.ts'
import { decodeCard } from '../link/card-text.ts'
import { quote } from '../link/troubles.ts'
import { type CardLibrary, limits } from '../link/state.ts'
import { needleName } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { badLine } from './json-line.ts'
import { type Path, placesIn } from './json-places.ts'

/** Why a file can't be read, in one sentence for its writer. */
export class BadFile extends Error {}

/** What is wrong with a value of the file, and where that value stands in it. */
class BadValue extends Error {
  readonly path: Path
  constructor(reason: string, path: Path) {
    super(reason)
    this.path = path
  }
}

/** A part of the file, as sentences name it, with its way through the document. */
interface Part {
  readonly name: string
  readonly path: Path
}

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
  { name: part, path }: Part,
  needed: readonly string[],
  optional: readonly string[] = [],
): Fields => {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new BadValue(
      `${part} should be an object with ${needed.join(', ')}, but is ${kindOf(value)}.`,
      path,
    )
  const missing = needed.find((name) => !Object.hasOwn(value, name))
  if (missing !== undefined) throw new BadValue(`${part} has no “${missing}”.`, path)
  const stray = Object.keys(value).find((name) => ![...needed, ...optional].includes(name))
  if (stray !== undefined)
    throw new BadValue(`${part} has ${quote(stray)}, which is not known here.`, [...path, stray])
  return value as Fields
}

const readCard = (value: unknown, { cards }: CardLibrary): Card | null => {
  if (typeof value !== 'string')
    throw new BadValue(`“card” should be a text, but is ${kindOf(value)}.`, ['card'])
  if (value === 'none') return null
  if (!value.startsWith('x.')) {
    const card = cards.get(value)
    if (!card) throw new BadValue(`There is no card ${quote(value)} here.`, ['card'])
    return card
  }
  const reading = decodeCard(value.slice(2))
  if (!reading.rows) throw new BadValue(`The card can't be read: ${reading.reason}.`, ['card'])
  if (reading.remark !== null)
    throw new BadValue(`The card can't be read whole: ${reading.remark}.`, ['card'])
  return reading.rows
}

const readRow = (value: unknown, { name: part, path }: Part, card: Card | null): number | null => {
  if (!card) {
    if (value === undefined || value === null) return null
    throw new BadValue(`${part} has row ${kindOf(value)}, but there is no card.`, [...path, 'row'])
  }
  if (typeof value !== 'number' || !Number.isInteger(value) || value < 1 || value > card.length)
    throw new BadValue(`${part} has row ${kindOf(value)}; the card's rows run from 1 to ${card.length}.`, [
      ...path,
      'row',
    ])
  return value
}

const readSpeed = (value: unknown, { name: part, path }: Part): number => {
  const [least, most] = limits.speed
  if (typeof value !== 'number' || !(value >= least && value <= most))
    throw new BadValue(`${part} has speed ${kindOf(value)}; speeds run from ${least} to ${most} mm/s.`, [
      ...path,
      'speed',
    ])
  return value
}

const readNeedles = (value: unknown, { name: part, path }: Part): string => {
  if (typeof value !== 'string')
    throw new BadValue(`${part} has needles ${kindOf(value)}, not a text.`, [...path, 'needles'])
  const marks = Array.from(value)
  const bad = marks.findIndex((mark) => !letters.includes(mark))
  if (bad >= 0 && bad < dimensions.needles)
    throw new BadValue(
      `${part} has ${quote(marks[bad] ?? '')} at needle ${needleName(bad)}; each is s, p, u or ?.`,
      [...path, 'needles'],
    )
  if (marks.length !== dimensions.needles)
    throw new BadValue(
      `${part} has ${marks.length} needles; it needs ${dimensions.needles}, one letter each, ${needleName(0)} first.`,
      [...path, 'needles'],
    )
  return value
}

const readPass = (value: unknown, part: Part, card: Card | null): NotedPass => {
  const needed = [...(card ? ['row'] : []), 'way', 'speed', 'needles']
  const { row, way, speed, needles } = fieldsOf(value, part, needed, ['row'])
  if (way !== 'right' && way !== 'left')
    throw new BadValue(`${part.name} has way ${kindOf(way)}; it is “right” or “left”.`, [...part.path, 'way'])
  return {
    card,
    row: readRow(row, part, card),
    way: way === 'right' ? 1 : -1,
    speed: readSpeed(speed, part),
    needles: readNeedles(needles, part),
  }
}

const parse = (text: string): unknown => {
  if (text.trim() === '') throw new BadFile('The file is empty.')
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new BadFile(`Line ${badLine(text)} is not JSON as it should be.`, { cause: error })
  }
}

const queryIn = (value: unknown, library: CardLibrary): Query => {
  const { card: cardText, passes } = fieldsOf(value, { name: 'The file', path: [] }, ['card', 'passes'])
  const card = readCard(cardText, library)
  if (!Array.isArray(passes))
    throw new BadValue(`“passes” should be a list, but is ${kindOf(passes)}.`, ['passes'])
  if (passes.length === 0 || passes.length > mostPasses)
    throw new BadValue(`“passes” has ${passes.length} passes; it needs 1 to ${mostPasses}.`, ['passes'])
  const partOf = (n: number): Part => ({ name: `Pass ${n + 1}`, path: ['passes', n] })
  return {
    card,
    passes: passes.map((pass, n) => readPass(pass, partOf(n), card)),
    slip: slips.sure,
    checks: [],
  }
}

/** Reads what somebody saw. Throws a `BadFile` that says in one sentence what is wrong and on which line. */
export const readQuery = (text: string, library: CardLibrary): Query => {
  const plain = text.replace(/^\uFEFF/, '')
  const value = parse(plain)
  const { lineOf, twice } = placesIn(plain)
  if (twice) throw new BadFile(`Line ${twice.line}: ${quote(twice.name)} stands twice.`)
  try {
    return queryIn(value, library)
  } catch (error) {
    if (!(error instanceof BadValue)) throw error
    throw new BadFile(`Line ${lineOf(error.path)}: ${error.message}`, { cause: error })
  }
}
