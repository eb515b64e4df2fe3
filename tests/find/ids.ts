import type { Suspect } from '@/find/rank.ts'
import { type Fault, readFault } from '@/mechanism/fault.ts'

/** A fault by its id. */
export const fault = (id: string): Fault => {
  const reading = readFault(id)
  if (!reading.fault) throw new Error(`${id}: ${reading.reason}`)
  return reading.fault
}

/** The ids of a suspect's ways, each way's joined. */
export const idsOf = ({ is, ways }: Suspect): string[] =>
  is === 'faults'
    ? ways.map((way) =>
        way
          .map(({ id }) => id)
          .sort()
          .join(' + '),
      )
    : [is]
