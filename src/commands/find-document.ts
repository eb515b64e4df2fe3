import { opensMachine } from '../find/checks.ts'
import type { Finding, RankedMachine, Way } from '../find/finding.ts'
import { fitOfMachine } from '../find/machine-fit.ts'
import type { NextLook } from '../find/next.ts'
import type { Query } from '../find/query.ts'
import { needleName, sideOfWay } from '../mechanism/bed.ts'
import { at } from '../mechanism/lookup.ts'
import { nextWords } from '../words/checks.ts'
import { machineEvidence } from '../words/machine-evidence.ts'

/** More machines than this that nothing distinguishes are written as one, with a bar between the causes of each way. */
const mostWritten = 64

const between = { causes: ' | ', faults: ' + ' } as const

const joined = (faults: readonly string[]): string => [...faults].sort().join(between.faults)

/** The machines that may be meant by ways of which each has several causes: one for every choice of a cause each. */
const machinesOf = (ways: readonly (readonly string[])[]): string[] => {
  const count = ways.reduce((product, causes) => product * causes.length, 1)
  if (count > mostWritten) return [joined(ways.map((causes) => causes.join(between.causes)))]
  const choices = ways.reduce<string[][]>(
    (chosen, causes) => chosen.flatMap((before) => causes.map((cause) => [...before, cause])),
    [[]],
  )
  return choices.map(joined)
}

/** The machines of an entry, each as its ids joined by a plus; none for a sound one, `other` for all that are not listed. */
export const faultsOf = ({ faults }: RankedMachine): string[] => {
  if (faults === null) return ['other']
  return faults.length === 0 ? [] : machinesOf(faults)
}

const wayEntry = ({ causes, probability }: Way) => ({ fault: causes.join(between.causes), probability })

const rankedEntry = (query: Query, machine: RankedMachine) => ({
  faults: faultsOf(machine),
  probability: machine.probability,
  why: machineEvidence(
    machine.faults && { isSound: machine.faults.length === 0, ...fitOfMachine(query, machine.faults) },
    query.passes.length,
  ),
})

const nextEntry = (look: NextLook) => ({
  check: nextWords(look),
  bits: Math.round(look.bits * 1e4) / 1e4,
  minutes: look.minutes,
  opens: opensMachine(look),
})

/** What is written of a finding and the next looks. */
export const findEntries = (query: Query, finding: Finding, next: readonly NextLook[]) => ({
  ranked: finding.ranked.map((machine) => rankedEntry(query, machine)),
  next: next.map(nextEntry),
  places: finding.places.map(({ place, wrong, before, ways }) => ({
    place,
    wrong,
    before,
    ways: ways.map(wayEntry),
  })),
  oil: finding.oil,
  wear: finding.wear,
  together: finding.together.map(({ places, wrong }) => ({ places, wrong })),
  unexplained: finding.unexplained.map(({ pass, needle, chance }) => {
    const { row, way } = at(query.passes, pass)
    return { row, way: sideOfWay(way), needle: needleName(needle), chance }
  }),
})

const written = (value: unknown): string =>
  Array.isArray(value) && value.length > 0
    ? `[${value.map((one) => `\n    ${JSON.stringify(one)}`).join(',')}\n  ]`
    : JSON.stringify(value)

/** The JSON document of a finding and the next looks, with one line for each entry of a list. */
export const findDocument = (query: Query, finding: Finding, next: readonly NextLook[]): string =>
  `{ ${Object.entries(findEntries(query, finding, next))
    .map(([name, value]) => `${JSON.stringify(name)}: ${written(value)}`)
    .join(',\n  ')} }\n`
