import { type Fault, faultId } from '../mechanism/fault.ts'
import { oneValue, readTable, type Row, type Table, writeTable } from './codec.ts'
import { sayUnknownKeys } from './read.ts'
import { type CardLibrary, limits, type State } from './state.ts'
import { type StateLink, stateOf, stateTable } from './state-table.ts'
import { oneLine, quote, type Trouble } from './troubles.ts'

/** What passes after the work proved: so many of all single faults would have shown, and none did. */
interface CaseProof {
  readonly shown: number
  readonly faults: number
}

/** What a repairer sends to a customer: a title, and a state whose note is her message; after the work what came of it, too. */
export interface Case {
  /** One line; empty for none. */
  readonly title: string
  readonly state: State
  /** What was done, in her words, at most `limits.noteCharacters`; empty for nothing. */
  readonly done: string
  /** How it was after the work: mended, and perhaps proved; null before it. */
  readonly after: 'mended' | CaseProof | null
  /** Of the state's faults those that were left as they are; none before the work. */
  readonly left: readonly Fault[]
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
  readonly done: string
  readonly after: Case['after']
  readonly left: readonly Fault[]
  readonly end: 1
}

/** The most single faults that a link may speak of. */
const mostFaults = 99_999

const readProof = (text: string): CaseProof | null => {
  const [, shown, faults] = /^(\d{1,5})\.(\d{1,5})$/.exec(text) ?? []
  if (shown === undefined || faults === undefined) return null
  const proof = { shown: Number(shown), faults: Number(faults) }
  return proof.faults >= 1 && proof.faults <= mostFaults && proof.shown <= proof.faults ? proof : null
}

const afterRow = oneValue<Case['after'], CaseLink>('after', {
  usual: () => null,
  parse(text, { troubles }) {
    const after = text === 'mended' ? text : readProof(text)
    if (after === null)
      troubles.leftOut(
        'after',
        `How the machine was after the work, ${quote(text)}, can't be read.`,
        ', so it is left out.',
      )
    return after
  },
  write: (after) => (after === null ? '' : after === 'mended' ? after : `${after.shown}.${after.faults}`),
})

/** What was left as it is, one pair a fault: each is one of the state's. */
const leftRow: Row<readonly Fault[], CaseLink> = {
  keys: ['left'],
  isList: true,
  usual: () => [],
  parse(pairs, { others, troubles }) {
    const faults = others('after') === null ? [] : others('faults')
    const known = new Set<string>(faults.map(faultId))
    for (const [, id] of pairs)
      if (!known.has(id))
        troubles.leftOut(
          'left',
          `The link leaves ${quote(id)} as it is, but has no such fault, or nothing of work.`,
          ' That is left out.',
        )
    const ids = new Set(pairs.map(([, id]) => id))
    return faults.filter((fault) => ids.has(faultId(fault)))
  },
  write: (left) => left.map((fault) => ['left', faultId(fault)]),
}

/** The table of a case's link: its title, the keys of its state, what came of the work, and its end. */
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
  done: oneValue('done', {
    usual: () => '',
    parse(text, { troubles }) {
      const characters = Array.from(text)
      if (characters.length > limits.noteCharacters)
        troubles.changed(
          'done',
          `What was done is longer than ${limits.noteCharacters} characters and is cut there.`,
        )
      return characters.slice(0, limits.noteCharacters).join('')
    },
    write: (done) => done,
  }),
  after: afterRow,
  left: leftRow,
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
  const kept = isCut ? [...pairs.slice(0, -1), whatIsLeft(pairs.at(-1)!)] : pairs
  const { whole, troubles } = readTable(kept.join('&'), caseTable, library, sayUnknownKeys)
  const { title, done, after, left } = whole
  return { title, state: stateOf(whole), done, after, left, troubles, isCut }
}

/** Writes a case in its one canonical form: its title if it has one, its state, what came of the work, and the mark of its end. */
export const writeCase = ({ title, state, done, after, left }: Case, library: CardLibrary): string =>
  writeTable({ title, ...state, done, after, left, version: 1, end: 1 }, caseTable, library)
