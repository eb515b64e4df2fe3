import type { Dictionary } from '@/find/dictionary.ts'
import type { Suspect } from '@/find/rank.ts'
import { scenarioIn } from '@/find/view.ts'
import { type Fault, readFault } from '@/mechanism/fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { numbers } from './make.ts'

/** A fault by its id. */
export const fault = (id: string): Fault => {
  const reading = readFault(id)
  if (!reading.fault) throw new Error(`${id}: ${reading.reason}`)
  return reading.fault
}

/** The beds that a machine with these faults leaves in a dictionary's views, noted without error. */
export const observe = ({ views }: Dictionary, faults: readonly Fault[], seed = 1): string[] =>
  views.map((view) =>
    startRun({ ...scenarioIn(view, faults), seed })
      .passOf(view.pass)
      .came.map((outcome) => outcome.charAt(0))
      .join(''),
  )

/** The same beds with needles noted wrongly at a rate, as the seed has it. */
export const slipped = (beds: readonly string[], rate: number, seed: number): string[] => {
  const next = numbers(seed)
  return beds.map((bed) =>
    [...bed]
      .map((letter) => {
        if (next() >= rate) return letter
        const others = ['s', 'p', 'u'].filter((other) => other !== letter)
        return others[next() < 0.5 ? 0 : 1]!
      })
      .join(''),
  )
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
