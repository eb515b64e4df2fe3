import { type RowHoles, columnBit, mostRows } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { at } from '../mechanism/lookup.ts'
import { toColumn } from '../mechanism/indices.ts'
import { type CardLine, countOf, linesOf } from './card-lines.ts'
import { type MarkMeanings, marksOf } from './card-marks.ts'
import { decodeCard } from './card-text.ts'
import { oneLine, quote } from './troubles.ts'

/** What came of a pasted or opened text: the rows that could be read, and a sentence for everything else. */
export interface CardPaste {
  /** Empty where nothing could be read. */
  readonly rows: readonly RowHoles[]
  /** The title in a card file; null for none. */
  readonly title: string | null
  /** What was left out, each with its row and column. */
  readonly problems: readonly string[]
  /** How doubtful marks were taken. */
  readonly remarks: readonly string[]
}

/** The most characters that are looked at: far more than 200 rows of a spreadsheet take. */
const mostCharacters = 100_000

const { columns } = dimensions
const nothing: CardPaste = { rows: [], title: null, problems: [], remarks: [] }

/** The card of a link, or of the part of a link after `card=`; null where the text is no link. */
const pasteLink = (text: string): CardPaste | null => {
  const word = text.trim()
  const bare = word.length === columns ? null : /^x\.([\w-]+)$/.exec(word)
  const code = (bare ?? /(?:^|[#?&])card=x\.([\w-]*)/.exec(word))?.[1]
  if (code !== undefined) {
    const reading = decodeCard(code)
    if (!reading.rows) return { ...nothing, problems: [`The link’s card can’t be read: ${reading.reason}.`] }
    const problems = reading.remark === null ? [] : [`The link’s card was cut: ${reading.remark}.`]
    return { ...nothing, rows: reading.rows, problems }
  }
  const named = /(?:^|[#?&])card=([\w-]+)/.exec(word)?.[1]
  if (named === undefined && !/^https?:\/\/\S+$/.test(word)) return null
  const which = named === undefined ? 'names no card' : `names the card ${quote(named)}`
  return { ...nothing, problems: [`This link ${which} and carries no rows of its own.`] }
}

/** A card file's title, and the text after its head. */
const withoutHead = (text: string): { title: string | null; body: string } => {
  const lines = text.split('\n')
  let title: string | null = null
  let n = 0
  for (; n < lines.length; n++) {
    const line = at(lines, n)
    const field = /^\s*(title|about)\s*:(.*)$/i.exec(line)
    if (!field && line.trim() !== '') break
    if (field && field[1]!.toLowerCase() === 'title') title = oneLine(field[2]!.trim(), 80) || null
  }
  const hasHead = lines.slice(0, n).some((line) => line.trim() !== '')
  return { title, body: lines.slice(hasHead ? n : 0).join('\n') }
}

/** What is wrong with a line's marks, as the end of a sentence; null where it is a row. */
const troubleOf = ({ marks }: CardLine, { meaning }: MarkMeanings): string | null => {
  const bad = marks.findIndex((mark) => meaning(mark) === 'unknown')
  if (bad >= 0)
    return `in column ${bad + 1} it has ${quote(at(marks, bad))}, which means neither a hole nor none`
  if (marks.length < columns) return `it ends at column ${marks.length} instead of ${columns}`
  return marks.length > columns ? `it goes on after column ${columns}, to column ${marks.length}` : null
}

const rowOf = ({ marks }: CardLine, { meaning }: MarkMeanings): RowHoles =>
  marks.reduce((row, mark, n) => (meaning(mark) === 'hole' ? row | columnBit(toColumn(n + 1)) : row), 0)

/** Fills up a row whose last columns were spaces. */
const padded = (line: CardLine): CardLine => ({
  ...line,
  marks: [...line.marks, ...new Array<string>(Math.max(0, columns - line.marks.length)).fill(' ')],
})

/** Reads the lines of a card, row 1 first. */
const readLines = (found: readonly CardLine[], areSpacesBlank: boolean): Omit<CardPaste, 'title'> => {
  const isUpwards = countOf(found.map(({ number }) => number)) === -1
  const lines = isUpwards ? found.toReversed() : found
  const marks = marksOf(new Set(lines.flatMap((line) => line.marks)))
  const remarks = [...marks.remarks]
  if (isUpwards) remarks.unshift('The rows are numbered upwards, so the last line is row 1.')
  const problems: string[] = []
  const rows = lines.slice(0, mostRows).flatMap((line, n): RowHoles[] => {
    const whole = areSpacesBlank ? padded(line) : line
    const trouble = troubleOf(whole, marks)
    if (trouble !== null) {
      problems.push(`Row ${n + 1} is left out: ${trouble}.`)
      return []
    }
    if (line.marks.length < columns)
      remarks.push(`Row ${n + 1} ends at column ${line.marks.length}; after it there is no hole.`)
    const zero = marks.isZeroDoubtful ? line.marks.indexOf('0') : -1
    if (zero >= 0)
      remarks.push(`Row ${n + 1}, column ${zero + 1}: “0” is read as no hole. Write “o” for one.`)
    return [rowOf(whole, marks)]
  })
  if (lines.length > mostRows)
    problems.push(`The text has ${lines.length} rows; the first ${mostRows} are read.`)
  return { rows, problems, remarks }
}

/**
 * Reads a card from a text that somebody pasted: one row a line, 24 marks each, row 1 first; or our own card file; or
 * a link. Never throws: what can't be read is left out, and said.
 */
export const pasteCard = (text: string): CardPaste => {
  const isCut = text.length > mostCharacters
  const clean = text
    .slice(0, mostCharacters)
    .replace(/[\uFEFF\uFE0E\uFE0F\u200B]/g, '')
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
    .replaceAll('\u00A0', ' ')
  if (clean.trim() === '') return nothing
  const link = pasteLink(clean)
  if (link) return link
  const { title, body } = withoutHead(clean)
  const { lines, areSpacesBlank } = linesOf(body)
  const reading = readLines(lines, areSpacesBlank)
  if (!isCut) return { title, ...reading }
  const cut = `The text is longer than ${mostCharacters} characters and is cut there.`
  return { title, ...reading, problems: [...reading.problems, cut] }
}
