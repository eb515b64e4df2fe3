import { read, defaultState } from './read.ts'
import type { CardLibrary } from './state.ts'
import { write } from './write.ts'
import { roundNumber } from '../mechanism/number.ts'
import { passEnds, usualPlace, wholeBedOf } from '../mechanism/bed.ts'
import type { Needle } from '../mechanism/indices.ts'
import { sortedFaults } from '../mechanism/fault-list.ts'
import { canonicalOwn, dimensionsOf, type Own } from '../mechanism/own.ts'
import { measuredFaults } from '../mechanism/measured-machine.ts'
import { type Measured, measurementNames, measurements, ownOf, usualOf } from '../mechanism/measurement.ts'

/** The text of a state's link that says what was measured, and which needle is of column 1. */
export const linkText = (
  {
    measured,
    speed,
    columnOne = usualPlace.columnOne,
  }: { readonly measured: Measured; readonly speed: number; readonly columnOne?: Needle },
  library: CardLibrary,
): string => {
  const rounded = Object.fromEntries(
    (Object.entries(ownOf(measured)) as [keyof Own, number][]).map(([name, value]) => [
      name,
      roundNumber(value),
    ]),
  ) as Own
  const usual = defaultState(library)
  const bed = wholeBedOf(dimensionsOf(rounded).needles)
  return write(
    {
      ...usual,
      columnOne,
      own: canonicalOwn(rounded),
      bed,
      at: passEnds(usual.pass, bed).start,
      faults: sortedFaults(measuredFaults(measured)),
      speed,
    },
    library,
  )
}

/** What was measured, as a link says it, and what there is to say of the link. */
interface MeasuredReading {
  readonly measured: Measured
  readonly speed: number
  readonly columnOne: Needle
  readonly troubles: readonly string[]
}

/** What a link says was measured; null where it says nothing of it. */
export const measuredIn = (text: string, library: CardLibrary): MeasuredReading | null => {
  const { state, troubles } = read(text, library)
  const { own, faults, speed, columnOne } = state
  const amountOf = (belt: 'belt.slack' | 'belt.timing'): number =>
    faults.find(({ kind }) => kind === belt)?.amount ?? 0
  const ofBelt: Measured = { slack: amountOf('belt.slack'), timing: amountOf('belt.timing') }
  const names = measurementNames.filter((name) => {
    if (ofBelt[name] !== undefined) return ofBelt[name] !== 0
    return Math.abs(usualOf(name, own) - usualOf(name)) > 1e-4
  })
  if (names.length === 0 && troubles.length === 0 && columnOne === usualPlace.columnOne) return null
  const measured = Object.fromEntries(
    names.map((name) => {
      const { least, most } = measurements[name]
      const value = ofBelt[name] ?? usualOf(name, own)
      return [name, roundNumber(Math.min(most, Math.max(least, value)))]
    }),
  )
  return { measured, speed, columnOne, troubles: troubles.map(({ sentence }) => sentence) }
}
