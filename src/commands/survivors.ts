import { basename } from 'node:path'
import { at } from '../mechanism/lookup.ts'

interface Place {
  readonly line: number
  readonly column: number
}

/** One change of the code, as Stryker's report has it. */
interface Mutant {
  readonly status: string
  readonly replacement?: string
  readonly location: { readonly start: Place; readonly end: Place }
}

/** What of Stryker's report is looked at here. */
export interface Report {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>>
}

/** The characters of code that the list shows. */
const most = 70

/** Code as the list has it: on one line, cut where it is long, and safe in a cell of a table. */
const written = (code: string): string => {
  const line = code.replace(/\s+/g, ' ')
  const cut = line.length > most ? `${line.slice(0, most - 1)}…` : line
  return `\`${cut.replaceAll('`', '´').replaceAll('|', '\\|')}\``
}

/** The text of a file from one place up to another; lines and columns count from 1. */
const between = (source: string, { start, end }: Mutant['location']): string => {
  const lines = source.split('\n').slice(start.line - 1, end.line)
  const last = lines.length - 1
  lines[last] = at(lines, last).slice(0, end.column - 1)
  lines[0] = at(lines, 0).slice(start.column - 1)
  return lines.join('\n')
}

/** The changes that no test has found, each as the first three cells of its row in the list. */
export const survivorsIn = ({ files }: Report): string[] =>
  Object.entries(files).flatMap(([name, { source, mutants }]) =>
    mutants
      .filter(({ status }) => status === 'Survived' || status === 'NoCoverage')
      .map(({ location, replacement = '' }) =>
        [basename(name), written(between(source, location)), written(replacement)].join(' | '),
      ),
  )

/** The rows of a list in Markdown that give a reason, each as its first three cells. */
export const listedIn = (list: string): Set<string> =>
  new Set(
    list.split('\n').flatMap((line) => {
      const [, file, is, to, why] = line.split(/(?<!\\)\|/).map((cell) => cell.trim())
      return why ? [[file, is, to].join(' | ')] : []
    }),
  )
