import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { project } from '@/drawings/scene/engine/camera.ts'
import { drawWay, wayBoxes } from '@/drawings/scene/draw-way.ts'
import { isOver } from '@/drawings/scene/draw-step.ts'
import { placeMeasures, roomOfMeasures } from '@/drawings/scene/place-measures.ts'
import { stepLayouts } from '@/drawings/scene/step-layout.ts'
import { pictureOf, wordsOf } from '@/drawings/scene/step-picture.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { drawGroup, into } from '@/drawings/shared/svg.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { emptySvg } from '@/site/drawn-markup.ts'
import { readSceneStep, type SceneAttributes } from '@/words/figures/scene-step.ts'

const library = cardLibrary(cardsFolder)
const layout = stepLayouts.wide

const shown = (attributes: SceneAttributes, text: string) => {
  const { state } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  const picture = pictureOf(run, frameAt(run, state.pass, state.at), readSceneStep(attributes))
  return { picture, words: wordsOf(picture, layout) }
}

/** The classes of what is drawn of the way, and its words. */
const drawn = ({ picture, words }: ReturnType<typeof shown>): readonly [readonly string[], string] => {
  const svg = emptySvg()
  drawWay(drawGroup(into(svg), 'all'), layout, picture.camera, words.way)
  const shapesOf = [...svg.querySelectorAll('path, circle')].map((shape) => shape.getAttribute('class') ?? '')
  return [shapesOf, svg.querySelector('text')?.textContent ?? '']
}

const along = { view: 'along', layers: 'bed needles carriage presser', subject: 'needle.R8' }
const across = { view: 'across', layers: 'bed needles carriage presser', subject: 'needle.R8' }

test('from behind, the carriage’s arrow points to the left where it goes to the right, and says so', () => {
  const right = shown(along, 'at=R8')
  const { at, way } = right.words.way!
  const [from, to] = [at, [at[0] + way, at[1], at[2]] as const].map((point) =>
    project(right.picture.camera, point),
  )
  expect(to![0]).toBeLessThan(from![0])
  expect(drawn(right)).toEqual([['scene-way-arrow'], 'to the right'])
  expect(drawn(shown(along, 'pass=2&at=R8'))).toEqual([['scene-way-arrow'], 'to the left'])
})

test('from its end the arrow is a point that comes toward one, or feathers that go away', () => {
  expect(drawn(shown(across, 'at=R8'))).toEqual([['scene-way-ring', 'scene-way-point'], 'to the right'])
  expect(drawn(shown(across, 'pass=2&at=R8'))).toEqual([
    ['scene-way-ring', 'scene-way-feathers'],
    'to the left',
  ])
})

test('where the carriage is off there is no arrow, and what was drawn of one goes', () => {
  const off = shown({ ...along, layers: 'bed needles' }, 'at=R8')
  expect(off.words.way).toBeNull()
  const svg = emptySvg()
  const group = drawGroup(into(svg), 'all')
  drawWay(group, layout, off.picture.camera, shown(along, 'at=R8').words.way)
  drawWay(group, layout, off.picture.camera, null)
  expect(svg.querySelectorAll('path, circle, text')).toHaveLength(0)
})

test.each(shapes)('the arrow and its words are clear of dimensions: %s', (shape) => {
  const own = stepLayouts[shape]
  for (const text of ['at=R8', 'at=R9.6', 'pass=2&at=R8']) {
    const { picture } = shown({ ...along, layers: 'bed needles spurs strips carriage presser gates' }, text)
    const { way } = wordsOf(picture, own)
    const measured = roomOfMeasures(placeMeasures(own, picture.camera, picture.measures))
    for (const box of wayBoxes(own, picture.camera, way!))
      expect(measured.some((other) => isOver(box, other))).toBe(false)
  }
})
