import { read, type Trouble } from './read.ts'
import type { CardLibrary, State } from './state.ts'
import { oneLine, quote, Troubles } from './troubles.ts'
import { write } from './write.ts'

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

const nameOf = (pair: string): string => [...new URLSearchParams(pair).keys()][0] ?? ''
const valueOf = (pair: string): string => [...new URLSearchParams(pair).values()][0]!

/** What is left of a pair that was cut: not half a character, and nothing at all of half a name. */
const whatIsLeft = (pair: string): string => {
  const whole = pair.replace(/%[\da-f]?$/i, '')
  if (!whole.includes('=')) return ''
  const last = /%[c-f][\da-f](?:%[89ab][\da-f])*$/i.exec(whole)
  return last && valueOf(`x=${last[0]}`).includes('\uFFFD') ? whole.slice(0, last.index) : whole
}

const titleIn = (pairs: readonly string[], troubles: Troubles): string => {
  const titles = pairs.map(valueOf)
  const title = titles.at(-1) ?? ''
  if (titles.some((other) => other !== title))
    troubles.changed(`The link gives “title” more than once; the last, ${quote(title)}, stands.`)
  if (Array.from(title.trim()).length > titleCharacters)
    troubles.changed(`The title is longer than ${titleCharacters} characters and is cut there.`)
  return caseTitle(title)
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
  const troubles = new Troubles()
  const title = titleIn(
    left.filter((pair) => nameOf(pair) === 'title'),
    troubles,
  )
  const rest = left.filter((pair) => !['title', 'end'].includes(nameOf(pair)))
  const reading = read(rest.join('&'), library)
  return { title, state: reading.state, troubles: [...troubles.all, ...reading.troubles], isCut }
}

/** Writes a case in its one canonical form: its title if it has one, its state, and the mark of its end. */
export const writeCase = ({ title, state }: Case, library: CardLibrary): string => {
  const said = caseTitle(title)
  const first = said === '' ? '' : new URLSearchParams({ title: said }).toString()
  return [first, write(state, library), lastPair].filter((pair) => pair !== '').join('&')
}
