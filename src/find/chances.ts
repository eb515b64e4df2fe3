import type { Oil } from './finding.ts'

/*
 * How common each thing is before anything is seen: what a repairer may change to what her own bench sees. Every row is
 * common practice from memory, no source.
 */

/** Chance that a needle is noted wrongly by somebody who looks at each needle, and by somebody who marks in passing. */
export const slips = { sure: 0.005, rough: 0.02 } as const

/** What a wrong note says: of a needle that moved it is mostly the other outcome; of one that did not, mostly selected. */
export const wrongNotes = { other: 0.96, unmoved: 0.04, goneSelected: 0.9, gonePlain: 0.1 } as const

/** The oil, along the whole bed. */
export const oilChances: Readonly<Record<Oil, number>> = { fresh: 0.55, old: 0.3, set: 0.15 }

/** Each strip, by the oil. */
export const stripChances: Readonly<Record<Oil, { slow: number; seized: number; over: number }>> = {
  fresh: { slow: 0.006, seized: 0.008, over: 0.004 },
  old: { slow: 0.1, seized: 0.07, over: 0.02 },
  set: { slow: 0.34, seized: 0.26, over: 0.05 },
}

/**
 * Oil that has set as hard as glue, which leaves hardly a strip free: how many of the machines whose oil has set are so, and each
 * strip of such a machine. On the others each strip has such chances that on all of them together it has those of the table: what is
 * seen of one strip then says something of the next, as the same oil lies along all of them.
 */
export const hardSet = { share: 0.03, strips: { slow: 0.12, seized: 0.82, over: 0.05 } } as const

/** How slow a slow strip is: time constants of its return, in ms. */
export const slowChances: readonly { readonly ms: number; readonly chance: number }[] = [
  { ms: 120, chance: 0.1 },
  { ms: 150, chance: 0.15 },
  { ms: 200, chance: 0.2 },
  { ms: 300, chance: 0.2 },
  { ms: 400, chance: 0.15 },
  { ms: 600, chance: 0.12 },
  { ms: 1000, chance: 0.08 },
]

/** How clean the card reader is as a whole: faults of its columns come together. */
export const readers = ['clean', 'usual', 'gummed'] as const
export type Reader = (typeof readers)[number]
export const readerChances: Readonly<Record<Reader, number>> = { clean: 0.4, usual: 0.45, gummed: 0.15 }

/** Each column, by the reader: dead is a pin stuck low or a rocker that passes nothing on. */
export const columnChances: Readonly<
  Record<Reader, { dead: number; high: number; over: number; sticky: number; other: number }>
> = {
  clean: { dead: 0.004, high: 0.001, over: 0.001, sticky: 0.001, other: 0.0001 },
  usual: { dead: 0.03, high: 0.009, over: 0.009, sticky: 0.013, other: 0.0005 },
  gummed: { dead: 0.09, high: 0.009, over: 0.009, sticky: 0.16, other: 0.0005 },
}

/** How sticky a sticky pin is: the share of turns at which it does not rise. */
export const stickyChances: readonly { readonly share: number; readonly chance: number }[] = [
  { share: 0.25, chance: 0.25 },
  { share: 0.5, chance: 0.5 },
  { share: 0.75, chance: 0.25 },
]

/** Each needle. A stiff one has the time constant `stiffMs`; what is other is noted by these chances. */
export const needleChances = { noHold: 0.006, stiff: 0.0025, gone: 0.002, other: 0.0004 } as const
export const stiffMs = 50
export const otherNeedle = { selected: 0.45, plain: 0.45, unmoved: 0.1 } as const

/** Each hole of the card that a look was made with: wrong, that is torn open or blocked. */
export const wrongHole = 0.00003

/** Wear, from 0 to 1. */
export const wearChances: readonly { readonly wear: number; readonly chance: number }[] = [
  { wear: 0, chance: 0.2 },
  { wear: 0.1, chance: 0.15 },
  { wear: 0.2, chance: 0.15 },
  { wear: 0.3, chance: 0.12 },
  { wear: 0.4, chance: 0.1 },
  { wear: 0.5, chance: 0.07 },
  { wear: 0.6, chance: 0.045 },
  { wear: 0.65, chance: 0.03 },
  { wear: 0.7, chance: 0.03 },
  { wear: 0.75, chance: 0.03 },
  { wear: 0.8, chance: 0.025 },
  { wear: 0.85, chance: 0.02 },
  { wear: 0.9, chance: 0.015 },
  { wear: 0.95, chance: 0.01 },
  { wear: 1, chance: 0.005 },
]

/** How loose the pivots are, in mm. */
export const pivotChances: readonly { readonly mm: number; readonly chance: number }[] = [
  { mm: 0, chance: 0.9 },
  { mm: 0.1, chance: 0.01 },
  { mm: 0.2, chance: 0.02 },
  { mm: 0.3, chance: 0.02 },
  { mm: 0.4, chance: 0.02 },
  { mm: 0.5, chance: 0.015 },
  { mm: 0.6, chance: 0.015 },
]

/** A worn retainer bar, by the oil; how worn, as the median time constant of a free butt in ms, each as likely. */
export const retainerChances: Readonly<Record<Oil, number>> = { fresh: 0.1, old: 0.18, set: 0.22 }
export const retainerMs = [3, 4.5, 6, 7.5, 9, 10.5, 12, 15] as const

/**
 * What reaches the whole bed: nothing at all, or each of these by itself; two at once have the product of their chances.
 * A belt out by eights, one that fails one way, a presser, a pawl and a turn have the chance given for each of them. A belt that is out
 * otherwise has its chance in all, each of `beltOuts` as likely.
 */
export const wideChances = {
  nothing: 0.85,
  carriagePlain: 0.02,
  cardOut: 0.012,
  cardLocked: 0.012,
  cardReversed: 0.012,
  cardSide: 0.002,
  cardSkew: 0.0006,
  turnTwice: 0.015,
  pawl: 0.006,
  turn: 0.0012,
  nextTurn: 0.05,
  beltOff: 0.012,
  beltEights: 0.005,
  beltOneWay: 0.003,
  beltOut: 0.003,
  presser: 0.006,
  gateHigh: 0.004,
  gateLow: 0.002,
  sweep: 0.002,
} as const

/**
 * How a belt may be out so far that sound strips select nothing, or all of them late by eight: refitted by whole teeth, the
 * sweep too early one way and too late the other, or with so much play that it is late both ways. In needles.
 */
export const beltOuts = { teeth: [3, -3], play: [2, 4, 16] } as const

/** By how much a card lies askew, as the number of columns at each end whose pins find no hole. */
export const blindColumns = [1, 2, 3, 4, 6, 8, 10] as const
/**
 * By how much what reaches the whole bed is out where it fails, on the training machine: a card to one side, a first gate high and
 * low, and a worn sweep, in mm; how far a worn presser still dips a butt, in mm; a belt that fails one way, in needles.
 */
export const wideAmounts = {
  side: 1.2,
  gateHigh: 0.5,
  gateLow: 1.2,
  sweep: 0.8,
  wornDip: 0.6,
  beltOneWay: 0.9,
} as const

/** Chance that a check by hand says the wrong thing, and that one by touch does. */
export const checkErrors = { seen: 0.05, touched: 0.15 } as const
