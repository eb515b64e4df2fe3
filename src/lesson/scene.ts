import { type Card, columnBit, everyHole, hasHole } from '../mechanism/card.ts'
import { needleName, passEnds, type Way, wayOfPass, wholeBed, withinPass } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Fault } from '../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { sortedAfter } from '../mechanism/frame.ts'
import { type Pass, startRun } from '../mechanism/pass.ts'
import {
  type CardChoice,
  type CardLibrary,
  defaultState,
  rowsOf,
  scenarioOf,
  type State,
} from '../link/state.ts'
import { write } from '../link/write.ts'
import type { Draw } from './draw.ts'
import type { Picture } from './question.ts'

/** The parts of a state that a question settles; the rest is as in an empty link. */
export type Scene = Partial<Pick<State, 'card' | 'pass' | 'at' | 'faults' | 'speed'>>

/** Needles beside each other: the first one's index, and how many. */
export interface Stretch {
  readonly first: number
  readonly count: number
}

const stateOf = (library: CardLibrary, scene: Scene): State => ({
  ...defaultState(library),
  ...scene,
  at: scene.at ?? passEnds(scene.pass ?? 1, wholeBed).start,
})

/** The link text of a scene, with the carriage at the start of its pass unless the scene says else. */
export const textOf = (library: CardLibrary, scene: Scene): string => write(stateOf(library, scene), library)

/** The pass of a scene, whole. */
export const passOf = (library: CardLibrary, scene: Scene): Pass =>
  startRun(scenarioOf(stateOf(library, scene), library)).passOf(scene.pass ?? 1)

/** A fault with its usual amount unless another is given. */
export const broken = (kind: FaultKindName, at: readonly number[] = [], amount?: number): Fault => ({
  kind,
  at,
  amount: amount ?? faultKinds[kind].amount?.usual ?? null,
})

/** A card of one row, which travels in the link. */
export const ownRow = (row: number): CardChoice => ({ kind: 'own', rows: [row] })

/** The card with every hole. */
export const allHoles = ownRow(everyHole)

/** A row with holes in these columns. */
export const rowWith = (columns: readonly number[]): number =>
  columns.reduce((row, column) => row | columnBit(column), 0)

/** The main card's rows. */
export const mainRows = (library: CardLibrary): Card =>
  rowsOf({ kind: 'site', id: library.main }, library) ?? [everyHole]

/** Columns 1 to 24. */
export const everyColumn: readonly number[] = Array.from({ length: dimensions.columns }, (_, n) => n + 1)

/** Indexes of a stretch's needles, from the left. */
export const indexesOf = ({ first, count }: Stretch): number[] =>
  Array.from({ length: count }, (_, n) => first + n)

/** How far from the middle of the bed questions go, in needles. */
const reach = 96

/** A stretch of `count` needles that begins with column 1, or every `step` columns where a step is given. */
export const someStretch = (draw: Draw, count: number, step: number = dimensions.columns): Stretch => {
  const farthest = Math.floor((reach - count) / step)
  return { first: dimensions.needles / 2 + step * draw.whole(-Math.floor(reach / step), farthest), count }
}

/** The scene with the carriage where the presser lets go of needle `index`. */
export const underPresser = (scene: Scene, index: number): Scene => ({ ...scene, at: index })

/** The scene with the carriage where all needles of a stretch have been sorted. */
export const sorted = (scene: Scene, stretch: Stretch): Scene => {
  const way = wayOfPass(scene.pass ?? 1)
  const last = way === 1 ? stretch.first + stretch.count - 1 : stretch.first
  return { ...scene, at: withinPass(last + way * Math.ceil(sortedAfter), scene.pass ?? 1, wholeBed) }
}

/** Right or left. */
export const wayWord = (way: Way): string => (way === 1 ? 'right' : 'left')

/** R1 to R24. */
export const namesOf = ({ first, count }: Stretch): string =>
  `${needleName(first)} to ${needleName(first + count - 1)}`

/** A row of a card as a picture. */
export const rowPicture = (rows: Card, row: number): Picture => ({
  kind: 'row',
  title: rows.length === 1 ? 'The card’s row' : `Card row ${row}`,
  holes: everyColumn.map((column) => hasHole(rows[row - 1] ?? 0, column)),
})
