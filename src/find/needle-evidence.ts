import type { Fault } from '../mechanism/fault.ts'
import { markOfNeedle, type Needle } from '../mechanism/indices.ts'
import { letterOf, needlesAt } from './bed-needles.ts'
import type { Finding } from './finding.ts'
import { type Hypothesis, hypothesesOf } from './hypotheses.ts'
import { noteOf, notes } from './bed-letters.ts'
import { shownByMachine } from './machine-bed.ts'
import { changedCode, changedSlot } from './packed-change.ts'
import { type Place, placeOfFault } from './place.ts'
import { type Query, viewsOfQuery } from './query.ts'
import { type Setting, settingOf } from './shown.ts'
import { soundBeds } from './sound.ts'

/** The needles of one pass whose notes speak for a place being wrong, and those that speak against it. */
export interface Speaking {
  readonly for: readonly Needle[]
  readonly against: readonly Needle[]
}

/** The outcome of each needle on a machine in a view, as codes. */
const bedOf = (machine: Pick<Hypothesis, 'faults' | 'hasCard'>, setting: Setting): Uint8Array => {
  const bed = Uint8Array.from(setting.sound.codes)
  for (const change of shownByMachine(machine, setting).changed)
    bed[changedSlot(change)] = changedCode(change)
  return bed
}

/** The likeliest listed machine in which a place is wrong; null where none is. */
const machineWith = (finding: Finding, isAt: (fault: Fault) => boolean): Hypothesis | null =>
  hypothesesOf(finding).find(({ faults }) => faults.some(isAt)) ?? null

/**
 * By pass of a query, which needles speak for a place being wrong and which against: those that the likeliest machine
 * with it wrong has otherwise than the same machine with it right. None where chance alone decides.
 */
export const speakingFor = (query: Query, finding: Finding, place: Place): Speaking[] => {
  const isAt = (fault: Fault): boolean => placeOfFault(fault) === place
  const machine = machineWith(finding, isAt)
  const beds = soundBeds()
  const needles = needlesAt(query)
  return viewsOfQuery(query).map((view, n) => {
    if (!machine) return { for: [], against: [] }
    const setting = settingOf(view, beds)
    const wrong = bedOf(machine, setting)
    const right = bedOf({ ...machine, faults: machine.faults.filter((fault) => !isAt(fault)) }, setting)
    const letters = query.passes[n]?.needles ?? ''
    const noted = (needle: Needle): number => noteOf(letterOf(letters, needle))
    const is = (bed: Uint8Array, needle: Needle): number => markOfNeedle(bed, needle)
    const differing = needles.filter(
      (needle) => is(wrong, needle) !== is(right, needle) && noted(needle) !== notes.none,
    )
    return {
      for: differing.filter((needle) => noted(needle) === is(wrong, needle)),
      against: differing.filter((needle) => noted(needle) === is(right, needle)),
    }
  })
}
