import type { PossibleBed } from '@/find/close-search.ts'
import type { DrawnMachine, DrawnStrip } from '@/find/draw-machines.ts'
import type { DrawnColumn } from '@/find/drawn-columns.ts'
import type { Look } from '@/find/looks.ts'
import { oilStates } from '@/find/oil-states.ts'
import { type View } from '@/find/view.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, rightBed, type WideState } from '@/find/wide-states.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import { summed } from './one-strip.ts'

const { sums } = summed([[1, 500, 'ssssss']], 'firm', [0])
const card = [0xffffff, 0, 0x123456, 0xfedcba]
/** Four passes of a card. */
export const views = [1, 2, 3, 4].map((pass): View => ({ card, pass, speed: 500, shift: 0, ...usualPlace }))
/** Those passes as looks, of which nothing is noted. */
export const looks: Look[] = views.map((view) => ({
  view,
  way: wayOfPass(view.pass),
  noted: new Uint8Array(200),
}))

/** A column that is right. */
export const sound: DrawnColumn = { state: 'sound', stays: 0, certainty: 1 }
/** A strip that is right with its columns. */
export const rightStrip: DrawnStrip = { state: 'right', slow: 0, columns: [sound, sound, sound] }

/** What differs from a right machine: its bed, its strips by number, its bar. */
export interface Drawn {
  readonly state?: WideState
  readonly strips?: Readonly<Record<number, Partial<DrawnStrip>>>
  readonly retainer?: number
}

/** A drawn machine that is right but for these. */
export const machineOf = ({ state = rightBed, strips = {}, retainer = -1 }: Drawn): DrawnMachine => ({
  bed: { state, sums, bars: [], logs: new Float64Array(), log: 0 } satisfies PossibleBed,
  hidden: { index: 0, wear: 0, pivots: 0, reader: 0, oil: oilStates[0]! },
  retainer,
  isLoose: false,
  strips: Array.from({ length: 8 }, (_, n) => ({ ...rightStrip, ...strips[n + 1] })),
})

/** Numbers that are none of chance’s: each the same. */
export const never = (): number => 0.5

/** A bed with one thing wrong that reaches all of it. */
export const wide = (id: string): WideState => alone(wideCauses().find(({ causes }) => causes[0] === id)!)
