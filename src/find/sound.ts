import { type Way, wayOfPass } from '../mechanism/bed.ts'
import type { RowHoles } from '../mechanism/card.ts'
import { startRun } from '../mechanism/pass.ts'
import { codes } from './packed-change.ts'
import { type MachinePlace, ownKey, placeOnly, scenarioIn, type View } from './view.ts'

/** A sound machine's bed after one pass, by needle from the left. */
export interface SoundBed {
  readonly codes: Uint8Array
  readonly held: Uint8Array
}

/** Gives the bed of a sound machine that reads `row` (null: no card) this way at this speed in mm/s. */
export type SoundBeds = (row: RowHoles | null, way: Way, speed: number, place: MachinePlace) => SoundBed

/** The row's holes that a sound machine reads in a view; null without a card. */
export const bitsDue = ({ card, pass }: View): RowHoles | null =>
  card ? card[(pass - 1) % card.length]! : null

/** Sound beds, each computed once. They depend on the row's holes, the way, the speed and the machine only. */
export const soundBeds = (): SoundBeds => {
  const beds = new Map<string, SoundBed>()
  return (row, way, speed, place) => {
    const key = `${row ?? 'none'} ${way} ${speed} ${place.columnOne} ${ownKey(place)}`
    let bed = beds.get(key)
    if (!bed) {
      const view = {
        card: row === null ? null : [row],
        pass: way === 1 ? 1 : 2,
        speed,
        shift: null,
        ...placeOnly(place),
      }
      const pass = startRun(scenarioIn(view, [])).passOf(view.pass)
      bed = {
        codes: Uint8Array.from(pass.came, (outcome) => codes[outcome]),
        held: Uint8Array.from(pass.keptFor, (kept) => (kept > 0 ? 1 : 0)),
      }
      beds.set(key, bed)
    }
    return bed
  }
}

/** The sound bed of a view. */
export const soundIn = (beds: SoundBeds, view: View): SoundBed =>
  beds(bitsDue(view), wayOfPass(view.pass), view.speed, view)
