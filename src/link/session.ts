import type { Way } from '../mechanism/bed.ts'
import { faultId, readFault, readNumber } from '../mechanism/fault.ts'
import type { Fault } from '../mechanism/fault.ts'
import { mostRows } from '../mechanism/card.ts'
import { allRight, type BedMarks, readMarks, writeMarks } from './bed-marks.ts'
import { decodeCard, encodeCard } from './card-text.ts'
import { type CardChoice, type CardLibrary, limits, rowsOf } from './state.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { oneLine, quote, type Trouble, Troubles } from './troubles.ts'

/** One pass as somebody saw it. */
export interface SeenPass {
  readonly card: CardChoice
  /** Row of the card, from 1; null without a card. */
  readonly row: number | null
  readonly way: Way
  /** In mm/s. */
  readonly speed: number
  readonly marks: BedMarks
}

/** A part that somebody looked at: the check's id, and the fault that was found; null for none. */
export interface Checked {
  readonly check: string
  readonly found: Fault | null
}

/** All that somebody entered to find a fault. */
export interface Session {
  /** The seed of the machine that is practised on; null where the machine is a real one. */
  readonly practice: number | null
  /** Whether the needles were marked in passing, so that now and then one is wrong. */
  readonly isRough: boolean
  /** At least one. */
  readonly passes: readonly SeenPass[]
  readonly checked: readonly Checked[]
  /** The answer kept as the finding: faults that are there together; null for none yet. */
  readonly finding: readonly Fault[] | null
}

/** The most passes and checks that a link may hold: a page must not stand still over a hostile one. */
export const sessionLimits = { passes: 40, checks: 20, together: 2 } as const

/** The pass that a session begins with. */
export const firstPass = (library: CardLibrary): SeenPass => ({
  card: { kind: 'site', id: library.main },
  row: 1,
  way: 1,
  speed: dimensions.speed,
  marks: allRight,
})

/** What an empty link means. */
export const emptySession = (library: CardLibrary): Session => ({
  practice: null,
  isRough: false,
  passes: [firstPass(library)],
  checked: [],
  finding: null,
})

const cardText = (card: CardChoice): string =>
  card.kind === 'none' ? 'none' : card.kind === 'own' ? `x.${encodeCard(card.rows)}` : card.id

/** Whether two choices are the same card. */
export const sameCard = (one: CardChoice, other: CardChoice): boolean => cardText(one) === cardText(other)

const passText = ({ row, way, speed, marks }: SeenPass): string =>
  [row ?? 0, way === 1 ? 'right' : 'left', speed, writeMarks(marks)].filter((word) => word !== '').join('.')

/**
 * Writes a session in its one canonical form: `practice=SEED` for a machine to practise on, `marks=rough` for marks made in passing, `card=` before the first pass with a new card, `pass=ROW.WAY.SPEED.MARKS`
 * for each pass, `check=ID.FAULT` for each part looked at, `found=FAULT` for each fault of the finding.
 */
export const writeSession = (
  { practice, isRough, passes, checked, finding }: Session,
  library: CardLibrary,
): string => {
  const pairs = new URLSearchParams()
  if (practice !== null) pairs.append('practice', String(practice))
  if (isRough) pairs.append('marks', 'rough')
  let card = library.main
  for (const pass of passes) {
    const own = cardText(pass.card)
    if (own !== card) pairs.append('card', own)
    card = own
    pairs.append('pass', passText(pass))
  }
  for (const { check, found } of checked) pairs.append('check', found ? `${check}.${faultId(found)}` : check)
  for (const id of (finding ?? []).map(faultId).sort()) pairs.append('found', id)
  return pairs.toString()
}

/** A session, always whole, and what there is to say about how it was read. */
export interface SessionReading {
  readonly session: Session
  readonly troubles: readonly Trouble[]
}

/** Reads a session's link, one pair at a time. */
class Reader {
  readonly troubles = new Troubles()
  readonly passes: SeenPass[] = []
  readonly checked: Checked[] = []
  readonly finding: Fault[] = []
  practice: number | null = null
  isRough = false
  readonly library: CardLibrary
  private current: CardChoice

  constructor(library: CardLibrary) {
    this.library = library
    this.current = { kind: 'site', id: library.main }
  }

  pair(name: string, value: string): void {
    if (name === 'card') this.card(value)
    else if (name === 'pass') this.pass(value)
    else if (name === 'check') this.check(value)
    else if (name === 'found') this.found(value)
    else if (name === 'practice') this.seed(value)
    else if (name === 'marks' && value === 'rough') this.isRough = true
    else if (name !== 'v' || value !== '1')
      this.troubles.leftOut(`This page doesn't know ${quote(`${name}=${value}`)}, so it is left out.`)
  }

  private card(text: string): void {
    if (text === 'none') this.current = { kind: 'none' }
    else if (this.library.cards.has(text)) this.current = { kind: 'site', id: text }
    else {
      const reading = text.startsWith('x.') ? decodeCard(text.slice(2)) : null
      if (reading?.rows) this.current = { kind: 'own', rows: reading.rows }
      else
        this.troubles.leftOut(
          `There is no card ${quote(text)} here; ${quote(cardText(this.current))} is used in its place.`,
        )
      if (reading?.rows && reading.remark !== null)
        this.troubles.leftOut(`The link's own card was cut: ${reading.remark}.`)
    }
  }

  private seed(text: string): void {
    const seed = readNumber(text)
    if (seed !== null && Number.isInteger(seed) && seed >= 0 && seed <= limits.seed[1]) this.practice = seed
    else this.troubles.leftOut(`The machine ${quote(text)} to practise on is not known, so it is left out.`)
  }

  private row(text: string, which: number): number | null {
    const rows = rowsOf(this.current, this.library)?.length
    if (rows === undefined) return null
    const row = readNumber(text)
    if (row !== null && Number.isInteger(row) && row >= 1 && row <= Math.min(rows, mostRows)) return row
    this.troubles.changed(
      `For pass ${which} the link has row ${quote(text)}; this card has rows 1 to ${rows}, and row 1 is used.`,
    )
    return 1
  }

  private speed(text: string, which: number): number {
    const [least, most] = limits.speed
    const speed = readNumber(text)
    if (speed !== null && speed >= least && speed <= most) return speed
    this.troubles.changed(
      `For pass ${which} the link has the speed ${quote(text)}, outside ${least} to ${most}; ${dimensions.speed} is used.`,
    )
    return dimensions.speed
  }

  private pass(text: string): void {
    const which = this.passes.length + 1
    if (which > sessionLimits.passes) {
      this.troubles.leftOut(`The link has more than ${sessionLimits.passes} passes; the rest is left out.`)
      return
    }
    const [row = '', way = '', speed = '', ...rest] = text.split('.')
    if (way !== 'right' && way !== 'left') {
      this.troubles.leftOut(`The pass ${quote(text)} can't be read, so it is left out.`)
      return
    }
    const { marks, leftOut } = readMarks(rest.join('.'))
    if (leftOut.length > 0)
      this.troubles.leftOut(
        `In pass ${which} the needles ${oneLine(leftOut.join(', '), 120)} can't be read and are left out.`,
      )
    this.passes.push({
      card: this.current,
      row: this.row(row, which),
      way: way === 'right' ? 1 : -1,
      speed: this.speed(speed, which),
      marks,
    })
  }

  private fault(id: string): Fault | null {
    const reading = readFault(id)
    if (!reading.fault)
      this.troubles.leftOut(`The fault ${quote(id)} can't be read: ${oneLine(reading.reason, 160)}.`)
    return reading.fault
  }

  private check(text: string): void {
    const [check = '', ...rest] = text.split('.')
    if (!/^[a-z-]{1,20}$/.test(check) || this.checked.length >= sessionLimits.checks) {
      this.troubles.leftOut(`The check ${quote(text)} is left out.`)
      return
    }
    const found = rest.length === 0 ? null : this.fault(rest.join('.'))
    if (rest.length === 0 || found) this.checked.push({ check, found })
  }

  private found(text: string): void {
    const fault = this.fault(text)
    if (!fault) return
    if (this.finding.length < sessionLimits.together) this.finding.push(fault)
    else this.troubles.leftOut(`The finding has more faults than two; ${quote(text)} is left out.`)
  }
}

/**
 * Reads a session's link (with or without its `#`). Never throws and always gives a session with at least one pass;
 * what can't be read is left out or replaced, and said in a sentence.
 */
export const readSession = (text: string, library: CardLibrary): SessionReading => {
  const reader = new Reader(library)
  for (const [name, value] of new URLSearchParams(text.replace(/^[#?]/, ''))) reader.pair(name, value)
  const { practice, isRough, passes, checked, finding, troubles } = reader
  return {
    session: {
      practice,
      isRough,
      passes: passes.length > 0 ? passes : emptySession(library).passes,
      checked,
      finding: finding.length > 0 ? finding.sort((a, b) => (faultId(a) < faultId(b) ? -1 : 1)) : null,
    },
    troubles: troubles.all,
  }
}
