import { type CardPlace, needlesOfStrip, wayOfPass } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { conditionOf } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { passDrive } from '../mechanism/drive.ts'
import { type Fault, faultId, indexKindsOf } from '../mechanism/fault.ts'
import { markOfNeedle, type Needle, toStrip } from '../mechanism/indices.ts'
import { needlesAt } from './bed-needles.ts'
import { reachOf } from './entries.ts'
import { isKindByChance } from './kinds-by-chance.ts'
import { needleCode } from './needle-code.ts'
import { type SoundBeds, soundBeds, soundIn } from './sound.ts'
import { dimensionsAt, type MachinePlace, placeOnly, rowDue, scenarioIn, type View, viewsOf } from './view.ts'

/** Passes that follow one another on one card, all of them at the ordinary speed. */
const runOf = (card: Card, shift: number, passes: number, place: MachinePlace): View[] =>
  viewsOf(
    card,
    Array.from({ length: passes }, (_, n) => ({
      row: ((n + shift) % card.length) + 1,
      way: wayOfPass(n + 1),
      speed: dimensions.speed,
      pass: n + 1,
    })),
    place,
  )

/**
 * Every row of a card both ways, at the ordinary speed. A card with an odd number of rows is run through twice; of one
 * with an even number each row is read one way only, so the second run begins one row further on.
 */
export const bothWays = (card: Card, place: MachinePlace): View[][] =>
  card.length % 2 === 1
    ? [runOf(card, 0, 2 * card.length, place)]
    : [runOf(card, 0, card.length, place), runOf(card, 1, card.length, place)]

/** Kinds whose effect in a pass depends on the passes before it. */
const hasMemory = ({ kind }: Fault): boolean =>
  kind.startsWith('pawl.') ||
  kind === 'turn.twice' ||
  kind === 'card.locked' ||
  kind === 'belt.off' ||
  kind === 'pin.over' ||
  indexKindsOf(kind).includes('pass')

/** Views of which each reads another row, or reads it the other way. */
const distinct = (views: readonly View[]): View[] => [
  ...new Map(views.map((view) => [`${rowDue(view)} ${wayOfPass(view.pass)}`, view])).values(),
]

/** Whether some needles of a machine with these faults come out of some runs as on a sound one. */
const areRight = (
  faults: readonly Fault[],
  needles: readonly Needle[],
  { runs, beds }: Trial,
  seed: number,
): boolean => {
  const isEach = faults.some((fault) => hasMemory(fault) || isKindByChance(fault.kind))
  return runs.every((views) => {
    const [first] = views
    if (!first) return true
    const condition = conditionOf({ ...scenarioIn(first, faults), seed })
    return (isEach ? views : distinct(views)).every((view) => {
      const drive = passDrive(condition, view.pass)
      const { codes } = soundIn(beds, view)
      return needles.every((needle) => needleCode(condition, drive, needle) === markOfNeedle(codes, needle))
    })
  })
}

/** Runs that machines are tried in. */
interface Trial extends MachinePlace {
  readonly runs: readonly (readonly View[])[]
  readonly beds: SoundBeds
}

/** The strip that a fault's effects stay within, as a number from 1; 0 where they go further. */
const within = (fault: Fault, place: CardPlace): number => {
  const reach = reachOf(fault, place)
  return reach.of === 'strip' || reach.of === 'needle' ? reach.strip : 0
}

/** Says whether a machine with these faults comes out whole; `seed` is what the model's chances go by. */
export type IsWhole = (faults: readonly Fault[], seed: number) => boolean

/**
 * Tries machines in every row of a card both ways: whether each knits as a sound one does. A needle hears one strip
 * only, so faults that stay within their strips are tried strip by strip, and each that differs once.
 */
export const wholeRuns = (card: Card, machine: MachinePlace): IsWhole => {
  const place = placeOnly(machine)
  const trial: Trial = { runs: bothWays(card, place), beds: soundBeds(), ...place }
  const known = new Map<string, boolean>()
  const isRight = (faults: readonly Fault[], needles: readonly Needle[], seed: number): boolean => {
    const isChance = faults.some(({ kind }) => isKindByChance(kind))
    const key = `${faults.map(faultId).sort().join()}${isChance ? ` ${seed}` : ''}`
    let right = known.get(key)
    if (right === undefined) known.set(key, (right = areRight(faults, needles, trial, seed)))
    return right
  }
  return (faults, seed) => {
    const byStrip = Map.groupBy(faults, (fault) => within(fault, trial))
    if (byStrip.has(0)) return isRight(faults, needlesAt(place), seed)
    return [...byStrip].every(([strip, own]) =>
      isRight(own, needlesOfStrip(toStrip(strip), trial, dimensionsAt(place).needles), seed),
    )
  }
}
