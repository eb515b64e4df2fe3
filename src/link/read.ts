import { type Bed, needleName, passEnds, wholeBed } from '../mechanism/bed.ts'
import { contradict, type Fault, faultId, readFault, readNumber } from '../mechanism/fault.ts'
import { decodeCard } from './card-text.ts'
import { readAt, readBed, writeAt } from './place.ts'
import { type CardChoice, type CardLibrary, defaultState, limits, rowsOf, type State } from './state.ts'

/** One plain sentence about a part of a link that could not be read (left out) or was changed. */
export interface Trouble {
  readonly kind: 'left out' | 'changed'
  readonly sentence: string
}

/** A state, always whole, and what there is to say about how it was read. */
export interface Reading {
  readonly state: State
  readonly troubles: readonly Trouble[]
}

const keys = ['v', 'card', 'pass', 'at', 'break', 'speed', 'wear', 'seed', 'needles', 'note'] as const
type Key = (typeof keys)[number]

/** A stranger's text as it may stand in a sentence: short, in quotation marks, and without control characters. */
const quote = (text: string): string => {
  const plain = [...text.replace(/[\p{Cc}\p{Cf}]/gu, '·')]
  return `“${plain.length > 40 ? `${plain.slice(0, 40).join('')}…` : plain.join('')}”`
}

/** Collects sentences while a text is read. */
class Reader {
  readonly troubles: Trouble[] = []
  readonly values = new Map<Key, string>()
  readonly breaks: string[] = []

  leftOut(sentence: string): void {
    this.troubles.push({ kind: 'left out', sentence })
  }

  changed(sentence: string): void {
    this.troubles.push({ kind: 'changed', sentence })
  }

  constructor(text: string) {
    const strange = new Set<string>()
    for (const [name, value] of new URLSearchParams(text.replace(/^[#?]/, ''))) {
      const key = keys.find((known) => known === name)
      if (!key) strange.add(name)
      else if (key === 'break') this.breaks.push(value)
      else {
        const before = this.values.get(key)
        if (before !== undefined && before !== value)
          this.changed(`The link gives “${key}” twice; the later, ${quote(value)}, stands.`)
        this.values.set(key, value)
      }
    }
    for (const name of strange) this.leftOut(`This site doesn't know ${quote(name)}, so it is left out.`)
  }

  /** A number of the link, clamped to its range; the default where there is none or it can't be read. */
  number(key: Key, range: readonly [number, number], usual: number, isWhole: boolean): number {
    const text = this.values.get(key)
    if (text === undefined) return usual
    const value = readNumber(text)
    if (value === null || (isWhole && !Number.isInteger(value))) {
      const kind = isWhole ? 'whole number' : 'number'
      this.leftOut(`For “${key}” the link has ${quote(text)}, which is no ${kind}; ${usual} is used.`)
      return usual
    }
    const clamped = Math.min(range[1], Math.max(range[0], value))
    if (clamped !== value)
      this.changed(`For “${key}” the link has ${value}, outside ${range[0]} to ${range[1]}; ${clamped} is used.`)
    return clamped
  }

  bed(): Bed {
    const text = this.values.get('needles')
    if (text === undefined) return wholeBed
    const bed = readBed(text)
    if (!bed) {
      const whole = `${needleName(wholeBed.first)} to ${needleName(wholeBed.last)}`
      this.leftOut(`${quote(text)} names no needles from left to right such as L24-R24; ${whole} are used.`)
    }
    return bed ?? wholeBed
  }

  card(library: CardLibrary): CardChoice {
    const text = this.values.get('card')
    const main: CardChoice = { kind: 'site', id: library.main }
    if (text === undefined) return main
    if (text === 'none') return { kind: 'none' }
    if (!text.startsWith('x.')) {
      if (library.cards.has(text)) return { kind: 'site', id: text }
      this.leftOut(`There is no card ${quote(text)} here; the main card is used.`)
      return main
    }
    const reading = decodeCard(text.slice(2))
    if (!reading.rows) {
      this.leftOut(`The link's own card can't be read: ${reading.reason}. The main card is used.`)
      return main
    }
    if (reading.remark !== null) this.leftOut(`The link's own card was cut: ${reading.remark}.`)
    return { kind: 'own', rows: reading.rows }
  }

  at(pass: number, bed: Bed): number {
    const { start, end } = passEnds(pass, bed)
    const text = this.values.get('at')
    if (text === undefined) return start
    const at = readAt(text)
    if (at === null) {
      this.leftOut(`${quote(text)} is no place for the carriage; it stands at the start of the pass.`)
      return start
    }
    const clamped = Math.min(Math.max(start, end), Math.max(Math.min(start, end), at))
    if (clamped !== at)
      this.changed(`The carriage can't be at ${quote(text)} with these needles in use; it stands at ${writeAt(clamped)}.`)
    return clamped
  }

  faults(rows: number | null): Fault[] {
    const faults: Fault[] = []
    for (const id of this.breaks) {
      const reading = readFault(id)
      if (!reading.fault) {
        this.leftOut(`The fault ${quote(id)} can't be read: ${reading.reason}.`)
        continue
      }
      if (reading.remark !== null) this.changed(`In the fault ${quote(id)}, ${reading.remark}.`)
      const row = reading.fault.at[0] ?? 0
      const isHole = reading.fault.kind === 'card.torn' || reading.fault.kind === 'card.blocked'
      if (isHole && rows !== null && row > rows) {
        this.leftOut(`The fault ${quote(id)} is left out: this card has no row ${row}, only ${rows}.`)
        continue
      }
      this.addFault(faults, reading.fault)
    }
    if (faults.length > limits.faults)
      this.leftOut(`The link has ${faults.length} faults; the first ${limits.faults} are kept.`)
    return faults.slice(0, limits.faults)
  }

  private addFault(faults: Fault[], fault: Fault): void {
    const id = faultId(fault)
    const rival = faults.findIndex((other) => contradict(fault, other))
    if (rival < 0) {
      faults.push(fault)
      return
    }
    const [gone] = faults.splice(rival, 1)
    if (gone && faultId(gone) !== id)
      this.changed(`${quote(faultId(gone))} and ${quote(id)} can't both be so; the later, ${quote(id)}, stands.`)
    this.addFault(faults, fault)
  }

  note(): string {
    const characters = [...(this.values.get('note') ?? '')]
    if (characters.length > limits.noteCharacters)
      this.changed(`The note is longer than ${limits.noteCharacters} characters and is cut there.`)
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
  const version = reader.values.get('v')
  if (version !== undefined && version !== '1')
    reader.leftOut(`The link is of version ${quote(version)}, which is not known here; it was read as version 1.`)
  const card = reader.card(library)
  const pass = reader.number('pass', limits.pass, usual.pass, true)
  const bed = reader.bed()
  const state: State = {
    card,
    pass,
    at: reader.at(pass, bed),
    faults: reader.faults(rowsOf(card, library)?.length ?? null),
    speed: reader.number('speed', limits.speed, usual.speed, false),
    wear: reader.number('wear', limits.wear, usual.wear, false),
    seed: reader.number('seed', limits.seed, usual.seed, true),
    bed,
    note: reader.note(),
  }
  return { state, troubles: reader.troubles }
}
