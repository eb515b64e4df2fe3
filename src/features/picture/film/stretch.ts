import { leadingSpan } from '../../../drawings/shared/cams.ts'
import { needleName, needlesIn, wayOfPass } from '../../../mechanism/bed.ts'
import { sortedAfter } from '../../../mechanism/dimensions.ts'
import { type Frame, frameAt } from '../../../mechanism/frame.ts'
import type { Needle } from '../../../mechanism/indices.ts'
import { type Run, startRun } from '../../../mechanism/pass.ts'
import { faultPhrase } from '../../../words/faults.ts'
import { counted } from '../../../words/lists.ts'

/** What a film may show of a machine in a pass: one needle's way, the whole pass, or the sound machine and then this one. */
export type StretchKind = 'needle' | 'pass' | 'compare'

/** One run of the carriage in a film, from one place to another at one pace. */
interface Part {
  readonly run: Run
  /** Written over the drawing while it runs. */
  readonly over: string
  /** Carriage places in needles. */
  readonly from: number
  readonly to: number
}

/** A film before it is drawn: its parts, each as long as the others, and what it is called. */
export interface Stretch {
  readonly title: string
  readonly parts: readonly Part[]
  readonly pass: number
  /** The needle that it is of; null where it is of all. */
  readonly needle: Needle | null
  /** How long the carriage runs in each part, and rests after it, in s. */
  readonly runs: number
  readonly rests: number
}

/** A picture of a film: the machine, and what is written over it. */
export interface FilmFrame {
  readonly run: Run
  readonly frame: Frame
  readonly over: string
}

/** Seconds for which the carriage runs in each part, and rests after it: 15 at most in all. */
const seconds: Readonly<Record<StretchKind, { readonly runs: number; readonly rests: number }>> = {
  needle: { runs: 9, rests: 1.5 },
  pass: { runs: 13, rests: 1.5 },
  compare: { runs: 5.5, rests: 1.5 },
}

/** The machine's faults in a few words. */
const brokenWords = ({ scenario: { faults } }: Run): string => {
  const [only, ...more] = faults.map(faultPhrase)
  if (only === undefined) return 'The sound machine'
  return more.length === 0 ? only : counted(faults.length, 'fault')
}

/** The needle of which a film is, unless somebody names one: the wrong one nearest to the carriage, else the nearest. */
export const usualNeedle = (run: Run, frame: Frame): Needle => {
  const wrong = frame.pass.departures.map(({ needle }) => needle)
  const from = wrong.length > 0 ? wrong : needlesIn(run.scenario.bed)
  const off = (needle: Needle): number => Math.abs(needle - frame.x)
  return from.reduce((best, needle) => (off(needle) < off(best) ? needle : best))
}

/** The stretch of a machine's pass that a film shows. */
export const stretchOf = (kind: StretchKind, run: Run, pass: number, needle: Needle): Stretch => {
  const way = wayOfPass(pass)
  const { first, last } = run.scenario.bed
  const [start, end] = way === 1 ? [first, last] : [last, first]
  const [comes, leaves] = kind === 'pass' ? [start, end] : [needle, needle]
  // From the carriage's first cam to its last.
  const ahead = -leadingSpan[0] + 0.5
  const { dimensions } = run.condition
  const behind = Math.min(dimensions.turnMark, sortedAfter(dimensions) + 0.5)
  const ends = { from: comes - way * ahead, to: leaves + way * behind }
  const sound = startRun({ ...run.scenario, faults: [] })
  const runs = kind === 'compare' ? [sound, run] : [run]
  return {
    title: kind === 'pass' ? `Pass ${pass}` : `Needle ${needleName(needle)} in pass ${pass}`,
    parts: runs.map((each) => ({ run: each, over: brokenWords(each), ...ends })),
    pass,
    needle: kind === 'pass' ? null : needle,
    ...seconds[kind],
  }
}

/** How many pictures a stretch has at so many a second. */
export const frameCount = ({ parts, runs, rests }: Stretch, rate: number): number =>
  parts.length * Math.round((runs + rests) * rate)

/** The pictures of a stretch in their order, at so many a second: the same each time, however fast they are drawn. */
export function* framesOf({ parts, pass, runs, rests }: Stretch, rate: number): Generator<FilmFrame> {
  const all = Math.round((runs + rests) * rate)
  const moving = Math.round(runs * rate)
  for (const { run, over, from, to } of parts)
    for (let n = 0; n < all; n++) {
      const share = Math.min(1, n / (moving - 1))
      yield { run, over, frame: frameAt(run, pass, from + (to - from) * share) }
    }
}
