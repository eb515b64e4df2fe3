import * as v from 'valibot'
import { slips } from '../find/chances.ts'
import { needlesAt } from '../find/bed-needles.ts'
import type { NotedPass, Query } from '../find/query.ts'
import type { CardLibrary } from '../link/state.ts'
import { type Way, wayOfPass } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import type { Needle } from '../mechanism/indices.ts'
import { BadFile, type JsonDocument, parseJson, type Path } from './json-document.ts'
import { fileSchema, lookSchema, ownCardSchema, partMark } from './query-schema.ts'

/** A part of a document, as sentences name it. */
interface Part {
  readonly name: string
  readonly path: Path
}

/** What passes are read from: the document, with the cards that it may name. */
interface File {
  readonly library: CardLibrary
  readonly document: JsonDocument
}

/** What a schema makes of a value of the document. Throws a `BadFile` for what is wrong first. */
const valid = <Output>(
  schema: v.GenericSchema<unknown, Output>,
  value: unknown,
  part: Part,
  { lineOf }: JsonDocument,
): Output => {
  const result = v.safeParse(schema, value, { abortEarly: true })
  if (result.success) return result.output
  const [{ message, path: keys = [] }] = result.issues
  const line = lineOf([...part.path, ...keys.map(({ key }) => key as string | number)])
  throw new BadFile(
    `Line ${line}: ${message.startsWith(partMark) ? part.name + message.slice(partMark.length) : message}`,
  )
}

/** Which pass a row was read in where the file does not say: pass `row`, or a whole card later; none where neither fits. */
const usualPass = (card: Card | null, row: number | null, way: Way): { readonly pass?: number } => {
  if (!card || row === null) return {}
  const pass = [row, row + card.length].find((one) => wayOfPass(one) === way)
  return pass === undefined ? {} : { pass }
}

/** A pass as the file has it; `fileCard` is the card of those without one of their own, `needlesOnBed` the bed's needles. */
const readPass = (
  value: unknown,
  fileCard: Card | null,
  needlesOnBed: readonly Needle[],
  part: Part,
  { library, document }: File,
): NotedPass => {
  const hasOwn = typeof value === 'object' && value !== null && 'card' in value
  const card = hasOwn ? valid(ownCardSchema(library), value, part, document).card : fileCard
  const { row, way, speed, needles, pass } = valid(lookSchema(card, needlesOnBed), value, part, document)
  return { card, row, way, speed, needles, ...(pass === undefined ? usualPass(card, row, way) : { pass }) }
}

/**
 * Reads what somebody saw on a bed: `{ "card": …, "passes": [ { "row", "way", "speed", "needles" }, … ] }`; each pass may
 * have its own `card`, and say which `pass` it was. Beside the card there may be `first`, the needle of
 * column 1, and `own`, what was measured of the machine.
 * Throws a `BadFile` that says in one sentence what is wrong and on which line.
 */
export const readQuery = (text: string, library: CardLibrary): Query => {
  const document = parseJson(text.replace(/^\uFEFF/, ''))
  const { card, passes, first, own } = valid(
    fileSchema(library),
    document.value,
    { name: 'The file', path: [] },
    document,
  )
  const needles = needlesAt(own === undefined ? {} : { own })
  return {
    card,
    passes: passes.map((pass, n) =>
      readPass(pass, card, needles, { name: `Pass ${n + 1}`, path: ['passes', n] }, { library, document }),
    ),
    slip: slips.sure,
    checks: [],
    columnOne: first,
    ...(own === undefined ? {} : { own }),
  }
}
