import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
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

test('a part that is not in the picture has no finger, and a way that there is not is named', () => {
  const step = readSceneStep({ view: 'bed', layers: 'bed strips', subject: 'strip.1', hand: 'pin.3:down' })
  expect(wordsOf(pictureOf(run, frame, step), stepLayouts.wide).hands).toEqual([null])
  expect(() => readSceneStep({ hand: 'pin.3:inwards' })).toThrow(/“inwards”; there are down, left, right/)
})
