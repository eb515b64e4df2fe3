import { type Bed, needleName, passEnds, wholeBed, withinPass } from '../mechanism/bed.ts'
import { readNumber } from '../mechanism/fault.ts'
import { decodeCard } from './card-text.ts'
import { type Key, type Pairs, pairsOf } from './pairs.ts'
import { readCarriagePosition, readBed, writeCarriagePosition } from './carriage-position.ts'
import { readFaults } from './read-faults.ts'
import { type CardChoice, type CardLibrary, defaultState, limits, rowsOf, type State } from './state.ts'
import { quote, type Trouble, Troubles } from './troubles.ts'

export type { Trouble } from './troubles.ts'

/** A state, always whole, and what there is to say about how it was read. */
export interface Reading {
  readonly state: State
  readonly troubles: readonly Trouble[]
}

/** Reads the values of a link, one key at a time. */
class Reader {
  readonly troubles = new Troubles()
  readonly pairs: Pairs

  constructor(text: string) {
    this.pairs = pairsOf(text, this.troubles)
  }

  value(key: Key): string | undefined {
    return this.pairs.values.get(key)
  }

  version(): void {
    const version = this.value('v')
    if (version !== undefined && version !== '1')
      this.troubles.leftOut(
        `The link is of version ${quote(version)}, which is not known here; it was read as version 1.`,
      )
  }

  /** A number of the link, clamped to its range; the default where there is none or it can't be read. */
  number(key: Key, [least, most]: readonly [number, number], usual: number, isWhole: boolean): number {
    const text = this.value(key)
    if (text === undefined) return usual
    const value = readNumber(text)
    if (value === null || (isWhole && !Number.isInteger(value))) {
      const kind = isWhole ? 'whole number' : 'number'
      this.troubles.leftOut(
        `For “${key}” the link has ${quote(text)}, which is no ${kind}; ${usual} is used.`,
      )
      return usual
    }
    const clamped = Math.min(most, Math.max(least, value))
    if (clamped !== value)
      this.troubles.changed(
        `For “${key}” the link has ${value}, outside ${least} to ${most}; ${clamped} is used.`,
      )
    return clamped
  }

  bed(): Bed {
    const text = this.value('needles')
    if (text === undefined) return wholeBed
    const bed = readBed(text)
    if (bed) return bed
    const whole = `${needleName(wholeBed.first)} to ${needleName(wholeBed.last)}`
    this.troubles.leftOut(
      `${quote(text)} names no needles from left to right such as L24-R24; ${whole} are used.`,
    )
    return wholeBed
  }

  card(library: CardLibrary): CardChoice {
    const text = this.value('card')
    const main: CardChoice = { kind: 'site', id: library.main }
    if (text === undefined) return main
    if (text === 'none') return { kind: 'none' }
    if (!text.startsWith('x.')) {
      if (library.cards.has(text)) return { kind: 'site', id: text }
      this.troubles.leftOut(`There is no card ${quote(text)} here; the main card is used.`)
      return main
    }
    const reading = decodeCard(text.slice(2))
    if (!reading.rows) {
      this.troubles.leftOut(`The link's own card can't be read: ${reading.reason}. The main card is used.`)
      return main
    }
    if (reading.remark !== null) this.troubles.leftOut(`The link's own card was cut: ${reading.remark}.`)
    return { kind: 'own', rows: reading.rows }
  }

  at(pass: number, bed: Bed): number {
    const { start } = passEnds(pass, bed)
    const text = this.value('at')
    if (text === undefined) return start
    const at = readCarriagePosition(text)
    if (at === null) {
      this.troubles.leftOut(
        `${quote(text)} is no place for the carriage; it stands at the start of the pass.`,
      )
      return start
    }
    const clamped = withinPass(at, pass, bed)
    if (clamped !== at)
      this.troubles.changed(
        `The carriage can't be at ${quote(text)} with these needles in use; it stands at ${writeCarriagePosition(clamped)}.`,
      )
    return clamped
  }

  note(): string {
    const characters = Array.from(this.value('note') ?? '')
    if (characters.length > limits.noteCharacters)
      this.troubles.changed(`The note is longer than ${limits.noteCharacters} characters and is cut there.`)
    return characters.slice(0, limits.noteCharacters).join('')
  }
}

/**
 * Reads a link's text (with or without its `#`). Never throws and always gives a whole state; what can't be read is
 * left out, numbers out of range are clamped, of two contradicting faults the later stands, and each is said.
 */
export const read = (text: string, library: CardLibrary): Reading => {
  const usual = defaultState(library)
  const reader = new Reader(text)
  reader.version()
  const card = reader.card(library)
  const pass = reader.number('pass', limits.pass, usual.pass, true)
  const bed = reader.bed()
  const state: State = {
    card,
    pass,
    at: reader.at(pass, bed),
    faults: readFaults(reader.pairs.breaks, rowsOf(card, library)?.length ?? null, reader.troubles),
    speed: reader.number('speed', limits.speed, usual.speed, false),
    wear: reader.number('wear', limits.wear, usual.wear, false),
    seed: reader.number('seed', limits.seed, usual.seed, true),
    bed,
    note: reader.note(),
  }
  return { state, troubles: reader.troubles.all }
}
