import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { project } from '@/drawings/scene/engine/camera.ts'
import { inLayout } from '@/drawings/scene/draw-labels.ts'
import { placeMeasures } from '@/drawings/scene/draw-measures.ts'
import { heightTimes } from '@/drawings/scene/machine/places.ts'
import { type Measure, measuresOf } from '@/drawings/scene/measures.ts'
import { stepLayouts } from '@/drawings/scene/step-layout.ts'
import { pictureOf } from '@/drawings/scene/step-picture.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { readSceneStep, type SceneAttributes } from '@/words/figures/scene-step.ts'
import { millimetres } from '@/words/lists.ts'

const library = cardLibrary(cardsFolder)

const shown = (attributes: SceneAttributes, text: string) => {
  const { state } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  return { run, frame: frameAt(run, state.pass, state.at), step: readSceneStep(attributes) }
}

const lengthOf = ({ from, to }: Measure): number =>
  Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])

const cases: readonly [SceneAttributes, string, number, number][] = [
  [{ view: 'front', layers: 'pins sweep', subject: 'pin.23' }, 'at=R23', 2, 1],
  [{ view: 'bed', layers: 'bed strips', subject: 'strip.7' }, 'at=R23', 1.8, 1],
  [{ view: 'across', layers: 'needles carriage', subject: 'needle.R8' }, 'at=R9', 0.9, heightTimes.bed],
  [{ view: 'carriage', layers: 'needles gates', subject: 'needle.R8' }, 'at=R20', 6.5, 1],
]

describe('the dimensions of a step', () => {
  test.each(cases)('%j at %s: %d mm', (attributes, text, value, times) => {
    const { frame, step } = shown(attributes, text)
    const [measure] = measuresOf(step, frame)
    expect(measure!.words).toBe(millimetres(value))
    expect(lengthOf(measure!)).toBeCloseTo(value * times)
  })

  test.each(cases)('%j: at rest there is none', (attributes) => {
    const { frame, step } = shown(attributes, 'card=blank&at=L112')
    expect(measuresOf(step, frame)).toEqual([])
  })

  test('where the gates are, the first one’s edge has its own, as low as it is', () => {
    const { frame, step } = shown(
      { view: 'across', layers: 'needles carriage gates', subject: 'needle.R11' },
      'at=R13&break=gate.1.low=0.3',
    )
    expect(measuresOf(step, frame).map(({ words }) => words)).toContain(millimetres(frame.condition.gate1))
  })

  test('a dimension that is seen end on is not drawn, and a phone has room for one', () => {
    const { run, frame, step } = shown(
      { view: 'across', layers: 'needles carriage gates', subject: 'needle.R11' },
      'at=R13',
    )
    const { camera, measures } = pictureOf(run, frame, step)
    expect(measures).toHaveLength(2)
    expect(placeMeasures(stepLayouts.wide, camera, measures)).toHaveLength(2)
    const [narrow, ...others] = placeMeasures(stepLayouts.narrow, camera, measures)
    expect(others).toEqual([])
    expect(narrow!.ends[0]).toEqual(inLayout(stepLayouts.narrow, project(camera, measures[0]!.from)))
    const above = pictureOf(run, frame, step, { turned: 90, raised: 90, zoom: 100 })
    expect(placeMeasures(stepLayouts.wide, above.camera, measures)).toEqual([])
  })
})
