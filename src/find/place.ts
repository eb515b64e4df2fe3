import { type NeedleName, needleIndex, needleName } from '../mechanism/bed.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { type Fault, type FaultId, partOfFault } from '../mechanism/fault.ts'
import { readFault } from '../mechanism/read-fault.ts'
import {
  allColumns,
  allStrips,
  bedLengths,
  type Column,
  type Needle,
  needlesOfBed,
  type Strip,
} from '../mechanism/indices.ts'
import { type Part, parsePart } from '../mechanism/part.ts'
import { Memo } from './memo.ts'

/** Parts of the machine that reach the whole bed: each is one place. */
export const widePlaces = [
  'carriage',
  'card',
  'turn',
  'belt',
  'presser',
  'gate',
  'sweep',
  'retainer',
  'pivots',
] as const
export type WidePlace = (typeof widePlaces)[number]

/**
 * What can be distinguished from outside: a strip; a column, which is its pin and its rocker; a needle with its catch; or a
 * part that reaches the whole bed. The turn is the pawls, the lever and turns that were too short.
 */
export type Place = WidePlace | `strip.${number}` | `column.${number}` | `needle.${NeedleName}`

/** What is wrong at a place: a fault's id, no card in the reader, or something that the catalogue has no word for. */
export type Cause = FaultId | 'card.out' | 'other'

/** Whether a place reaches the whole bed. */
export const isWidePlace = (place: Place): place is WidePlace =>
  (widePlaces as readonly Place[]).includes(place)

export const stripPlace = (strip: Strip): Place => `strip.${strip}`
export const columnPlace = (column: Column): Place => `column.${column}`
export const needlePlace = (needle: Needle): Place => `needle.${needleName(needle)}`

/** Every place, the whole bed's first, then strips, columns and needles in their order. */
export const allPlaces: readonly Place[] = [
  ...widePlaces,
  ...allStrips.map(stripPlace),
  ...allColumns.map(columnPlace),
  ...needlesOfBed(bedLengths.most).map(needlePlace),
]

/** The needle of a place; null where it is another kind of place. */
export const needleOfPlace = (place: Place): Needle | null =>
  place.startsWith('needle.') ? needleIndex(place.slice('needle.'.length), bedLengths.most) : null

const placeOfPart = (part: Part): Place => {
  switch (part.kind) {
    case 'lever':
    case 'pawl':
      return 'turn'
    case 'pin':
    case 'rocker':
      return columnPlace(part.column)
    case 'strip':
      return stripPlace(part.strip)
    case 'catch':
    case 'needle':
      return needlePlace(part.needle)
    case 'belt':
    case 'card':
    case 'carriage':
    case 'gate':
    case 'pivots':
    case 'presser':
    case 'retainer':
    case 'sweep':
    case 'turn':
      return part.kind
  }
}

/** The place that a fault is at: that of its part, which is wrong as long as the fault is there. */
export const placeOfFault = (fault: Fault): Place => placeOfPart(parsePart(partOfFault(fault))!)

const faultsRead = new Memo<Fault | null>(4000)

/** The fault of a cause; null for what the catalogue has no fault of. */
export const faultOfCause = (cause: Cause): Fault | null =>
  faultsRead.of(cause, () => {
    const reading = readFault(cause, bedLengths.most)
    return reading.kind === 'fault' ? reading.fault : null
  })

/** The kind of a cause's fault; null for what the catalogue has no word for. */
export const kindOfCause = (cause: Cause): FaultKindName | 'card.out' | null =>
  cause === 'card.out' ? cause : (faultOfCause(cause)?.kind ?? null)
