/**
 * The training machine's dimensions. Nobody's product: the proportions are the trade's (24 columns, 8 strips, a
 * catch at every eighth needle), the millimetres are illustrative, chosen so that everything works with a visible
 * margin. Lengths in mm, times in ms, speeds in mm/s, distances along the bed in needles, unless a name says else.
 */
export const dimensions = {
  needles: 200,
  columns: 24,
  strips: 8,
  /** Needle spacing of a standard-gauge domestic bed (common practice). */
  pitch: 4.5,
  hole: 3.5,
  pin: 1.5,
  /** Tip height of a pin through a hole. */
  pinHigh: 3.0,
  /** Tip height of a pin stopped by card. */
  pinLow: 1.2,
  /** Lower edge of the sweep, above the same datum as the pins' tips. */
  sweepEdge: 2.0,
  /** Overlap of pin and sweep that gives the full throw; below it, in proportion. */
  fullBite: 0.4,
  /** How far to the left the sweep pushes the front leg of a pin, whichever way it comes. */
  sweepThrow: 2.0,
  /** The wedge seen from above: half of its flat, and each of its two ramps, in needles of travel. */
  sweepFlat: 1.2,
  sweepRamp: 0.9,
  /** Rocker output over pin push, without unit. */
  ratio: 1.0,
  /** Lost motion of a rocker. */
  lost: 0.2,
  /** Strip shift at which a catch takes a butt that comes up under it. */
  reach: 1.2,
  /** Strip shift below which a catch lets go of a butt that it holds. */
  letGo: 0.6,
  /** Preload of a strip's return spring, as a distance. */
  preload: 0.6,
  /** Time constant of a strip's return with fresh oil. */
  stripReturn: 4,
  /** The same with thickened oil. */
  stripReturnThick: 300,
  /** How far the presser dips a butt, moving right and moving left. */
  presserRight: 1.5,
  presserLeft: 1.5,
  /** Where a held butt stays, below the rest level. */
  catchDepth: 0.9,
  /** Lower edges of the two gates, below the rest level. */
  gate1: 0.45,
  gate2: 1.6,
  /** Time constant of a free butt springing up. */
  buttReturn: 2,
  /** The same for a stiff needle. */
  buttReturnStiff: 50,
  /** Travel from the presser's release to the first gate, in needles. */
  gateLag: 1.6,
  speed: 500,
  /** How far past the last needle the carriage must go before it turns, in needles. */
  turnMark: 12,
} as const

/** The dimensions of a machine, in the units of the training machine's. */
export type Dimensions = { readonly [Name in keyof typeof dimensions]: number }

/**
 * The cams' lengths and lifts, which decide nothing and are only drawn: lengths in needles of travel, lifts in mm.
 * Each ramp keeps a pressure angle under 30 degrees (R. L. Norton, Cam Design and Manufacturing Handbook).
 */
export const cams = {
  presserRamp: 1.5,
  presserFlat: 1,
  gate1Length: 2,
  /** Where the second gate begins at the soonest, behind the presser's trailing edge. */
  gate2Start: 4.5,
  gate2Length: 4,
  /** How far the first gate moves a needle back, and the second gate forward. */
  plainTravel: 3,
  selectedTravel: 6.5,
  /** Length of the leading cams that bring needles back to the line before the presser. */
  gather: 4,
} as const

/** Where the second gate begins, in needles behind the presser's trailing edge: behind the first gate's end. */
export const gate2Start = ({ gateLag }: Dimensions): number =>
  Math.max(cams.gate2Start, gateLag + cams.gate1Length)

/** Distance in needles behind the presser's trailing edge by which a needle has been sorted. */
export const sortedAfter = (dimensions: Dimensions): number => gate2Start(dimensions) + cams.gate2Length
