import { dimensions } from '@/mechanism/dimensions.ts'
import type { Fault } from '@/mechanism/fault.ts'
import type { Outcome } from '@/mechanism/gate.ts'
import type { Scenario } from '@/mechanism/scenario.ts'
import { holeIn, stripAt } from './trade.ts'

/**
 * The same machine a second time, by stepping the carriage through a pass. It shares no stage with the model. It is
 * for unworn machines without scatter, and knows the faults that drive strips, presser and gates.
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

const d = dimensions

/** Steps of the carriage in a needle of travel: a power of 2, so that whole needles are met exactly. */
const stepsANeedle = 256
const samplesANeedle = 4

const find = (s: Scenario, kind: Fault['kind'], place?: number): Fault | undefined =>
  s.faults.find((fault) => fault.kind === kind && (place === undefined || fault.at[0] === place))
const amount = (s: Scenario, kind: Fault['kind'], place?: number): number => find(s, kind, place)?.amount ?? 0
const columns = Array.from({ length: d.columns }, (_, n) => n + 1)
const strips = columns.slice(0, d.strips)

/** The card row under the pins, found by taking every turn in its order; from 0. */
const rowAt = (s: Scenario, pass: number): number => {
  let row = 0
  for (let turn = 2; turn <= pass; turn++) {
    const pawl = turn % 2 === 0 ? 'pawl.right' : 'pawl.left'
    if (find(s, 'turn.short', turn) ?? find(s, 'card.locked') ?? find(s, pawl)) continue
    row += find(s, 'pawl.double') ? 2 : 1
  }
  return row
}

/** Push of a full turn of the sweep on each pin, in mm. */
const throws = (s: Scenario, pass: number): number[] =>
  columns.map((column) => {
    const hole = !s.card || holeIn(s.card[rowAt(s, pass) % s.card.length]!, column)
    const high = find(s, 'pin.high', column) ? true : find(s, 'pin.low', column) ? false : hole
    const overlap = (high ? d.pinHigh : d.pinLow) - (d.sweepEdge + amount(s, 'sweep.worn'))
    return d.sweepThrow * Math.min(1, Math.max(0, overlap / d.fullBite))
  })

/** Runs the carriage through a pass; `kept` is what the pins still hold from before, `each` hears of every step. */
const sweepThrough = (
  s: Scenario,
  pass: number,
  kept: number[],
  each: (x: number, pushes: Float64Array, n: number) => void,
): void => {
  const way = pass % 2 === 1 ? 1 : -1
  const start = way === 1 ? s.bed.first - d.turnMark : s.bed.last + d.turnMark
  const steps = (s.bed.last - s.bed.first + 2 * d.turnMark) * stepsANeedle
  const off = amount(s, 'belt.timing') + (way * amount(s, 'belt.slack')) / 2
  const most = throws(s, pass)
  const over = columns.map((column) => find(s, 'pin.over', column) !== undefined)
  const pushes = new Float64Array(d.columns)
  for (let n = 0; n <= steps; n++) {
    const x = start + (way * n) / stepsANeedle
    for (let c = 0; c < d.columns; c++) {
      const past = x + off - (99 + c + 1)
      const u = past - d.columns * Math.floor(past / d.columns + 0.5)
      const near = u < d.sweepHalf && u > -d.sweepHalf
      let push = near ? (most[c]! * (1 + Math.cos((Math.PI * u) / d.sweepHalf))) / 2 : 0
      if (over[c]) push = kept[c] = Math.max(kept[c]!, push)
      pushes[c] = push
    }
    each(x, pushes, n)
  }
}

/** What the pins hold when a pass begins: nothing after a turn beyond the mark, else what they held before it. */
const keptFromBefore = (s: Scenario, pass: number): number[] => {
  const kept = columns.map(() => 0)
  if (find(s, 'turn.short', pass)) sweepThrough(s, pass - 1, kept, () => undefined)
  return kept
}

/** One midpoint step of a returning strip, d shift/dt = -(shift + preload)/tau, with h = dt/tau. */
const relax = (shift: number, h: number): number => {
  const half = shift - (h / 2) * (shift + d.preload)
  return Math.max(0, shift - h * (half + d.preload))
}

/** Height of a free butt at the first gate, by midpoint steps of d height/dt = -height/tau. */
const springUp = (dip: number, time: number, tau: number): number => {
  const steps = 500
  const h = time / tau / steps
  let height = -dip
  for (let n = 0; n < steps; n++) height -= h * (height - (h / 2) * height)
  return height
}

const sorted = (height: number, gate1: number): Outcome =>
  height > -gate1 ? 'plain' : height > -d.gate2 ? 'selected' : 'unmoved'

export const simulate = (s: Scenario, pass: number): Simulated => {
  const dt = (1000 * d.pitch) / (stepsANeedle * s.speed)
  const tau = strips.map((strip) => find(s, 'strip.slow', strip)?.amount ?? d.stripReturn)
  const lost = columns.map((column) => d.lost + amount(s, 'rocker.worn', column))
  const dead = columns.map((column) => find(s, 'rocker.dead', column) !== undefined)
  const seized = strips.filter((strip) => find(s, 'strip.seized', strip)).map((strip) => strip - 1)
  const held = new Map<number, number>()
  const shifts: Simulated['shifts'] = []
  const now = new Float64Array(d.strips)
  sweepThrough(s, pass, keptFromBefore(s, pass), (x, pushes, n) => {
    for (let j = 0; j < d.strips; j++) if (now[j]! > 0) now[j] = relax(now[j]!, dt / tau[j]!)
    for (let c = 0; c < d.columns; c++) {
      if (pushes[c] === 0) continue
      const out = dead[c] ? 0 : d.ratio * pushes[c]! - lost[c]!
      if (out > now[c % d.strips]!) now[c % d.strips] = out
    }
    for (const j of seized) now[j] = 0
    if (n % (stepsANeedle / samplesANeedle) === 0) shifts.push({ x, strips: [...now] })
    if (n % stepsANeedle === 0 && x >= s.bed.first && x <= s.bed.last) held.set(x, now[stripAt(x) - 1]!)
  })

  // Between two steps a push changes by at most the steepest slope of the raised cosine; a midpoint step of h is out
  // by at most h²/6e of the way still to go once all steps are added up, of which 2.6 mm is the longest: below 0.2 h².
  const steepest = (Math.PI * d.ratio * d.sweepThrow) / (2 * d.sweepHalf)
  const tolerance = steepest / stepsANeedle + 0.2 * (dt / Math.min(...tau)) ** 2
  const dip = d.presser - amount(s, pass % 2 === 1 ? 'presser.right.worn' : 'presser.left.worn')
  const gate1 = d.gate1 + amount(s, 'gate.1.low') - amount(s, 'gate.1.high')
  const time = (1000 * d.gateLag * d.pitch) / s.speed
  const came = new Map<number, Outcome>()
  const unsure = new Set<number>()
  for (const [needle, shift] of held) {
    const isHeld = dip >= d.catchDepth && shift >= d.reach
    const free = springUp(dip, time, find(s, 'needle.stiff', needle)?.amount ?? d.buttReturn)
    came.set(needle, sorted(isHeld ? -d.catchDepth : free, gate1))
    if (dip >= d.catchDepth && Math.abs(shift - d.reach) <= tolerance) unsure.add(needle)
    if (!isHeld && Math.abs(free + gate1) < 1e-5) unsure.add(needle)
  }
  return { shifts, came, unsure, tolerance }
}
