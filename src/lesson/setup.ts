import { type Card, columnBit, everyHole, hasHole } from '../mechanism/card.ts'
import { passEnds, stripOfColumn, wayOfPass, wholeBed, withinPass } from '../mechanism/bed.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { allColumns, type Column, toColumn } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { type Pass, startRun } from '../mechanism/pass.ts'
import { sortedAfter, dimensions } from '../mechanism/dimensions.ts'
import { type CardChoice, type CardLibrary, rowsOf, scenarioOf, type State } from '../link/state.ts'
import { defaultState } from '../link/read.ts'
import { write } from '../link/write.ts'
import type { NeedleRange } from './needle-range.ts'
import type { Kit, Picture } from './question.ts'

/** What of the machine's state a question sets; the rest is as in an empty link. */
export type Setup = Partial<Pick<State, 'card' | 'pass' | 'at' | 'faults' | 'speed'>>

/** What a setup's machine is made with: the cards there are, and where their columns lie along the bed. */
export type Ground = Pick<Kit, 'library' | 'columnOne'>

const stateOf = ({ library, columnOne }: Ground, setup: Setup): State => ({
  ...defaultState(library),
  columnOne,
  ...setup,
  at: setup.at ?? passEnds(setup.pass ?? 1, wholeBed).start,
})

/** The link text of a setup, with the carriage at the start of its pass unless the setup puts it elsewhere. */
export const linkText = (ground: Ground, setup: Setup): string =>
  write(stateOf(ground, setup), ground.library)

/** A setup with the carriage at the start of its pass. */
export const fromPassStart = (setup: Setup): Setup => {
  const { at, ...others } = setup
  return at === undefined ? setup : others
}

/** The whole pass of a setup, as the model runs it. */
export const passOf = (ground: Ground, setup: Setup): Pass =>
  startRun(scenarioOf(stateOf(ground, setup), ground.library)).passOf(setup.pass ?? 1)

/** A fault with its usual amount unless another is given. */
export const broken = (kind: FaultKindName, at: readonly number[] = [], amount?: number): Fault =>
  makeFault(kind, at, amount ?? faultKinds[kind].amount?.usual ?? null)

/** A card of one row, which travels in the link. */
export const ownRow = (row: number): CardChoice => ({ kind: 'own', rows: [row] })

/** The card with every hole. */
export const allHoles = ownRow(everyHole)

/** A row with holes in these columns. */
export const rowWith = (columns: readonly number[]): number =>
  columns.reduce((row, column) => row | columnBit(toColumn(column)), 0)

/** The main card's rows. */
export const mainCardRows = (library: CardLibrary): Card =>
  rowsOf({ kind: 'site', id: library.main }, library) ?? [everyHole]

/** The setup with the carriage where the presser lets go of needle `index`. */
export const underPresser = (setup: Setup, index: number): Setup => ({ ...setup, at: index })

/** The setup with the carriage where the gates have sorted all needles of a range. */
export const sorted = (setup: Setup, range: NeedleRange): Setup => {
  const way = wayOfPass(setup.pass ?? 1)
  const last = way === 1 ? range.first + range.count - 1 : range.first
  return {
    ...setup,
    at: withinPass(last + way * Math.ceil(sortedAfter(dimensions)), setup.pass ?? 1, wholeBed),
  }
}

/** A row of a card as a picture. */
export const rowPicture = (rows: Card, row: number): Picture => ({
  kind: 'row',
  title: rows.length === 1 ? 'The card’s row' : `Card row ${row}`,
  holes: allColumns.map((column) => hasHole(at(rows, row - 1), column)),
})

/** The columns that work a strip. */
export const columnsOf = (strip: number): Column[] =>
  allColumns.filter((column) => stripOfColumn(column) === strip)

/** The card row that a pass reads. Throws where there is no card. */
export const cardRowOf = ({ pass, row }: Pass): number => {
  if (row === null) throw new Error(`pass ${pass} has no card`)
  return row
}
