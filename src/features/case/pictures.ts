import type { Case } from '../../link/case.ts'
import { speeds } from '../../find/battery.ts'
import { type CardLibrary, scenarioOf, type State } from '../../link/state.ts'
import { knittedRow } from '../../mechanism/fabric.ts'
import { type Frame, frameAt } from '../../mechanism/frame.ts'
import { type Run, startRun } from '../../mechanism/pass.ts'
import { makeSample, type Sample, wrongNeedles } from '../../mechanism/sample.ts'
import type { Pace } from '../../words/case-fabric.ts'
import { inPieces, yieldToBrowser } from '../../browser/yield-to-browser.ts'

/** What a case shows of its machine: the machine as it is, and a fabric in which what is wrong is seen. */
export interface CasePictures {
  readonly run: Run
  readonly frame: Frame
  /** The machine that knits the fabric: the same, but fast where the fault shows only then. */
  readonly knitting: Run
  readonly sample: Sample
  readonly pace: Pace
  /** The same fabric by the machine after the work; null before it. */
  readonly after: { readonly knitting: Run; readonly sample: Sample } | null
}

/** What is seen of a machine as it is. */
type PicturesBefore = Omit<CasePictures, 'after'>

/** Computes what to show of a state, piece by piece. */
const picturesBefore = async (state: State, library: CardLibrary): Promise<PicturesBefore> => {
  const scenario = scenarioOf(state, library)
  const run = startRun(scenario)
  const frame = frameAt(run, state.pass, state.at)
  const at = async (speed: number): Promise<{ knitting: Run; sample: Sample; isWrong: boolean }> => {
    await yieldToBrowser()
    const knitting = speed === scenario.speed ? run : startRun({ ...scenario, speed })
    const sample = await inPieces(makeSample(knitting, state.pass))
    return { knitting, sample, isWrong: wrongNeedles(sample).length > 0 }
  }
  const here = await at(scenario.speed)
  if (here.isWrong) return { run, frame, ...here, pace: (await at(speeds.slow)).isWrong ? 'any' : 'fast' }
  if (scenario.faults.length === 0 && scenario.wear === 0) return { run, frame, ...here, pace: 'sound' }
  const fast = await at(Math.max(speeds.fast, scenario.speed))
  return fast.isWrong ? { run, frame, ...fast, pace: 'faster' } : { run, frame, ...here, pace: 'never' }
}

/** Computes what to show of a case, piece by piece. */
export const casePicturesOf = async (
  { state, after, left }: Pick<Case, 'state' | 'after' | 'left'>,
  library: CardLibrary,
): Promise<CasePictures> => {
  const before = await picturesBefore(state, library)
  if (after === null) return { ...before, after }
  await yieldToBrowser()
  const knitting = startRun({ ...before.knitting.scenario, faults: left })
  // The same needles and rows as before, so that both are beside each other.
  const rows = before.sample.rows.map((row) => ({ ...row, knitted: knittedRow(knitting, row.pass) }))
  return { ...before, after: { knitting, sample: { ...before.sample, rows } } }
}
