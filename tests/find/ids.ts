import type { RankedAnswer } from '@/find/rank.ts'
import { type Fault, readFault } from '@/mechanism/fault.ts'

/** A fault by its id. */
export const fault = (id: string): Fault => {
  const reading = readFault(id)
  if (!reading.fault) throw new Error(`${id}: ${reading.reason}`)
  return reading.fault
}

/** The ids of an answer's ways, each way's joined. */
export const idsOf = ({ kind, ways }: RankedAnswer): string[] =>
  kind === 'faults'
    ? ways.map((way) =>
        way
          .map(({ id }) => id)
          .sort()
          .join(' + '),
      )
    : [kind]
