import { oneValue, readTable, type Table, writeTable } from './codec.ts'
import { sayUnknownKeys } from './read.ts'
import type { CardLibrary, State } from './state.ts'
import { type StateLink, stateOf, stateTable } from './state-table.ts'
import { oneLine, type Trouble } from './troubles.ts'

/** What a repairer sends to a customer: a title, and a state whose note is her message. */
export interface Case {
  /** One line; empty for none. */
  readonly title: string
  readonly state: State
}

/** A case, always whole, what there is to say about how it was read, and whether the link lost its end. */
export interface CaseReading extends Case {
  readonly troubles: readonly Trouble[]
  readonly isCut: boolean
}

/** The most characters of a title. */
export const titleCharacters = 80

/** The last pair of every case's link. Programs for chatting cut links: without it the rest may have gone too. */
const lastPair = 'end=1'

/** A title as it travels: on one line, without blanks at its ends, and within its length. */
export const caseTitle = (text: string): string =>
  Array.from(oneLine(text, Infinity).trim()).slice(0, titleCharacters).join('').trim()

const valueOf = (pair: string): string => [...new URLSearchParams(pair).values()][0]!

/** What is left of a pair that was cut: not half a character, and nothing at all of half a name. */
const whatIsLeft = (pair: string): string => {
  const whole = pair.replace(/%[\da-f]?$/i, '')
  if (!whole.includes('=')) return ''
  const last = /%[c-f][\da-f](?:%[89ab][\da-f])*$/i.exec(whole)
  return last && valueOf(`x=${last[0]}`).includes('\uFFFD') ? whole.slice(0, last.index) : whole
}

/** What a case's link says: the case, and that this is its end. */
interface CaseLink extends StateLink {
  readonly title: string
  readonly end: 1
}

/** The table of a case's link: its title, the keys of its state, and its end. */
const caseTable: Table<CaseLink> = {
  title: oneValue('title', {
    usual: () => '',
    parse(text, { troubles }) {
      if (Array.from(text.trim()).length > titleCharacters)
        troubles.changed('title', `The title is longer than ${titleCharacters} characters and is cut there.`)
      return caseTitle(text)
    },
    write: caseTitle,
  }),
  ...stateTable,
  end: {
    keys: ['end'],
    isList: true,
    isAlwaysWritten: true,
    usual: () => 1,
    parse: (_, { usual }) => usual,
    write: () => [['end', '1']],
  },
}

/**
 * Reads a case's link text (with or without its `#`). Never throws; a link that was cut anywhere gives what is left of
 * it, and says so in `isCut`. A text without a case's last pair, such as a plain state's, counts as cut.
 */
export const readCase = (text: string, library: CardLibrary): CaseReading => {
  const pairs = text
    .replace(/^[#?]/, '')
    .split('&')
    .filter((pair) => pair !== '')
  const isCut = pairs.length > 0 && pairs.at(-1) !== lastPair
  const left = isCut ? [...pairs.slice(0, -1), whatIsLeft(pairs.at(-1)!)] : pairs
  const { whole, troubles } = readTable(left.join('&'), caseTable, library, sayUnknownKeys)
  return { title: whole.title, state: stateOf(whole), troubles, isCut }
}

/** Writes a case in its one canonical form: its title if it has one, its state, and the mark of its end. */
export const writeCase = ({ title, state }: Case, library: CardLibrary): string =>
  writeTable({ title, ...state, version: 1, end: 1 }, caseTable, library)
