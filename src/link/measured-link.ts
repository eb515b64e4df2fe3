import { read, defaultState } from './read.ts'
import type { CardLibrary } from './state.ts'
import { write } from './write.ts'
import { roundNumber } from '../mechanism/number.ts'
import { passEnds, wholeBedOf } from '../mechanism/bed.ts'
import { sortedFaults } from '../mechanism/fault.ts'
import { canonicalOwn, dimensionsOf, type Own } from '../mechanism/own.ts'
import { measuredFaults } from '../mechanism/measured-machine.ts'
import { type Measured, measurementNames, measurements, ownOf, usualOf } from '../mechanism/measurement.ts'

/** The text of a state's link that says what was measured. */
export const linkText = (
  { measured, speed }: { readonly measured: Measured; readonly speed: number },
  library: CardLibrary,
): string => {
  const rounded = Object.fromEntries(
    Object.entries(ownOf(measured)).map(([name, value]) => [name, roundNumber(value)]),
  ) as Own
  const usual = defaultState(library)
  const bed = wholeBedOf(dimensionsOf(rounded).needles)
  return write(
    {
      ...usual,
      own: canonicalOwn(rounded),
      bed,
      at: passEnds(usual.pass, bed).start,
      faults: sortedFaults(measuredFaults(measured)),
      speed,
    },
    library,
  )
}

/** What a link says was measured; null where it says nothing of it. */
export const measuredIn = (
  text: string,
  library: CardLibrary,
): { readonly measured: Measured; readonly speed: number; readonly troubles: readonly string[] } | null => {
  const { state, troubles } = read(text, library)
  const { own, faults, speed } = state
  const amountOf = (belt: 'belt.slack' | 'belt.timing'): number =>
    faults.find(({ kind }) => kind === belt)?.amount ?? 0
  const ofBelt: Measured = { slack: amountOf('belt.slack'), timing: amountOf('belt.timing') }
  const names = measurementNames.filter((name) => {
    if (ofBelt[name] !== undefined) return ofBelt[name] !== 0
    return Math.abs(usualOf(name, own) - usualOf(name)) > 1e-4
  })
  if (names.length === 0 && troubles.length === 0) return null
  const measured = Object.fromEntries(
    names.map((name) => {
      const { least, most } = measurements[name]
      const value = ofBelt[name] ?? usualOf(name, own)
      return [name, roundNumber(Math.min(most, Math.max(least, value)))]
    }),
  )
  return { measured, speed, troubles: troubles.map(({ sentence }) => sentence) }
}
