import { dimensions } from '../mechanism/dimensions.ts'
import { hasVisibleBlank, isMark } from './card-marks.ts'

/** One line of a card's text: its marks from column 1 on, and the row number in front of them, if any. */
export interface CardLine {
  readonly marks: readonly string[]
  readonly number: number | null
}

const { columns } = dimensions
const separators = ['\t', ',', ';']

/** A number and a colon, a bracket, or a point and a blank; and a number with only a blank after it. */
const strongNumber = /^\s*(?:row\s*)?(\d{1,3})\s*(?:[:)\]]|\.(?=\s))\s?/i
const weakNumber = /^\s*(?:row\s*)?(\d{1,3})\s+/i

const compact = (text: string): string => text.replace(/\s/g, '')

/** Whether a line without its blanks is a row and nothing else. */
const isRow = (text: string): boolean => {
  const marks = Array.from(compact(text))
  return marks.length === columns && marks.every(isMark)
}

const numberIn = (line: string): number | null => {
  if (isRow(line)) return null
  const match = strongNumber.exec(line) ?? weakNumber.exec(line)
  return match ? Number(match[1]) : null
}

/** 1 where the lines' numbers count up one by one, -1 where they count down, 0 where they do neither. */
export const countOf = (numbers: readonly (number | null)[]): 1 | -1 | 0 => {
  const runs = (step: number): boolean =>
    numbers.length > 1 &&
    numbers.every((number, n) => number !== null && (n === 0 || number - numbers[n - 1]! === step))
  return runs(1) ? 1 : runs(-1) ? -1 : 0
}

/** A line without the row number in front of it. */
const withoutNumber = (line: string, areNumbered: boolean): string => {
  if (isRow(line)) return line
  const strong = line.replace(strongNumber, '')
  if (strong !== line) return strong
  const rest = line.replace(weakNumber, '')
  return areNumbered || isRow(rest) ? rest : line
}

/** The cells of a line that a spreadsheet wrote; null where it is none. An empty cell is an empty mark. */
const cellsOf = (line: string): CardLine | null => {
  for (const separator of separators) {
    const cells = line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'))
    if (cells.length === columns) return { marks: cells, number: null }
    if (cells.length === columns + 1 && /^\d{1,3}$/.test(cells[0]!))
      return { marks: cells.slice(1), number: Number(cells[0]) }
  }
  return null
}

/** The marks of a line in which spaces are columns, whose last ones an editor may have taken away. */
const spacedMarks = (text: string): string[] => {
  const line = text.replace(/\s/g, ' ')
  return Array.from(line.length > columns ? line.trimEnd() : line)
}

/** The lines of a card's text that hold a row. Blank lines are none, unless spaces are columns and it is full of them. */
export const linesOf = (text: string): { lines: CardLine[]; areSpacesBlank: boolean } => {
  const all = text.split('\n').map((line) => line.replaceAll('|', ''))
  const filled = all.filter((line) => line.trim() !== '')
  const cells = filled.map(cellsOf)
  const plain = filled.filter((_, n) => cells[n] === null)
  const areNumbered = countOf(plain.map(numberIn)) !== 0
  const bare = plain.map((line) => withoutNumber(line, areNumbered))
  const areSpacesBlank =
    !hasVisibleBlank(bare.join('')) && bare.some((line) => /\s/.test(line.trimEnd()) && !isRow(line))
  const lineOf = (line: string): CardLine => {
    const rest = withoutNumber(line, areNumbered)
    const number = rest === line ? null : numberIn(line)
    const marks = areSpacesBlank && !isRow(rest) ? spacedMarks(rest) : Array.from(compact(rest))
    return { marks, number }
  }
  const isBlankRow = (line: string): boolean =>
    areSpacesBlank && line.length === columns && !line.includes('\t')
  const kept = all.filter((line) => line.trim() !== '' || isBlankRow(line))
  return { lines: kept.map((line) => cellsOf(line) ?? lineOf(line)), areSpacesBlank }
}
