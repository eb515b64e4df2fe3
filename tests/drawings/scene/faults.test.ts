import { describe, expect, test } from 'vitest'
import { faultSceneOf } from '@/drawings/scene/fault-scene.ts'
import { faultViewOf } from '@/drawings/scene/fault-views.ts'
import { faultRoom } from '@/drawings/scene/layout.ts'
import { poseOf } from '@/drawings/scene/machine/pose.ts'
import { drawnOf } from '@/drawings/scene/scene.ts'
import { visibleIn } from '@/drawings/scene/engine/visible.ts'
import { seenAt } from '@/drawings/scene/engine/cover.ts'
import { exampleNeedle, exampleOf } from '@/find/battery.ts'
import { isHoleFault } from '@/mechanism/fault.ts'
import { faultKindNames } from '@/mechanism/fault-kinds.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { columnBit } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { numberedNames, numberedParts } from '@/words/numbered-parts.ts'
import { trees } from './machines.ts'

const rows = [columnBit(toColumn(12)), 0xffffff, 0, 0b101010101010101010101010]
const pictured = faultKindNames.filter((kind) => faultViewOf(kind))

const sceneOfKind = (kind: (typeof faultKindNames)[number]) => {
  const fault = exampleOf(kind)
  const run = startRun({ ...soundScenario(rows), faults: [fault] })
  const pose = poseOf(
    run,
    frameAt(run, 1, faultViewOf(kind)?.at ?? exampleNeedle + (faultViewOf(kind)?.past ?? 0)),
  )
  const found = faultSceneOf(trees, pose, fault)
  if (!found) throw new Error(`no picture of ${kind}`)
  return { fault, pose, found }
}

describe('the picture of a fault', () => {
  test('is there for every fault of a part that has a number', () => {
    const numbered = faultKindNames.filter((kind) =>
      numberedNames.some((name) => numberedParts[name].faults.some((each) => each === kind)),
    )
    expect(pictured).toEqual(numbered)
  })

  test.each(pictured)('shows what is broken, marked and named, where its label points: %s', (kind) => {
    const { fault, found } = sceneOfKind(kind)
    const { scene, camera, broken, places } = found
    expect(places[0]!.name).toBe(broken)
    expect(numberedParts[broken].faults).toContain(kind)
    const seen = seenAt(camera, drawnOf(scene, camera))
    for (const { name, points } of places)
      for (const [x, y] of points) {
        expect(x > 0 && x < faultRoom.width && y > 0 && y < faultRoom.height).toBe(true)
        if (name === broken && isHoleFault(fault)) continue
        const piece = scene.pieces[seen([x, y]) ?? -1]!
        expect(piece.name).toBe(name)
        if (name === broken) expect(piece.mood).toBe('broken')
      }
  })

  test('leaves out only what one does not see', () => {
    const { found } = sceneOfKind('strip.seized')
    const { scene, camera } = found
    const drawn = drawnOf(scene, camera)
    const visible = visibleIn(camera, drawn, faultRoom)
    expect(visible.size).toBeLessThan(drawn.length * 0.8)
    const [all, kept] = [drawn, drawn.filter((each) => visible.has(each))].map((list) => seenAt(camera, list))
    for (let x = 3; x < faultRoom.width; x += 7)
      for (let y = 3; y < faultRoom.height; y += 7) expect(kept!([x, y])).toBe(all!([x, y]))
  })

  test('marks a torn hole and a blocked one where the card should have the other', () => {
    const looks = (kind: 'card.torn' | 'card.blocked') =>
      sceneOfKind(kind).found.scene.pieces.flatMap(({ shape }) =>
        shape?.kind === 'hull' ? shape.faces.flatMap(({ marks }) => marks.map(({ look }) => look)) : [],
      )
    // On either side of the card.
    expect(looks('card.torn').filter((look) => look === 'torn')).not.toEqual([])
    expect(looks('card.blocked').filter((look) => look === 'blocked')).not.toEqual([])
    expect(looks('card.torn')).not.toContain('blocked')
  })
})
