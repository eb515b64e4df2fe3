import { describe, expect, test } from 'vitest'
import { followed, labelsIn } from '@/drawings/scene/draw-labels.ts'
import { project } from '@/drawings/scene/engine/camera.ts'
import { isCrossing, placeLabels } from '@/drawings/scene/engine/labels.ts'
import { sceneLayouts } from '@/drawings/scene/layout.ts'
import { cameraFor } from '@/drawings/scene/cameras.ts'
import { partSeenAt, placesOf } from '@/drawings/scene/sight.ts'
import { sceneOf } from '@/drawings/scene/scene.ts'
import { sceneViews } from '@/drawings/scene/views.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { sceneViewNames } from '@/words/figures/scene.ts'
import { numberedNames, numberedParts } from '@/words/numbered-parts.ts'
import { poseAt, trees } from './machines.ts'

const pose = poseAt(1, 109.8)

/** Every named view, and each of them turned by some angles either way and up and down. */
const views = sceneViewNames.flatMap((name) => {
  const { view } = sceneViews[name]
  return [0, 35, -50, 140].flatMap((by) =>
    [0, -60].map((higher) => ({
      name,
      view: { ...view, turned: view.turned + by, raised: Math.max(-90, view.raised + higher) },
    })),
  )
})

describe('the labels of a picture of the machine', () => {
  test.each(shapes)('stay apart, in the picture, and uncrossed, from any side: %s', (shape) => {
    for (const { name, view } of views) {
      const scene = sceneOf(trees[sceneViews[name].model], pose, sceneViews[name])
      const layout = sceneLayouts[scene.format][shape]
      const { margins } = layout
      const isFlat = scene.format === 'flat'
      const [least, most] = isFlat ? [margins.left, margins.right] : [margins.top, margins.bottom]
      const along = ({ x, y }: { x: number; y: number }): number => (isFlat ? x : y)
      const labels = labelsIn(layout, placesOf(scene, cameraFor(scene, view), sceneViews[name].named))
      const says = `${name} ${view.turned}.${view.raised}`
      expect(labels.length, says).toBeGreaterThan(1)
      for (const [n, one] of labels.entries()) {
        expect(along(one), says).toBeGreaterThanOrEqual(least - 0.01)
        expect(along(one), says).toBeLessThanOrEqual(most + 0.01)
        for (const other of labels.slice(n + 1)) {
          if (one.side !== other.side) continue
          expect(Math.abs(along(one) - along(other)), says).toBeGreaterThanOrEqual(margins.step - 0.01)
          expect(isCrossing([one.x, one.y], one.to, [other.x, other.y], other.to), says).toBe(false)
        }
      }
    }
  })

  test.each(sceneViewNames)('point at what one sees there, and name nothing that is hidden: %s', (name) => {
    const scene = sceneOf(trees[sceneViews[name].model], pose, sceneViews[name])
    const camera = cameraFor(scene, sceneViews[name].view)
    const seen = partSeenAt(scene, camera)
    const places = placesOf(scene, camera, sceneViews[name].named)
    for (const { name: part, points } of places)
      for (const [x, y] of points) expect(seen(x, y), `${part} at ${x}, ${y}`).toBe(part)
    expect(places.filter(({ points }) => points.length > 0).length).toBeGreaterThan(places.length / 2)
  })

  test('keep their side while the machine turns, and their lines follow', () => {
    const layout = sceneLayouts.tall.wide
    const { view, named } = sceneViews.front
    const scene = sceneOf(trees.stretch, pose, sceneViews.front)
    const before = labelsIn(layout, placesOf(scene, cameraFor(scene, view), named))
    const camera = cameraFor(scene, { ...view, turned: view.turned - 60 })
    for (const [n, label] of followed(layout, camera, before).entries()) {
      const [x, y] = project(camera, before[n]!.at)
      expect(label.to).toEqual([x + layout.machine.x, y + layout.machine.y])
      expect([label.x, label.y]).toEqual([before[n]!.x, before[n]!.y])
    }
    const seen = placesOf(scene, camera, named)
    const after = labelsIn(layout, seen, before)
    const moved = labelsIn(layout, seen)
    const sideOf = (labels: typeof before, name: string) => labels.find((label) => label.name === name)?.side
    const changed = (labels: typeof before): number =>
      labels.filter(({ name, side }) => (sideOf(before, name) ?? side) !== side).length
    expect(changed(moved)).toBeGreaterThan(0)
    expect(changed(after)).toBeLessThan(changed(moved))
  })

  test('leave out what is seen nowhere, and put no more at a margin than it has room for', () => {
    const margins = { left: 0, right: 100, top: 0, bottom: 40, step: 20 }
    const at = (x: number, y: number) => [[x, y] as const]
    const placed = placeLabels(
      [
        { name: 'a', points: at(10, 5) },
        { name: 'b', points: at(12, 5) },
        { name: 'c', points: at(14, 5) },
        { name: 'd', points: at(16, 5) },
        { name: 'hidden', points: [] },
      ],
      margins,
    )
    expect(placed.map(({ name }) => name).sort()).toEqual(['a', 'b', 'c', 'd'])
    expect(placed.filter(({ side }) => side === 'left').length).toBeLessThanOrEqual(3)
    expect(placed.every(({ y }) => y >= 0 && y <= 40)).toBe(true)
  })

  test('have one number for each part, and each part of a view is one of them', () => {
    const numbers = numberedNames.map((name) => numberedParts[name].number)
    expect(new Set(numbers).size).toBe(numbers.length)
    expect(numbers).toEqual(numbers.toSorted((one, other) => one - other))
    const shown = new Set(sceneViewNames.flatMap((name) => sceneViews[name].named))
    expect(numberedNames.filter((name) => !shown.has(name))).toEqual([])
  })
})
