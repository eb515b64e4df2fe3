import { expect, test } from 'vitest'
import { type Camera, directionsOf } from '@/drawings/scene/engine/camera.ts'
import { seenAt } from '@/drawings/scene/engine/cover.ts'
import type { Shape } from '@/drawings/scene/engine/piece.ts'
import { dot, minus, type Vector } from '@/drawings/scene/engine/vector.ts'
import { drawnOf, sceneOf } from '@/drawings/scene/scene.ts'
import { sceneViews } from '@/drawings/scene/views.ts'
import { uniformDraw } from '@/mechanism/random.ts'
import { sceneViewNames } from '@/words/figures/scene.ts'
import { states, trees } from './machines.ts'

const isFlat = (shape: Shape, end: 0 | 1): boolean => shape.kind === 'wire' && shape.joined[end]

/** How far toward the viewer a ray from `from` leaves a shape; null where it misses it by more than `margin`, in mm. */
const leaves = (shape: Shape, from: Vector, toward: Vector, margin: number): number | null => {
  if (shape.kind === 'hull') {
    let [enters, exits] = [-Infinity, Infinity]
    for (const { corners, normal } of shape.faces) {
      const beyond = dot(minus(shape.points[corners[0]!]!, from), normal) - margin
      const slope = dot(normal, toward)
      if (Math.abs(slope) < 1e-9) {
        if (beyond < 0) return null
      } else if (slope > 0) exits = Math.min(exits, beyond / slope)
      else enters = Math.max(enters, beyond / slope)
    }
    return exits > enters ? exits : null
  }
  const [start, end] = shape.ends
  const [axis, off] = [minus(end, start), minus(from, start)]
  const [aa, at, tt] = [dot(axis, axis), dot(axis, toward), dot(toward, toward)]
  // The point of the wire that is nearest to the ray.
  const lean = aa * tt - at * at
  const free = lean < 1e-9 ? 0 : (dot(off, axis) * tt - dot(off, toward) * at) / lean
  // Where a wire goes on, its end is flat, and what is beyond it is another piece.
  if ((free < 0 && isFlat(shape, 0)) || (free > 1 && isFlat(shape, 1))) return null
  const share = Math.min(1, Math.max(0, free))
  const nearest: Vector = [start[0] + axis[0] * share, start[1] + axis[1] * share, start[2] + axis[2] * share]
  const along = dot(minus(nearest, from), toward)
  const apart = Math.hypot(
    ...minus(minus(nearest, from), [toward[0] * along, toward[1] * along, toward[2] * along]),
  )
  const radius = shape.radius - margin
  return apart < radius ? along + Math.sqrt(radius * radius - apart * apart) : null
}

/** How far inside its outline something must be hit, and how much nearer it must be, to count, in mm. */
const [inside, nearer] = [0.06, 0.5]

const draw = (n: number, pass: number): number => uniformDraw(7, 'sticky', n, pass)

test('what is drawn last at a point is what a ray meets first, from every side and in every state', () => {
  const wrong: string[] = []
  let [hits, rays] = [0, 0]
  for (const [n, [state, pose]] of states.entries())
    for (const [k, name] of sceneViewNames.entries()) {
      const scene = sceneOf(trees[sceneViews[name].model], pose, sceneViews[name])
      const turned = Math.round(draw(n, 10 * k + 1) * 359 - 179)
      const raised = Math.round(draw(n, 10 * k + 2) * 170 - 85)
      const camera: Camera = {
        ...directionsOf({ turned, raised, zoom: 100 }),
        scale: 1,
        origin: [0, 0],
        line: 1,
      }
      const drawn = drawnOf(scene, camera)
      const seen = seenAt(camera, drawn)
      for (let ray = 0; ray < 60; ray++) {
        const target = drawn[Math.floor(draw(ray, 1000 + 50 * n + k) * drawn.length)]!.shape
        const corners = target.kind === 'hull' ? target.points : target.ends
        const shares = corners.map((_, corner) => draw(ray * 40 + corner, 3000 + 50 * n + k))
        const sum = shares.reduce((one, other) => one + other, 0)
        const point = [0, 1, 2].map((axis) =>
          corners.reduce((place, corner, m) => place + (corner[axis as 0 | 1 | 2] * shares[m]!) / sum, 0),
        ) as [number, number, number]
        const all = drawn.flatMap(({ piece, shape }) => {
          const at = shape.kind === 'coil' ? null : leaves(shape, point, camera.toward, inside)
          return at === null ? [] : [{ piece, at }]
        })
        const first = all.toSorted((one, other) => other.at - one.at)[0]
        const found = seen([dot(camera.right, point), -dot(camera.up, point)])
        rays++
        if (!first || found === null || found === first.piece) continue
        hits++
        const met = all.find(({ piece }) => piece === found)
        // Its edge may be hit, or a coil, which one sees through; and what touches is as near.
        if (!met || first.at - met.at < nearer) continue
        const names = [found, first.piece].map((piece) => scene.pieces[piece]!)
        // Pieces of one part go into each other where they are joined.
        if (names[0]!.name === names[1]!.name && names[0]!.order === names[1]!.order) continue
        wrong.push(
          `${state}, ${name} from ${turned}.${raised}: ${names[0]!.name} ${names[0]!.order} over ${names[1]!.name} ${names[1]!.order}, ${(first.at - met.at).toFixed(2)} mm nearer`,
        )
      }
    }
  console.log(rays, hits, wrong.length)
  expect(wrong).toEqual([])
})
