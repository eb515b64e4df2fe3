import { modulo, stripOfColumn, type Bed, type Way } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Fault, partOfFault, indexKindsOf, indexNames, makeFault } from '../../mechanism/fault.ts'
import { withFault } from '../../mechanism/fault-list.ts'
import { faultKinds, type FaultKindName, type IndexKind } from '../../mechanism/fault-kinds.ts'
import { at } from '../../mechanism/lookup.ts'
import { startRun } from '../../mechanism/pass.ts'
import { toColumn } from '../../mechanism/indices.ts'
import type { Moment } from '../../browser/machine-store.ts'

/** The needle so many further on in the way of travel, within the bed. */
const onward = (x: number, way: Way, by: number, bed: Bed): number =>
  Math.min(bed.last, Math.max(bed.first, Math.round(x) + way * by))

/** A number for a place of a fault, so many columns or needles ahead of the carriage. */
const ahead = (place: IndexKind, by: number, { frame }: Moment): number => {
  const { pass, condition } = frame
  const column = modulo(frame.column - 1 + pass.way * by, dimensions.columns) + 1
  switch (place) {
    case 'row':
      return pass.row ?? 1
    case 'pass':
      return pass.pass + 1
    case 'needle':
      return onward(frame.x, pass.way, by, condition.bed)
    case 'strip':
      return stripOfColumn(toColumn(column))
    case 'column':
      return column
  }
}

/** Whether a fault would show in the pass that is under way. */
const shows = (fault: Fault, { run, frame }: Moment): boolean => {
  const broken = startRun({ ...run.scenario, faults: withFault(run.scenario.faults, fault) })
  return broken.passOf(frame.pass.pass).departures.some(({ part }) => part === partOfFault(fault))
}

/**
 * The numbers proposed for a kind of fault: the first ahead of the carriage at which it will show in this pass, or
 * those under the carriage where it will not. As texts for the form's fields, in the order of the kind's places.
 */
export const defaultPlaces = (kind: FaultKindName, moment: Moment): string[] => {
  const places = indexKindsOf(kind)
  const amount = faultKinds[kind].amount?.usual ?? null
  const faults = Array.from({ length: dimensions.columns }, (_, by) =>
    makeFault(
      kind,
      places.map((place) => ahead(place, by, moment)),
      amount,
    ),
  )
  const proposed = places.length === 0 ? undefined : faults.find((fault) => shows(fault, moment))
  return indexNames(proposed ?? at(faults, 0))
}
