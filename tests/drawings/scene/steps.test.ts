import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { isCrossing } from '@/drawings/scene/engine/labels.ts'
import { inLayout } from '@/drawings/scene/draw-labels.ts'
import { project } from '@/drawings/scene/engine/camera.ts'
import { stepLayouts } from '@/drawings/scene/step-layout.ts'
import { pictureOf, wordsOf } from '@/drawings/scene/step-picture.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { readCarriagePosition } from '@/link/carriage-position.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { outlineOf } from '@/site/chapter-outline.ts'
import { readSceneStep, sceneKinds } from '@/words/figures/scene-step.ts'
import { describeWith, flagWords } from '@/words/subject.ts'

const library = cardLibrary(cardsFolder)
const folder = 'content/chapters'

/** Every step that shows the machine in three dimensions, with each place at which its carriage comes to rest. */
const chapters = readdirSync(folder)
  .sort()
  .map((file) => {
    const { steps, components } = outlineOf(readFileSync(`${folder}/${file}`, 'utf8'))
    const ways = components
      .filter(({ name }) => name === 'Step')
      .map(({ attributes }) => attributes.get('to'))
    const own = steps.flatMap(({ id, figure, state: text, scene, words, predictions }, n) => {
      if (figure !== 'scene') return []
      const { state } = read(text, library)
      const to = readCarriagePosition(ways[n] ?? '') ?? state.at
      const asked = predictions.map(({ attributes }) => read(attributes.get('state') ?? '', library).state)
      const states = [state, { ...state, at: to }, ...asked]
      return [{ id: `${file} ${id}`, step: readSceneStep(scene), words, states }]
    })
    return { file, steps: own }
  })
const all = chapters.flatMap(({ steps }) => steps)

/** The machine of a step in each of its states. */
const machinesOf = ({ states }: (typeof all)[number]) =>
  states.map((state) => {
    const run = startRun(scenarioOf(state, library))
    return { run, frame: frameAt(run, state.pass, state.at) }
  })

test('some steps show the machine in three dimensions', () => {
  expect(all.length).toBeGreaterThan(5)
})

describe.each(all.map((each) => [each.id, each] as const))('the step %s', (_, each) => {
  const { step, words } = each

  test.each(shapes)('has its flag in the picture, where one sees it, and its labels apart: %s', (shape) => {
    const layout = stepLayouts[shape]
    for (const { run, frame } of machinesOf(each)) {
      const picture = pictureOf(run, frame, step)
      const { labels, flags } = wordsOf(picture, layout)
      expect(step.subject).not.toBeNull()
      expect(flags.length).toBe(1 + step.also.length)
      for (const flag of flags) {
        expect(flag?.isSeen).toBe(true)
        const [x, y] = inLayout(layout, project(picture.camera, flag!.at))
        expect(x).toBeGreaterThan(layout.margins.left)
        expect(x).toBeLessThan(layout.margins.right)
        expect(y).toBeGreaterThan(0)
        expect(y).toBeLessThan(layout.machine.y + 600 * layout.machine.scale)
      }
      expect(labels.length).toBeGreaterThan(0)
      for (const [n, one] of labels.entries()) {
        expect(one.y).toBeLessThanOrEqual(layout.margins.bottom + 0.01)
        for (const other of labels.slice(n + 1)) {
          if (one.side !== other.side) continue
          expect(Math.abs(one.y - other.y)).toBeGreaterThanOrEqual(layout.margins.step - 0.01)
          expect(isCrossing([one.x, one.y], one.to, [other.x, other.y], other.to)).toBe(false)
        }
      }
    }
  })

  test('names its subject in the sentence under it, and in its picture all needles of its text', () => {
    for (const { run, frame } of machinesOf(each))
      expect(describeWith(run, frame, step.subject)).toMatch(
        new RegExp(`\\b${flagWords(step.subject!)}\\b`, 'i'),
      )
    const named = [step.subject!, ...step.also].map(flagWords).join(' ')
    const spoken = words.match(/\b[LR]\d{1,3}\b/g) ?? []
    expect(spoken.filter((name) => !named.includes(name))).toEqual([])
  })
})

test('no step of the first chapter shows more than five kinds of part that have not been met before', () => {
  const met = new Set<string>()
  for (const { id, step } of chapters[0]!.steps) {
    const there = (step.layers ?? []).flatMap((kind): readonly string[] => sceneKinds[kind])
    const added = there.filter((kind) => !met.has(kind))
    expect(added.length, `${id}: ${added.join(', ')}`).toBeLessThanOrEqual(5)
    for (const kind of there) met.add(kind)
  }
})
