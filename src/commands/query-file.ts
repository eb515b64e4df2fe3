import * as v from 'valibot'
import { slips } from '../find/priors.ts'
import type { Query } from '../find/query.ts'
import type { CardLibrary } from '../link/state.ts'
import { BadFile, type JsonDocument, parseJson, type Path } from './json-document.ts'
import { fileSchema, partMark, passSchema } from './query-schema.ts'

/** What a schema makes of a value of the document. Throws a `BadFile` for what is wrong first. */
const valid = <Output>(
  schema: v.GenericSchema<unknown, Output>,
  value: unknown,
  part: { readonly name: string; readonly path: Path },
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

/**
 * Reads what somebody saw on a bed: `{ "card": …, "passes": [ { "row", "way", "speed", "needles" }, … ] }`.
 * Throws a `BadFile` that says in one sentence what is wrong and on which line.
 */
export const readQuery = (text: string, library: CardLibrary): Query => {
  const document = parseJson(text.replace(/^\uFEFF/, ''))
  const { card, passes } = valid(
    fileSchema(library),
    document.value,
    { name: 'The file', path: [] },
    document,
  )
  const schema = passSchema(card)
  return {
    card,
    passes: passes.map((pass, n) => ({
      card,
      ...valid(schema, pass, { name: `Pass ${n + 1}`, path: ['passes', n] }, document),
    })),
    slip: slips.sure,
    checks: [],
  }
}
