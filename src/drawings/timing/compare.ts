import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { type CardPlace, stripOfColumn } from '../../mechanism/bed.ts'
import { conditionOf } from '../../mechanism/condition.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Strip } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import { passDrive } from '../../mechanism/drive.ts'
import { stripShift } from '../../mechanism/strip.ts'
import { columnAt, type Machine, pointsOf, type Range, risings, type Sample, shiftsAt } from './curves.ts'

/** The sound machine with the same card in the same pass, speed and bed; null where this one is sound itself. */
export const soundMachine = (run: Run, pass: number): Machine | null => {
  const { card, speed, bed, columnOne, faults, wear } = run.scenario
  if (faults.length === 0 && wear === 0) return null
  const condition = conditionOf({ ...soundScenario(card), speed, bed, columnOne })
  return { condition, drive: passDrive(condition, pass) }
}

/** Places in a stretch at which the presser lets go of a needle of this strip, in needles. */
export const letGos = (strip: Strip, { low, high }: Range, place: CardPlace): number[] => {
  const first = Math.ceil(low)
  const offset = (strip - stripOfColumn(columnAt(first, place)) + dimensions.strips) % dimensions.strips
  const all: number[] = []
  for (let x = first + offset; x <= high; x += dimensions.strips) all.push(x)
  return all
}

/** One strip's curve, and where it differs from the sound machine's so that a let-go comes out otherwise. */
export interface Curve {
  readonly strip: Strip
  readonly risings: readonly (readonly Sample[])[]
  /** Pieces of the sound machine's curve that are missing here. */
  readonly lost: readonly (readonly Sample[])[]
  /** Areas between this curve and the sound one, where a let-go finds the strip shifted that should be at rest. */
  readonly extra: readonly (readonly Sample[])[]
}

const shiftOf = ({ condition, drive }: Machine, strip: Strip, place: number): number =>
  stripShift(condition, drive, strip, place)

const reaches = (machine: Machine, strip: Strip, place: number): boolean =>
  shiftOf(machine, strip, place) >= machine.condition.reach

/** Least difference in mm that counts as one. */
const difference = 0.01

/** The outlines of the areas above the sound curve that hold one of these places. */
const areasAbove = (
  sound: Machine,
  strip: Strip,
  samples: readonly Sample[],
  places: readonly number[],
): Sample[][] => {
  const areas: Sample[][] = []
  let area: { x: number; above: number; below: number }[] = []
  const close = (): void => {
    const [first, last] = [entryAt(area, 0).x, lastOf(area).x]
    if (places.some((place) => place >= first && place <= last))
      areas.push([
        ...area.map(({ x, above }) => ({ x, mm: above })),
        ...area.reverse().map(({ x, below }) => ({ x, mm: below })),
      ])
    area = []
  }
  for (const { x, mm } of samples) {
    const below = shiftOf(sound, strip, x)
    if (mm - below > difference) area.push({ x, above: mm, below })
    else if (area.length > 0) close()
  }
  if (area.length > 0) close()
  return areas
}

/** A strip's curve in a stretch of the bed, held against the sound machine's. */
export const curveOf = (machine: Machine, sound: Machine | null, strip: Strip, range: Range): Curve => {
  const points = pointsOf(machine, strip, range)
  if (!sound) return { strip, risings: risings(shiftsAt(machine, strip, points, range)), lost: [], extra: [] }
  const soundPoints = pointsOf(sound, strip, range)
  const samples = shiftsAt(machine, strip, [...points, ...soundPoints], range)
  const places = letGos(strip, range, machine.condition)
  const missed = places.filter((x) => reaches(sound, strip, x) && !reaches(machine, strip, x))
  const unasked = places.filter((x) => reaches(machine, strip, x) && !reaches(sound, strip, x))
  const soundRisings = missed.length > 0 ? risings(shiftsAt(sound, strip, soundPoints, range)) : []
  return {
    strip,
    risings: risings(samples),
    lost: soundRisings.filter((piece) =>
      missed.some((x) => x >= entryAt(piece, 0).x && x <= lastOf(piece).x),
    ),
    extra: unasked.length > 0 ? areasAbove(sound, strip, samples, unasked) : [],
  }
}
