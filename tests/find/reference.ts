import { readFileSync } from 'node:fs'
import * as v from 'valibot'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { readQuery } from '@/commands/query-file.ts'
import { type Finding, oils } from '@/find/finding.ts'
import type { Query } from '@/find/query.ts'

const chance = v.number()

/** What is read of a machine: what was seen of it, as the command reads it, and the answer. */
const machineSchema = v.object({
  seen: v.looseObject({}),
  exact: v.boolean(),
  answer: v.object({
    places: v.array(v.object({ place: v.string(), wrong: chance })),
    oil: v.object({ fresh: chance, old: chance, set: chance }),
    wear: v.object({ mean: chance }),
  }),
})

/** A machine and what a second, independent computation says of it. */
export type ReferenceMachine = v.InferOutput<typeof machineSchema>

/** The answers of a second, independent computation, for machines that were noted. */
export const referenceMachines: readonly ReferenceMachine[] = v.parse(
  v.array(machineSchema),
  JSON.parse(readFileSync(new URL('./reference-machines.json', import.meta.url), 'utf8')),
)

/** What was seen of a machine, as the search for faults is asked: a row without a pass is the pass of its number. */
export const queryOf = ({ seen }: ReferenceMachine): Query =>
  readQuery(JSON.stringify(seen), cardLibrary(cardsFolder))

/** Places with less than this are in no list; they count as having this much. */
const leastListed = 0.01

/** How far two chances of a place may differ: by so much, or by so much in the logarithms of their odds. */
const within = { chance: 0.02, logOdds: 0.3, oil: 0.05, wear: 0.05 } as const

const logOdds = (value: number): number => Math.log(value / (1 - value))

const agree = (one: number, other: number): boolean =>
  Math.abs(one - other) <= within.chance || Math.abs(logOdds(one) - logOdds(other)) <= within.logOdds

const difference = (name: string, expected: number, actual: number): string =>
  `${name}: expected ${expected.toFixed(4)}, is ${actual.toFixed(4)}`

type Places = readonly { readonly place: string; readonly wrong: number }[]

/** Where a finding's places differ from the expected ones by too much: a line for each. */
export const placeDifferences = (expected: Places, actual: Places): string[] => {
  const listOf = (places: Places): Map<string, number> =>
    new Map(places.map(({ place, wrong }) => [place, Math.max(wrong, leastListed)]))
  const [one, other] = [listOf(expected), listOf(actual)]
  return [...new Set([...one.keys(), ...other.keys()])].flatMap((place) => {
    const [is, found] = [one.get(place) ?? leastListed, other.get(place) ?? leastListed]
    return agree(is, found) ? [] : [difference(place, is, found)]
  })
}

/** Where a finding differs from the answer to a machine by too much: a line for each. */
export const differences = (
  { answer }: ReferenceMachine,
  finding: Pick<Finding, 'places' | 'oil' | 'wear'>,
): string[] => [
  ...placeDifferences(answer.places, finding.places),
  ...oils
    .filter((oil) => Math.abs(answer.oil[oil] - finding.oil[oil]) > within.oil)
    .map((oil) => difference(`oil ${oil}`, answer.oil[oil], finding.oil[oil])),
  ...(Math.abs(answer.wear.mean - finding.wear.mean) > within.wear
    ? [difference('wear', answer.wear.mean, finding.wear.mean)]
    : []),
]
