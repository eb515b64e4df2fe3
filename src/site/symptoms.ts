import { exampleOf, speeds } from '../find/battery.ts'
import type { Symptom } from '../find/likeness.ts'
import { firstPass, type SeenPass } from '../link/session.ts'
import { writeSession } from '../link/session-link.ts'
import { usualPlace, wayOfPass } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Stitch } from '../mechanism/fabric.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import type { Outcome } from '../mechanism/gate.ts'
import { allNeedles, ofNeedle } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { startRun } from '../mechanism/pass.ts'
import { sampleOf, windowOf } from '../mechanism/sample.ts'
import { soundScenario } from '../mechanism/scenario.ts'
import { sampleWords } from '../words/case-fabric.ts'
import { patternCard, siteLibrary } from './cards.ts'

import { markAs } from '../link/bed-marks.ts'
import { nothingOwn } from '../mechanism/own.ts'

/** A sight's example: a kind of fault that is seen so, and the passes, each with its speed in mm/s, that show it. */
const examples: Readonly<
  Record<Symptom, { kind: FaultKindName; passes: readonly (readonly [number, number])[]; shown: number }>
> = {
  nothing: { kind: 'card.side', passes: [[1, speeds.ordinary]], shown: 0 },
  everything: { kind: 'gate.1.high', passes: [[1, speeds.ordinary]], shown: 0 },
  eighth: { kind: 'strip.seized', passes: [[1, speeds.ordinary]], shown: 0 },
  twentyFourth: { kind: 'pin.low', passes: [[1, speeds.ordinary]], shown: 0 },
  one: { kind: 'needle.bent', passes: [[1, speeds.ordinary]], shown: 0 },
  oneWay: {
    kind: 'presser.right.worn',
    passes: [
      [1, speeds.ordinary],
      [2, speeds.ordinary],
    ],
    shown: 0,
  },
  fast: {
    kind: 'strip.slow',
    passes: [
      [1, speeds.slow],
      [1, speeds.fast],
    ],
    shown: 1,
  },
  oneRow: {
    kind: 'card.blocked',
    passes: [
      [1, speeds.ordinary],
      [2, speeds.ordinary],
    ],
    shown: 0,
  },
  rows: { kind: 'card.reversed', passes: [[1, speeds.ordinary]], shown: 0 },
}

/** A bed that a sight's picture shows, and the session that it fills in, as a link's text. */
export interface SymptomExample {
  readonly session: string
  readonly came: readonly Outcome[]
  readonly asked: readonly Outcome[]
}

/** A sight's example, computed with the model. */
export const symptomExample = (sight: Symptom): SymptomExample => {
  const { kind, passes, shown } = examples[sight]
  const runs = passes.map(([pass, speed]) => {
    const scenario = { ...soundScenario(patternCard), faults: [exampleOf(kind)], speed }
    return { ...startRun(scenario).passOf(pass), speed }
  })
  const seen = runs.map(({ pass, speed, came, asked }): SeenPass => ({
    ...firstPass(siteLibrary),
    row: pass,
    way: wayOfPass(pass),
    speed,
    marks: came.map((outcome, index) => markAs(outcome, at(asked, index))),
  }))
  const run = at(runs, shown)
  return {
    session: writeSession(
      {
        practice: null,
        deal: null,
        level: 1,
        isRough: false,
        ...usualPlace,
        own: nothingOwn,
        passes: seen,
        checked: [],
        intake: [],
        finding: null,
      },
      siteLibrary,
    ),
    came: run.came,
    asked: run.asked,
  }
}

/** A piece of fabric in which a sight shows: its stitches from the left, the row knitted first at the bottom and last in the list. */
export interface SymptomCloth {
  readonly rows: readonly (readonly { readonly stitch: Stitch; readonly isWrong: boolean }[])[]
  /** What is wrong with it, in a customer's words. */
  readonly words: string
}

/** How many needles wide a piece is: two repeats of the card. */
const pieceWidth = 2 * dimensions.columns

/** The fabric that a sight's example knits, on the needles on which it shows best. */
export const symptomCloth = (sight: Symptom): SymptomCloth => {
  const { kind, passes, shown } = examples[sight]
  const [pass, speed] = at(passes, shown)
  const run = startRun({ ...soundScenario(patternCard), faults: [exampleOf(kind)], speed })
  const sample = sampleOf(run, pass)
  const needles = allNeedles.slice(windowOf(sample, pieceWidth)).slice(0, pieceWidth)
  const rows = sample.rows.toReversed().map(({ knitted, asked }) =>
    needles.map((needle) => {
      const stitch = ofNeedle(knitted, needle)
      return { stitch, isWrong: stitch !== ofNeedle(asked, needle) }
    }),
  )
  return { rows, words: sampleWords(run, sample) }
}
