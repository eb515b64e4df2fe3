import { type CardPlace, modulo, type Way, wayOfPass, wholeBedOf } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { type Fault, isHoleFault } from '../mechanism/fault.ts'
import { type CardRow, toCardRow } from '../mechanism/indices.ts'
import { type Dimensions } from '../mechanism/dimensions.ts'
import { canonicalOwn, dimensionsOf, nothingOwn, type Own } from '../mechanism/own.ts'
import { type Scenario, soundScenario } from '../mechanism/scenario.ts'

/** The machine that is looked at: where the card's columns lie along its bed, and what was measured of it. */
export interface MachinePlace extends CardPlace {
  /** Left out where the machine is taken to be as the training machine. */
  readonly own?: Own
}

/** Only what says which machine it is, of something that says more. */
export const placeOnly = ({ columnOne, own }: MachinePlace): MachinePlace =>
  own === undefined ? { columnOne } : { columnOne, own }

/** The machine's dimensions, in the units of the training machine's. */
export const dimensionsAt = ({ own }: Pick<MachinePlace, 'own'>): Dimensions =>
  dimensionsOf(own ?? nothingOwn)

/** A text that two machines share only where they have the same dimensions. */
export const ownKey = ({ own }: Pick<MachinePlace, 'own'>): string =>
  own === undefined ? '' : JSON.stringify(canonicalOwn(own))

/** One look at the whole bed: a pass of the model with a card, at a speed in mm/s. */
export interface View extends MachinePlace {
  /** The card as it lies in the reader: its first row is read in pass 1. Null without a card. */
  readonly card: Card | null
  /** From 1. */
  readonly pass: number
  readonly speed: number
  /** By how many rows the card was on before pass 1; null for a card that is not the one in question. */
  readonly shift: number | null
}

/** A pass as somebody notes it: the row due, which way, how fast in mm/s. The row is null without a card. */
export interface Noted {
  readonly row: number | null
  readonly way: Way
  readonly speed: number
  /**
   * Which pass it was, from 1: odd ones go to the right. The same pass again is the same row under the pins again.
   * Where it is not noted, it follows from the row, the way, and the pass before.
   */
  readonly pass?: number
}

/** Row of the card in question, from 1, that a sound machine reads in a view; null where it reads none of it. */
export const rowDue = ({ card, pass, shift }: View): CardRow | null =>
  card && shift !== null ? toCardRow(modulo(pass - 1 + shift, card.length) + 1, card.length) : null

/** The card laid in so that its row `shift + 1` is read first. */
const laidIn = (card: Card, shift: number): Card =>
  shift === 0 ? card : card.map((_, n) => card[(n + shift) % card.length]!)

/** The first pass with this row and way of a card that was on by `shift` rows; null where there is none. */
const passWith = (rows: number, shift: number, row: number, way: Way): number | null => {
  const first = modulo(row - 1 - shift, rows) + 1
  return [first, first + rows].find((pass) => wayOfPass(pass) === way) ?? null
}

/** The view of a pass of a known number, whose row may be another than the card's first rows would have it. */
const viewOfPass = (card: Card | null, { row, speed }: Noted, pass: number, place: MachinePlace): View => {
  if (!card || row === null) return { card: null, pass, speed, shift: null, ...placeOnly(place) }
  const shift = modulo(row - pass, card.length)
  return { card: laidIn(card, shift), pass, speed, shift, ...placeOnly(place) }
}

/**
 * The views of passes as they were noted, with one card. A pass whose number is noted is that pass; of the others, one with the next row the other way follows the one before
 * it. Any other begins afresh, at the first pass that reads its row its way on a sound machine: pass `row`, or a whole
 * card later where the card has an odd number of rows. On an even card a row is read one way only, so where the way
 * does not fit, the card must have been laid in one row further on, and is taken so.
 */
export const viewsOf = (card: Card | null, noted: readonly Noted[], place: MachinePlace): View[] => {
  const views: View[] = []
  for (const one of noted) {
    const { row, way, speed } = one
    const before = views.at(-1)
    const follows =
      before !== undefined &&
      wayOfPass(before.pass) !== way &&
      rowDue({ ...before, pass: before.pass + 1 }) === row
    if (one.pass !== undefined) views.push(viewOfPass(card, one, one.pass, place))
    else if (follows) views.push({ ...before, pass: before.pass + 1, speed })
    else if (!card || row === null)
      views.push({ card: null, pass: way === 1 ? 1 : 2, speed, shift: null, ...placeOnly(place) })
    else {
      const shift = passWith(card.length, 0, row, way) === null ? 1 : 0
      const pass = passWith(card.length, shift, row, way)!
      views.push({ card: laidIn(card, shift), pass, speed, shift, ...placeOnly(place) })
    }
  }
  return views
}

/** A fault as it is in a view: a card's own fault moves with its row, and stays with its card. */
const faultIn = (view: View, fault: Fault): Fault[] => {
  if (!isHoleFault(fault)) return [fault]
  const [row, column] = fault.at
  if (!view.card || view.shift === null) return []
  return [
    {
      ...fault,
      at: [toCardRow(modulo(row - 1 - view.shift, view.card.length) + 1, view.card.length), column],
    },
  ]
}

/** The model's scenario of a machine with these faults, as new but for them, in a view. */
export const scenarioIn = (view: View, faults: readonly Fault[]): Scenario => ({
  ...soundScenario(view.card),
  columnOne: view.columnOne,
  own: view.own ?? nothingOwn,
  bed: wholeBedOf(dimensionsAt(view).needles),
  faults: faults.flatMap((fault) => faultIn(view, fault)),
  speed: view.speed,
})
