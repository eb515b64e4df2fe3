import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { project } from '@/drawings/scene/engine/camera.ts'
import { inLayout } from '@/drawings/scene/draw-labels.ts'
import { placeDatums } from '@/drawings/scene/draw-datums.ts'
import { placeMeasures, roomOfMeasures } from '@/drawings/scene/place-measures.ts'
import { isOver } from '@/drawings/scene/draw-step.ts'
import { extentOf } from '@/drawings/scene/engine/extent.ts'
import { buttLevel, heightTimes } from '@/drawings/scene/machine/places.ts'
import type { Measure } from '@/drawings/scene/measure.ts'
import { measuresOf } from '@/drawings/scene/measures.ts'
import { stepLayouts } from '@/drawings/scene/step-layout.ts'
import { pictureOf } from '@/drawings/scene/step-picture.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { outlineOf } from '@/site/chapter-outline.ts'
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
  [{ view: 'along', layers: 'needles carriage', subject: 'needle.R8' }, 'at=R8.4', 0.9, heightTimes.bed],
]

/** Measures of steps that are seen squarely: what one expects to be measured, in its order. */
const square: readonly [SceneAttributes, string, readonly string[]][] = [
  [
    { view: 'tips', layers: 'pins sweep', subject: 'pin.21', also: 'pin.18' },
    'at=R21',
    [millimetres(1.2), millimetres(3), millimetres(2)],
  ],
  [
    { view: 'tips', layers: 'pins sweep', subject: 'sweep', also: 'pin.21 pin.23' },
    'at=R23',
    [`clears ${millimetres(0.8)}`, `overlaps ${millimetres(1)}`],
  ],
  [
    { view: 'tips', layers: 'pins sweep', subject: 'sweep', also: 'pin.23' },
    'at=R23&break=sweep.worn=0.7',
    [`overlaps ${millimetres(0.3)}`],
  ],
  [{ view: 'along', layers: 'needles presser', subject: 'presser' }, 'at=R4', [millimetres(1.5)]],
  [
    { view: 'along', layers: 'needles presser', subject: 'catch.R8' },
    'at=R8',
    [
      `shifted ${millimetres(1.8)}`,
      `reach ${millimetres(1.2)}`,
      millimetres(1.5),
      `${millimetres(0.6)} to spare`,
    ],
  ],
  [
    { view: 'along', layers: 'needles presser', subject: 'catch.R18' },
    'at=R18&break=presser.right.worn=0.65',
    [
      `shifted ${millimetres(1.2)}`,
      `reach ${millimetres(1.2)}`,
      millimetres(0.85),
      `${millimetres(0.05)} too high`,
    ],
  ],
  [
    { view: 'along', layers: 'needles gates', subject: 'gate.1', also: 'needle.R9 needle.R10' },
    'at=R12',
    [millimetres(0.45), `overlaps ${millimetres(0.45)}`, `clears ${millimetres(0.45)}`],
  ],
  [
    { view: 'along', layers: 'needles gates', subject: 'gate.1', also: 'needle.R9 needle.R10' },
    'card=blank&at=R12',
    [millimetres(0.45), `each overlaps ${millimetres(0.45)}`],
  ],
  [
    {
      view: 'along',
      layers: 'needles presser',
      subject: 'strip.7',
      also: 'needle.R23 needle.R15 needle.R22',
    },
    'at=R23',
    [`shifted ${millimetres(1.8)}`, millimetres(1.5), `shifted ${millimetres(1.8)}`],
  ],
  [
    { view: 'row', layers: 'card pins', subject: 'pin.23', also: 'pin.22' },
    'at=R23&break=card.side=0.9',
    [
      `pin ${millimetres(1.5)}`,
      `hole ${millimetres(3.5)}`,
      `${millimetres(0.1)} to spare`,
      `out by ${millimetres(0.9)}`,
    ],
  ],
  [
    { view: 'row', layers: 'card pins', subject: 'pin.23' },
    'at=R23&break=card.side=-1.2',
    [
      `pin ${millimetres(1.5)}`,
      `hole ${millimetres(3.5)}`,
      `${millimetres(0.2)} too far`,
      `out by ${millimetres(1.2)}`,
    ],
  ],
  [{ view: 'row', layers: 'card pins', subject: 'pin.23' }, 'card=none&at=R23', []],
  [{ view: 'along', layers: 'needles gates', subject: 'needle.R7' }, 'at=R6&break=carriage.plain', []],
]

describe('the dimensions of a step', () => {
  test.each(cases)('%j at %s: %d mm', (attributes, text, value, times) => {
    const { frame, step } = shown(attributes, text)
    const [measure] = measuresOf(step, frame)
    expect(measure!.words).toBe(millimetres(value))
    expect(lengthOf(measure!)).toBeCloseTo(value * times)
  })

  test.each(square)('seen squarely, %j at %s', (attributes, text, words) => {
    const { frame, step } = shown(attributes, text)
    expect(measuresOf(step, frame).map((measure) => measure.words)).toEqual(words)
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

  test('words are where no line to a label goes through them, as long as there is such a place', () => {
    const { run, frame, step } = shown({ view: 'along', layers: 'needles', subject: 'needle.R8' }, 'at=R8.4')
    const { camera, measures } = pictureOf(run, frame, step)
    const [free] = placeMeasures(stepLayouts.wide, camera, measures)
    const { left, top, width, height } = free!.box
    const middle = top + height / 2
    const leader = [
      [left - 50, middle],
      [left + width + 50, middle],
    ] as const
    const [moved] = placeMeasures(stepLayouts.wide, camera, measures, [leader])
    expect(moved!.box.top > middle || moved!.box.top + moved!.box.height < middle).toBe(true)
  })

  test.each(shapes)(
    'words that would hide the pin in its hole are beside it, in the picture: %s',
    (shape) => {
      const attributes = { view: 'row', layers: 'card pins', subject: 'pin.23' }
      const { run, frame, step } = shown(attributes, 'at=R23&break=card.side=0.9')
      const { camera, measures } = pictureOf(run, frame, step)
      const layout = stepLayouts[shape]
      const placed = placeMeasures(layout, camera, measures)
      const pin = placed.find(({ words }) => words.startsWith('pin'))!
      const [left, right] = pin.ends.map(([x]) => x).toSorted((one, other) => one - other) as [number, number]
      const wordsOf = (part: string) => placed.find(({ words }) => words.includes(part))!.box
      const [spare, out] = [wordsOf('to spare'), wordsOf('out by')]
      expect(spare.left + spare.width).toBeLessThan(left)
      expect(out.left).toBeGreaterThan(right)
    },
  )

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

/** Everything that chapters measure: each step that is a picture of the machine, at random places of the carriage. */
const steps = readdirSync('content/chapters').flatMap((file) =>
  outlineOf(readFileSync(`content/chapters/${file}`, 'utf8')).steps.filter(
    ({ figure }) => figure === 'scene',
  ),
)

/** A step of a chapter with its machine, the carriage moved by some needles. */
const moved = fc
  .record({ step: fc.constantFrom(...steps), by: fc.double({ min: -3, max: 6, noNaN: true }) })
  .map(({ step: { id, scene, state: text }, by }) => {
    const { state } = read(text, library)
    const run = startRun(scenarioOf(state, library))
    return { id, run, frame: frameAt(run, state.pass, state.at + by), step: readSceneStep(scene) }
  })

const axisOf = ({ from, to }: Measure): 0 | 1 | 2 =>
  ([0, 1, 2] as const).toSorted(
    (one, other) => Math.abs(to[other] - from[other]) - Math.abs(to[one] - from[one]),
  )[0]!

describe('whatever a chapter measures', () => {
  test('is as long in the model as its number says', () => {
    fc.assert(
      fc.property(moved, ({ frame, step }) => {
        for (const measure of measuresOf(step, frame)) {
          const times = axisOf(measure) < 2 ? 1 : step.view === 'tips' ? heightTimes.reader : heightTimes.bed
          // Halfway between two hundredths either may be written.
          const written = Number(/[\d.]+(?= ?mm|\u00a0mm)/.exec(measure.words)?.[0])
          expect(Math.abs(written - lengthOf(measure) / times), measure.words).toBeLessThan(0.005_001)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('is measured from edges of what is drawn, or from the rest level', () => {
    fc.assert(
      fc.property(moved, ({ run, frame, step }) => {
        if (step.view !== 'tips' && step.view !== 'along') return
        const { scene, measures } = pictureOf(run, frame, step)
        const levels = scene.pieces.flatMap(({ shape }) => {
          if (!shape) return []
          const { least, most } = extentOf(shape)
          return [least[2], most[2]]
        })
        for (const { from, to, words } of measures) {
          if (from[2] === to[2]) continue
          for (const level of [from[2], to[2]])
            expect(
              Math.min(Math.abs(level - buttLevel(0)), ...levels.map((own) => Math.abs(own - level))),
              words,
            ).toBeLessThan(1e-6)
        }
      }),
      { numRuns: 60 },
    )
  })

  test.each(shapes)('has words that are apart from one another, in the picture: %s', (shape) => {
    const layout = stepLayouts[shape]
    fc.assert(
      fc.property(moved, ({ run, frame, step }) => {
        const { camera, measures, datums } = pictureOf(run, frame, step)
        const placed = placeMeasures(layout, camera, measures)
        const boxes = [
          ...placed.map(({ box }) => box),
          ...placeDatums(layout, camera, datums, roomOfMeasures(placed)).map(({ box }) => box),
        ]
        for (const [n, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(0)
          expect(box.left + box.width).toBeLessThanOrEqual(layout.width)
          expect(box.top).toBeGreaterThanOrEqual(0)
          for (const other of boxes.slice(n + 1)) expect(isOver(box, other)).toBe(false)
        }
      }),
      { numRuns: 200 },
    )
  })
})
