import type { CheckId } from '../../find/checks.ts'
import type { Answer } from '../../find/messages.ts'
import { type Place, placeOfFault } from '../../find/place.ts'
import { kindAndPlace } from '../../find/query.ts'
import type { RepairId } from '../../find/repairs.ts'
import { readSession, writeSession } from '../../link/session-link.ts'
import type { Fault } from '../../mechanism/fault.ts'
import type { Section } from './section.ts'

/** The check that is made by the way when a place is worked on: what was found there is noted as its outcome. */
const checkOfRepair: Readonly<Record<RepairId, CheckId>> = {
  settings: 'settings',
  card: 'card',
  retainer: 'retainer',
  needles: 'swap-needle',
  belt: 'belt',
  carriage: 'carriage',
  strips: 'strips',
  catches: 'cover',
  turn: 'stepping',
  reader: 'reader',
}

/** What a hand noted, as a key: a fault's kind and place, or that all was sound. */
const keyOf = (found: Fault | null): string => (found ? kindAndPlace(found) : 'sound')

/** The faults that may be at these places, the likeliest first: what a hand may find there. */
const faultsAt = (answers: readonly Answer[], places: readonly Place[]): Fault[] =>
  answers.flatMap(({ ways }) =>
    ways.flatMap((way) => way.filter((fault) => places.includes(placeOfFault(fault)))).slice(0, 3),
  )

/** Whether a hand has noted that at a repair: a fault, or that all was sound. */
export const isNotedAt = ({ job, library }: Section, repair: RepairId, found: Fault | null): boolean =>
  readSession(job.now().before, library).session.checked.some(
    (one) => one.check === checkOfRepair[repair] && keyOf(one.found) === keyOf(found),
  )

/** Notes what a hand found at a repair, so that the search for faults knows it, or takes it back. */
export const toggleFound = ({ job, library }: Section, repair: RepairId, found: Fault | null): void => {
  const { session } = readSession(job.now().before, library)
  const check = checkOfRepair[repair]
  const others = session.checked.filter((one) => one.check !== check || keyOf(one.found) !== keyOf(found))
  const isNew = others.length === session.checked.length
  // Where something was found not all is sound, and the other way round.
  const still = others.filter(
    (one) => !isNew || one.check !== check || (one.found === null) === (found === null),
  )
  const checked = isNew ? [...still, { check, found }] : still
  job.set({ before: writeSession({ ...session, checked }, library) })
}

/** What may be noted at a repair: what was noted, and then what is likely. */
export const faultsToNote = (
  { job, library }: Section,
  repair: RepairId,
  answers: readonly Answer[],
  places: readonly Place[],
): readonly Fault[] => {
  const noted = readSession(job.now().before, library).session.checked.flatMap(({ check, found }) =>
    check === checkOfRepair[repair] && found ? [found] : [],
  )
  const all = [...faultsAt(answers, places), ...noted]
  return [...new Map(all.map((fault) => [kindAndPlace(fault), fault])).values()].sort((one, other) =>
    kindAndPlace(one).localeCompare(kindAndPlace(other)),
  )
}
