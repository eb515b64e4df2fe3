import {
  columnChances,
  needleChances,
  otherNeedle,
  type Reader,
  readers,
  slowChances,
  stickyChances,
  stiffMs,
  wrongHole,
  wrongNotes,
} from '@/find/chances.ts'
import { type OilState, oilStates, type StripStates } from '@/find/oil-states.ts'
import { needleCode } from '@/find/needle-code.ts'
import { outcomeOfCode } from '@/find/packed-change.ts'
import { columnsOfStrip, needleName } from '@/mechanism/bed.ts'
import type { Card } from '@/mechanism/card.ts'
import { conditionOf } from '@/mechanism/condition.ts'
import { passDrive } from '@/mechanism/drive.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type Column, type Needle, type Strip, toCardRow } from '@/mechanism/indices.ts'
import { nothingOwn, type Own } from '@/mechanism/own.ts'
import { holePresented } from '@/mechanism/pin.ts'
import { soundScenario } from '@/mechanism/scenario.ts'

/** A look at some needles of one strip: the pass, mm/s, and the letter noted of each needle. */
interface SmallLook {
  readonly pass: number
  readonly speed: number
  readonly letters: string
}

/** A machine of which nothing is looked at but some needles of one strip. */
export interface SmallMachine {
  readonly card: Card
  readonly strip: Strip
  readonly needles: readonly Needle[]
  readonly looks: readonly SmallLook[]
  /** What is wrong with the whole bed. */
  readonly faults: readonly Fault[]
  readonly slip: number
  /** What was measured of it; left out for the training machine. */
  readonly own?: Own
}

interface Chanced<State> {
  readonly state: State
  readonly chance: number
}

/** What the pin of a column does in a pass: rises as the card lets it, stays low, stays high, or is never pressed back. */
type Pin = 'free' | 'low' | 'high' | 'over'

const pinFault = (column: Column, pin: Pin): Fault[] =>
  pin === 'free' ? [] : [faultOf(`pin.${column}.${pin}`)]

/** Every way in which `count` passes may each be one of two, the first with this chance. */
const eachPass = (one: Pin, other: Pin, chance: number, count: number): Chanced<Pin[]>[] =>
  count === 0
    ? [{ state: [], chance: 1 }]
    : eachPass(one, other, chance, count - 1).flatMap((before) => [
        { state: [...before.state, one], chance: before.chance * chance },
        { state: [...before.state, other], chance: before.chance * (1 - chance) },
      ])

/** Everything that a column may do in so many passes, with its chance; `rows` are the card's rows by pass. */
const behaviours = (
  { dead, high, over, sticky, other }: (typeof columnChances)['usual'],
  rows: readonly number[],
  isHole: (row: number) => boolean,
): Chanced<Pin[]>[] => {
  const always = (pin: Pin): Pin[] => rows.map(() => pin)
  const distinct = [...new Set(rows)]
  const sound = 1 - dead - high - over - sticky - other
  // A hole that is wrong is as good as a pin that does the other thing in that row.
  const holes = distinct.map((wrong) => ({
    state: rows.map((row): Pin => (row !== wrong ? 'free' : isHole(row) ? 'low' : 'high')),
    chance: sound * wrongHole,
  }))
  const all: Chanced<Pin[]>[] = [
    { state: always('free'), chance: sound * (1 - distinct.length * wrongHole) },
    ...holes,
    { state: always('low'), chance: dead },
    { state: always('high'), chance: high },
    { state: always('over'), chance: over },
    ...stickyChances.flatMap(({ share, chance }) =>
      eachPass('low', 'free', share, rows.length).map((one) => ({
        ...one,
        chance: one.chance * sticky * chance,
      })),
    ),
    ...eachPass('high', 'low', 0.5, rows.length).map((one) => ({ ...one, chance: one.chance * other })),
  ]
  const found = new Map<string, Chanced<Pin[]>>()
  for (const { state, chance } of all) {
    const before = found.get(state.join())
    found.set(state.join(), { state, chance: (before?.chance ?? 0) + chance })
  }
  return [...found.values()]
}

/** What a strip may be in with this oil; the first is sound. */
const stripStates = (strip: Strip, { slow, seized, over }: StripStates): Chanced<Fault[]>[] => [
  { state: [], chance: 1 - slow - seized - over },
  { state: [faultOf(`strip.${strip}.seized`)], chance: seized },
  { state: [faultOf(`strip.${strip}.over`)], chance: over },
  ...slowChances.map(({ ms, chance }) => ({
    state: [faultOf(`strip.${strip}.slow=${ms}`)],
    chance: slow * chance,
  })),
]

/** What needles may be in; the first is sound, and the last, null, something else. */
const needleStates = (needles: readonly Needle[]): Chanced<Fault[] | null>[] => {
  const each = (state: string): Fault[] =>
    needles.map((needle) => faultOf(`needle.${needleName(needle)}.${state}`))
  const { noHold, stiff, gone, other } = needleChances
  return [
    { state: [], chance: 1 - noHold - stiff - gone - other },
    { state: each('bent'), chance: noHold },
    { state: each(`stiff=${stiffMs}`), chance: stiff },
    { state: each('gone'), chance: gone },
    { state: null, chance: other },
  ]
}

const otherLetters: Readonly<Record<string, number>> = {
  s: otherNeedle.selected,
  p: otherNeedle.plain,
  u: otherNeedle.unmoved,
}

/** Chance of a note of what a needle did. */
const noteChance = (noted: string, did: string, slip: number): number => {
  if (noted === did) return 1 - slip
  if (did === 'u') return slip * (noted === 's' ? wrongNotes.goneSelected : wrongNotes.gonePlain)
  return slip * (noted === 'u' ? wrongNotes.unmoved : wrongNotes.other)
}

const product = (factors: readonly number[]): number => factors.reduce((all, one) => all * one, 1)

/** What whole bed, strip and needles are in, and each column's pin in one pass: as indices, and as faults. */
interface Combination {
  readonly key: string
  readonly faults: readonly Fault[]
}

/** What each of a machine's needles does in a look of the model, computed once for each combination. */
const modelOf = ({ card, looks, needles, own = nothingOwn }: SmallMachine) => {
  const known = looks.map(() => new Map<string, readonly string[]>())
  return ({ key, faults }: Combination, look: number): readonly string[] => {
    const found = known[look]!.get(key)
    if (found) return found
    const { pass, speed } = looks[look]!
    const condition = conditionOf({ ...soundScenario(card), own, faults, speed })
    const drive = passDrive(condition, pass)
    const letters = needles.map((needle) => outcomeOfCode(needleCode(condition, drive, needle)).charAt(0))
    known[look]!.set(key, letters)
    return letters
  }
}

/** How likely each needle's notes are, for what all else is in. */
const needlesOf = (machine: SmallMachine) => {
  const { needles, looks, slip } = machine
  const model = modelOf(machine)
  // Needles do not touch one another, so that all of them may be run in the same state.
  const states = needleStates(needles)
  return (inLooks: readonly Combination[]): number[] =>
    needles.map((_, nth) =>
      states.reduce((sum, { state, chance }, index) => {
        const likely = inLooks.reduce((all, { key, faults }, look) => {
          const noted = looks[look]!.letters.charAt(nth)
          if (noted === '?') return all
          if (state === null) return all * otherLetters[noted]!
          const did = model({ key: `${key} ${index}`, faults: [...faults, ...state] }, look)
          return all * noteChance(noted, did[nth]!, slip)
        }, chance)
        return sum + likely
      }, 0),
    )
}

/** How likely the notes are with a reader and a state of the oil. */
export interface Evidence {
  readonly reader: Reader
  readonly oil: OilState
  readonly likelihood: number
}

/**
 * How likely the notes of a machine as new are, with each reader and state of the oil: the sum over every combination of what its
 * strip, its columns and its needles may be in, each run by the model.
 */
export const enumerated = (machine: SmallMachine): Evidence[] => {
  const { card, strip, looks, faults: bed, own = nothingOwn } = machine
  const columns = columnsOfStrip(strip)
  const notesOf = needlesOf(machine)
  const rows = looks.map(({ pass }) => (pass - 1) % card.length)
  const condition = conditionOf({ ...soundScenario(card), own, faults: bed })
  const waysOf = (reader: Reader) =>
    columns.map((column) =>
      behaviours(columnChances[reader], rows, (row) =>
        holePresented(condition, toCardRow(row + 1, card.length), column),
      ),
    )
  const ways = readers.map((reader) => ({ reader, columns: waysOf(reader) }))
  const oilsOf = oilStates.map((oil) => ({ states: stripStates(strip, oil.strips) }))
  const sums = new Map<string, number>()
  const sizes = ways[0]!.columns.map(({ length }) => length)
  const combinations = product(sizes)
  for (const [s, { state }] of oilsOf[0]!.states.entries())
    for (let code = 0; code < combinations; code++) {
      const picks = [
        code % sizes[0]!,
        Math.floor(code / sizes[0]!) % sizes[1]!,
        Math.floor(code / sizes[0]! / sizes[1]!),
      ]
      const pins = picks.map((n, nth) => ways[0]!.columns[nth]![n]!.state)
      const likely = product(
        notesOf(
          looks.map((_, n) => ({
            key: `${s} ${pins.map((each) => each[n]).join()}`,
            faults: [...bed, ...state, ...columns.flatMap((column, nth) => pinFault(column, pins[nth]![n]!))],
          })),
        ),
      )
      for (const { reader, columns: each } of ways)
        for (const [o, { states }] of oilsOf.entries()) {
          const chance = product(picks.map((n, nth) => each[nth]![n]!.chance)) * states[s]!.chance
          const key = `${reader} ${o}`
          sums.set(key, (sums.get(key) ?? 0) + chance * likely)
        }
    }
  return ways.flatMap(({ reader }) =>
    oilStates.map((oil, o) => ({ reader, oil, likelihood: sums.get(`${reader} ${o}`)! })),
  )
}
