import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { needleAt } from '@/drawings/scene/machine/places.ts'
import { stepLayouts } from '@/drawings/scene/step-layout.ts'
import { pictureOf, wordsOf } from '@/drawings/scene/step-picture.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { describeStep, readSceneStep } from '@/words/figures/scene-step.ts'

const { state } = read('card=none&at=R20', cardLibrary(cardsFolder))
const run = startRun(scenarioOf(state, cardLibrary(cardsFolder)))
const frame = frameAt(run, state.pass, state.at)

test('a hand pushes a part where one sees it, from behind the push, and the picture says so in words', () => {
  const step = readSceneStep({ view: 'bed', layers: 'bed strips', subject: 'strip.1', hand: 'strip.1:right' })
  const { hands } = wordsOf(pictureOf(run, frame, step), stepLayouts.wide)
  const [hand] = hands
  expect(hand!.at[0]).toBeLessThan(-50)
  expect(hand!.toward[0]).toBeGreaterThan(hand!.at[0])
  expect(hand!.toward.slice(1)).toEqual(hand!.at.slice(1))
  expect(describeStep(run, frame, step)).toContain('A hand pushes strip 1 to the right.')
})

test('a finger comes from above where it pushes down', () => {
  const step = readSceneStep({ view: 'front', layers: 'reader pins', subject: 'pin.12', hand: 'pin.12:down' })
  const { hands } = wordsOf(pictureOf(run, frame, step), stepLayouts.narrow)
  expect(hands[0]!.at[2]).toBeGreaterThan(0)
  expect(hands[0]!.toward[2]).toBeLessThan(hands[0]!.at[2])
})

test('a front leg is pushed, not the back leg behind it, and a second hand’s arrow is clear of the first one', () => {
  const step = readSceneStep({
    view: 'front',
    layers: 'reader pins',
    subject: 'pin.12',
    hand: 'pin.12:down pin.12:left',
  })
  const { hands } = wordsOf(pictureOf(run, frame, step), stepLayouts.wide)
  expect(hands[1]!.at[1]).toBeLessThan(25)
  expect(hands[1]!.toward[0]).toBeLessThan(hands[1]!.at[0])
})

test('two hands lift the carriage by its ends, and no arrow says that it goes anywhere', () => {
  const step = readSceneStep({
    view: 'together',
    layers: 'bed needles carriage',
    subject: 'carriage',
    hand: 'carriage:lift',
  })
  const { hands, way } = wordsOf(pictureOf(run, frame, step), stepLayouts.wide)
  const [left, right] = hands.map((hand) => hand!)
  expect(hands).toHaveLength(2)
  expect(left!.at[0] + right!.at[0]).toBeCloseTo(2 * needleAt(frame.x))
  expect(left!.toward[0]).toBeGreaterThan(left!.at[0])
  expect(right!.toward[0]).toBeLessThan(right!.at[0])
  expect(way).toBeNull()
  const words = describeStep(run, frame, step)
  expect(words).toContain('Two hands lift the carriage, one at either of its ends.')
  expect(words).not.toContain('The carriage goes')
  const off = readSceneStep({ view: 'together', layers: 'bed needles', hand: 'carriage:lift' })
  expect(wordsOf(pictureOf(run, frame, off), stepLayouts.wide).hands).toEqual([])
})

test('a part that is not in the picture has no finger, and a way that there is not is named', () => {
  const step = readSceneStep({ view: 'bed', layers: 'bed strips', subject: 'strip.1', hand: 'pin.3:down' })
  expect(wordsOf(pictureOf(run, frame, step), stepLayouts.wide).hands).toEqual([null])
  expect(() => readSceneStep({ hand: 'pin.3:inwards' })).toThrow(/“inwards”; there are down, left, right/)
})
