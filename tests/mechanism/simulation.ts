import { type Dimensions, dimensions } from '@/mechanism/dimensions.ts'
import type { Fault } from '@/mechanism/fault.ts'
import type { Outcome } from '@/mechanism/gate.ts'
import type { Scenario } from '@/mechanism/scenario.ts'
import { normalDraw, uniformDraw } from '@/mechanism/random.ts'
import { holeIn, stripAt } from './trade.ts'

/**
 * The same machine a second time, by stepping the carriage through a pass. It shares no stage with the model, only the
 * draws of chance. It is for unworn machines, and knows the faults that drive strips, presser and gates.
 */
export interface Simulated {
  /** Shift of each strip at each whole needle and quarter of one, in the order of travel. */
  readonly shifts: { readonly x: number; readonly strips: readonly number[] }[]
  readonly came: ReadonlyMap<number, Outcome>
  /** Needles of which a shift or a height is nearer to its threshold than the steps allow to tell. */
  readonly unsure: ReadonlySet<number>
  /** What the steps may be out by in a strip's shift, in mm. */
  readonly tolerance: number
}

/** The dimensions of this machine. */
const builtAs = (s: Scenario): Dimensions => ({ ...dimensions, ...s.own })

const { columns: allColumns, strips: allStrips, turnMark } = dimensions

/** Steps of the carriage in a needle of travel: a power of 2, so that whole needles are met exactly. */
const stepsANeedle = 256
const samplesANeedle = 4

const find = (s: Scenario, kind: Fault['kind'], place?: number): Fault | undefined =>
  s.faults.find((fault) => fault.kind === kind && (place === undefined || fault.at[0] === place))
const amount = (s: Scenario, kind: Fault['kind'], place?: number): number => find(s, kind, place)?.amount ?? 0
const columns = Array.from({ length: allColumns }, (_, n) => n + 1)
const strips = columns.slice(0, allStrips)

/** The card row under the pins, found by taking every turn in its order; from 0. */
const rowAt = (s: Scenario, pass: number): number => {
  let row = 0
  for (let turn = 2; turn <= pass; turn++) {
    const atRight = turn % 2 === 0
    const pawl = atRight ? 'pawl.right' : 'pawl.left'
    if (find(s, 'belt.off') ?? find(s, 'card.locked') ?? find(s, 'turn.short', turn)) continue
    if (find(s, pawl) ?? find(s, 'pawl.skips', turn) ?? (atRight ? find(s, 'turn.twice') : undefined))
      continue
    row += (find(s, 'pawl.double') ?? find(s, 'pawl.jumps', turn)) ? 2 : 1
  }
  return row
}

/** The pass before which the pins dropped and rose last. */
const roseBefore = (s: Scenario, pass: number): number => {
  let rose = 1
  for (let turn = 2; turn <= pass; turn++)
    if (!find(s, 'belt.off') && !find(s, 'turn.short', turn)) rose = turn
  return rose
}

/** Whether old oil keeps a pin down after the turn before this pass. */
const sticks = (s: Scenario, column: number, rose: number): boolean => {
  const share = amount(s, 'pin.sticky', column)
  return share > 0 && uniformDraw(s.seed, 'sticky', column - 1, rose) < share
}

/** Push of the flat of the sweep on each pin, in mm. */
const throws = (s: Scenario, pass: number): number[] => {
  const d = builtAs(s)
  return columns.map((column) => {
    if (find(s, 'belt.off')) return 0
    const hole = !s.card || holeIn(s.card[rowAt(s, pass) % s.card.length]!, column)
    const rises = hole && !sticks(s, column, roseBefore(s, pass))
    const high = find(s, 'pin.high', column) ? true : find(s, 'pin.low', column) ? false : rises
    const overlap = (high ? d.pinHigh : d.pinLow) - (d.sweepEdge + amount(s, 'sweep.worn'))
    return d.sweepThrow * Math.min(1, Math.max(0, overlap / d.fullBite))
  })
}

/** The wedge from above, by its outline: 1 on the flat, half a cosine on its ramps. */
const wedge = (d: Dimensions, v: number): number => {
  const out = Math.abs(v)
  if (out <= d.sweepFlat) return 1
  const share = (out - d.sweepFlat) / d.sweepRamp
  return share < 1 ? 0.5 + 0.5 * Math.cos(Math.PI * share) : 0
}

/** Runs the carriage through a pass; `kept` is what the rockers still hold from before, `each` hears of every step. */
const sweepThrough = (
  s: Scenario,
  pass: number,
  kept: number[],
  each: (x: number, outs: Float64Array, n: number) => void,
): void => {
  const d = builtAs(s)
  const way = pass % 2 === 1 ? 1 : -1
  const start = way === 1 ? s.bed.first - turnMark : s.bed.last + turnMark
  const steps = (s.bed.last - s.bed.first + 2 * turnMark) * stepsANeedle
  // The middle of the sweep passes a pin when its needle is halfway between the presser and the first gate.
  const off = -way * (d.gateLag / 2) + amount(s, 'belt.timing') - (way * amount(s, 'belt.slack')) / 2
  const most = throws(s, pass)
  const over = columns.map((column) => find(s, 'pin.over', column) !== undefined)
  const dead = columns.map((column) => find(s, 'rocker.dead', column) !== undefined)
  const worn = columns.map((column) => d.lost + amount(s, 'rocker.worn', column))
  const loose = amount(s, 'pivots.loose')
  const rattle = (under: number): number =>
    loose * Math.max(0, normalDraw(s.seed, 'pivots', under - 100 + d.needles / 2 + allColumns, pass))
  const outs = new Float64Array(allColumns)
  for (let n = 0; n <= steps; n++) {
    const x = start + (way * n) / stepsANeedle
    for (let c = 0; c < allColumns; c++) {
      const past = x + off - (s.columnOne + c)
      const visit = Math.ceil(past / allColumns - 0.5)
      const push = most[c]! * wedge(d, past - allColumns * visit)
      const lost = worn[c]! + (loose > 0 && push > 0 ? rattle(s.columnOne + c + allColumns * visit) : 0)
      let out = dead[c] || push === 0 ? 0 : Math.max(0, d.ratio * push - lost)
      if (over[c]) out = kept[c] = Math.max(kept[c]!, out)
      outs[c] = out
    }
    each(x, outs, n)
  }
}

/** What the rockers hold when a pass begins: nothing after a turn beyond the mark, else what they held before it. */
const keptFromBefore = (s: Scenario, pass: number): number[] => {
  const kept = columns.map(() => 0)
  for (let before = roseBefore(s, pass); before < pass; before++)
    sweepThrough(s, before, kept, () => undefined)
  return kept
}

/** One midpoint step of a returning strip, d shift/dt = -(shift + preload)/tau, with h = dt/tau. */
const relax = (preload: number, shift: number, h: number): number => {
  const half = shift - (h / 2) * (shift + preload)
  return Math.max(0, shift - h * (half + preload))
}

/** Height of a butt at the first gate, by midpoint steps of d height/dt = -height/tau, let go so far down. */
const springUp = (down: number, time: number, tau: number): number => {
  const steps = 500
  const h = time / tau / steps
  let height = -down
  for (let n = 0; n < steps; n++) height -= h * (height - (h / 2) * height)
  return height
}

const sorted = (height: number, gate1: number, gate2: number): Outcome =>
  height > -gate1 ? 'plain' : height > -gate2 ? 'selected' : 'unmoved'

/** A needle between the presser and the first gate: its strip's shift at the presser, and where it was let go. */
interface Passing {
  readonly shift: number
  letGoAt: number | null
  /** Whether the strip came nearer to the shift of letting go than the steps can tell. */
  isNear: boolean
}

export const simulate = (s: Scenario, pass: number): Simulated => {
  const d = builtAs(s)
  const dt = (1000 * d.pitch) / (stepsANeedle * s.speed)
  const tau = strips.map((strip) => find(s, 'strip.slow', strip)?.amount ?? d.stripReturn)
  // Between two steps a push changes by at most the steepest slope of a ramp; a midpoint step of h is out by at most
  // h²/6e of the way still to go once all steps are added up, of which 2.6 mm is the longest: below 0.2 h².
  const steepest = (Math.PI * d.ratio * d.sweepThrow) / (2 * d.sweepRamp)
  const tolerance = steepest / stepsANeedle + 0.2 * (dt / Math.min(...tau)) ** 2
  const way = pass % 2 === 1 ? 1 : -1
  const seized = strips.filter((strip) => find(s, 'strip.seized', strip))
  const over = strips.filter((strip) => find(s, 'strip.over', strip) && !seized.includes(strip))
  const passing = new Map<number, Passing>()
  const shifts: Simulated['shifts'] = []
  const now = new Float64Array(allStrips)
  sweepThrough(s, pass, keptFromBefore(s, pass), (x, outs, n) => {
    for (let j = 0; j < allStrips; j++) if (now[j]! > 0) now[j] = relax(d.preload, now[j]!, dt / tau[j]!)
    for (let c = 0; c < allColumns; c++) if (outs[c]! > now[c % allStrips]!) now[c % allStrips] = outs[c]!
    for (const strip of seized) now[strip - 1] = 0
    for (const strip of over) now[strip - 1] = d.ratio * d.sweepThrow - d.lost
    if (n % (stepsANeedle / samplesANeedle) === 0) shifts.push({ x, strips: [...now] })
    if (n % stepsANeedle === 0 && x >= s.bed.first && x <= s.bed.last)
      passing.set(x, { shift: now[stripAt(x, s.columnOne) - 1]!, letGoAt: null, isNear: false })
    for (let back = 0; back <= Math.ceil(d.gateLag); back++) {
      const needle = way === 1 ? Math.floor(x) - back : Math.ceil(x) + back
      const since = way * (x - needle)
      const one = passing.get(needle)
      if (!one || since > d.gateLag) continue
      const shift = now[stripAt(needle, s.columnOne) - 1]!
      if (one.letGoAt === null && shift < d.letGo) one.letGoAt = since
      if (one.letGoAt === null && shift < d.letGo + tolerance) one.isNear = true
    }
  })

  const dip =
    pass % 2 === 1
      ? d.presserRight - amount(s, 'presser.right.worn')
      : d.presserLeft - amount(s, 'presser.left.worn')
  const gate1 = d.gate1 + amount(s, 'gate.1.low') - amount(s, 'gate.1.high')
  const timeFor = (needles: number): number => (1000 * needles * d.pitch) / s.speed
  const came = new Map<number, Outcome>()
  const unsure = new Set<number>()
  for (const [needle, { shift, letGoAt, isNear }] of passing) {
    const isTaken = dip >= d.catchDepth && shift >= d.reach && !find(s, 'carriage.plain')
    const butt = find(s, 'needle.stiff', needle)?.amount ?? d.buttReturn
    const height = !isTaken
      ? springUp(dip, timeFor(d.gateLag), butt)
      : letGoAt === null
        ? -d.catchDepth
        : springUp(d.catchDepth, timeFor(d.gateLag - letGoAt), butt)
    came.set(needle, find(s, 'carriage.plain') ? 'plain' : sorted(height, gate1, d.gate2))
    if (dip >= d.catchDepth && Math.abs(shift - d.reach) <= tolerance) unsure.add(needle)
    // What the moment of letting go may be out by: a step, and as long as a strip takes for what its shift is out by.
    const late = 2 * dt + (tolerance * tau[stripAt(needle, s.columnOne) - 1]!) / (d.letGo + d.preload)
    const slack = letGoAt !== null && isTaken ? (d.catchDepth * late) / butt + 1e-5 : 1e-5
    if (!(isTaken && letGoAt === null) && Math.abs(height + gate1) < slack) unsure.add(needle)
    if (isTaken && letGoAt === null && isNear) unsure.add(needle)
  }
  return { shifts, came, unsure, tolerance }
}
