import { describe, expect, test } from 'vitest'
import { canBeCut, cut, sectionOf } from '@/drawings/scene/engine/cut.ts'
import { extentOf } from '@/drawings/scene/engine/extent.ts'
import { posedIn, walk } from '@/drawings/scene/engine/order.ts'
import { bentWire, box, coil, type Hull, wire } from '@/drawings/scene/engine/piece.ts'
import { separationOf } from '@/drawings/scene/engine/separate.ts'
import { treeOf } from '@/drawings/scene/engine/tree.ts'
import { cross, dot, minus, type Vector } from '@/drawings/scene/engine/vector.ts'
import { directionsOf } from '@/drawings/scene/engine/camera.ts'

/** Six times the volume of a hull, from its faces (the divergence theorem). */
const volume = ({ points, faces }: Hull): number => {
  let sum = 0
  for (const { corners } of faces) {
    const first = points[corners[0]!]!
    for (let n = 1; n + 1 < corners.length; n++)
      sum += dot(first, cross(points[corners[n]!]!, points[corners[n + 1]!]!))
  }
  return sum
}

const order = (shapes: readonly Hull[], view: { turned: number; raised: number }): number[] => {
  const drawn: number[] = []
  const posed = posedIn(treeOf([shapes]), shapes)
  walk(posed, directionsOf({ ...view, zoom: 100 }), ({ piece }) => drawn.push(piece))
  return drawn
}

const at = (x: number, y: number, z: number): Hull => box([x, y, z], [x + 1, y + 1, z + 1])

describe('cutting', () => {
  test('a box cut in two is as large as before, and each part is closed', () => {
    const whole = box([0, 0, 0], [4, 3, 2])
    const [near, far] = cut(whole, { axis: 0, at: 1.5 }) as [Hull, Hull]
    expect(volume(whole)).toBeCloseTo(6 * 24)
    expect(volume(near)).toBeCloseTo(6 * 9)
    expect(volume(near) + volume(far)).toBeCloseTo(volume(whole))
    for (const part of [near, far]) {
      expect(part.edges).toHaveLength(12)
      expect(part.faces.filter(({ kind }) => kind === 'joint')).toHaveLength(1)
    }
  })

  test('a plane through corners leaves no corner twice', () => {
    const wedge = box([0, 0, 0], [2, 2, 2])
    const [near] = cut(wedge, { axis: 2, at: 1 }) as [Hull, Hull]
    const keys = near.points.map((point) => point.join())
    expect(new Set(keys).size).toBe(keys.length)
  })

  test('a hole that the plane goes through is closed on either side without a line there', () => {
    const hole: Vector[] = [
      [1, 1, 1],
      [3, 1, 1],
      [3, 2, 1],
      [1, 2, 1],
    ]
    const plate = box([0, 0, 0], [4, 3, 1], { top: { marks: [{ look: 'hole', points: hole }] } })
    for (const part of cut(plate, { axis: 0, at: 2 }) as [Hull, Hull]) {
      const [mark] = part.faces.flatMap(({ marks }) => marks)
      expect(mark?.points).toHaveLength(4)
      expect(mark?.open).toHaveLength(1)
    }
  })

  test('a section hatches what it cuts and leaves out what is beyond it', () => {
    const part = sectionOf(box([0, 0, 0], [4, 3, 2]), { axis: 0, at: 1, shows: 'before' }) as Hull
    expect(part.faces.filter(({ kind }) => kind === 'cut')).toHaveLength(1)
    expect(extentOf(part).most[0]).toBe(1)
    expect(sectionOf(at(2, 0, 0), { axis: 0, at: 1, shows: 'before' })).toBeNull()
  })

  test('a section shows either side, and hatches a joint that it lays open', () => {
    const part = sectionOf(box([0, 0, 0], [4, 3, 2]), { axis: 0, at: 1, shows: 'beyond' }) as Hull
    expect(part.faces.filter(({ kind }) => kind === 'cut')).toHaveLength(1)
    expect(extentOf(part).least[0]).toBe(1)
    const joined = box([0, 0, 0], [4, 3, 2], { right: { kind: 'joint' } })
    const kindsAt = (at: number): readonly string[] =>
      (sectionOf(joined, { axis: 0, at, shows: 'before' }) as Hull).faces.map(({ kind }) => kind)
    expect(kindsAt(4)).toContain('cut')
    expect(kindsAt(5)).not.toContain('cut')
  })

  test('wires are cut straight across only, and coils never', () => {
    const straight = wire([0, 0, 0], [0, 0, 5], 1)
    expect(canBeCut(straight, 2)).toBe(true)
    expect(canBeCut(straight, 0)).toBe(false)
    expect(canBeCut(wire([0, 0, 0], [1, 0, 5], 1), 2)).toBe(false)
    expect(canBeCut(coil([0, 0, 0], [0, 0, 5], 1, 4), 2)).toBe(false)
    expect(() => cut(coil([0, 0, 0], [0, 0, 5], 1, 4), { axis: 2, at: 1 })).toThrow(RangeError)
  })
})

describe('the order in which pieces are drawn', () => {
  test('goes from the back to the front, and round with the viewer', () => {
    const row = [at(0, 0, 0), at(0, 2, 0), at(0, 4, 0)]
    expect(order(row, { turned: 0, raised: 20 })).toEqual([2, 1, 0])
    expect(order(row, { turned: 180, raised: 20 })).toEqual([0, 1, 2])
  })

  test('three boxes that lie over each other in a ring have one, as one of them is cut', () => {
    const ring = [
      box([0, 0, 0], [10, 1, 1]),
      box([9, -1, 1], [10, 8, 2]),
      box([-1, 7, 0.5], [9.9, 8, 1]),
      box([0, -1, 1], [1, 9, 2]),
    ]
    const drawn = order(ring, { turned: 30, raised: 50 })
    expect(new Set(drawn)).toEqual(new Set([0, 1, 2, 3]))
    expect(drawn.indexOf(0)).toBeLessThan(drawn.lastIndexOf(1))
  })
})

describe('how far two shapes are apart', () => {
  test('boxes beside each other, in each other, and corner to corner', () => {
    expect(separationOf(at(0, 0, 0), at(3, 0, 0)).gap).toBeCloseTo(2)
    expect(separationOf(at(0, 0, 0), at(0.75, 0, 0)).gap).toBeCloseTo(-0.25)
    expect(separationOf(at(0, 0, 0), at(1, 1, 1)).gap).toBeCloseTo(0)
  })

  test('crossing wires, which no plane across an axis parts', () => {
    const [one, other] = [wire([0, 0, 0], [10, 10, 0], 0.5), wire([0, 10, 3], [10, 0, 3], 0.5)]
    expect(separationOf(one, other).gap).toBeCloseTo(2)
    const slanting = wire([0, 0, 0], [10, 10, 10], 0.5)
    const beside = wire([3, 0, 0], [13, 10, 10], 0.5)
    // Two parallels are as far apart as a line across them.
    const apart = Math.hypot(...minus([3, 0, 0], [1, 1, 1]))
    expect(separationOf(slanting, beside).gap).toBeGreaterThan(0)
    expect(separationOf(slanting, beside).gap).toBeLessThanOrEqual(apart)
  })

  test('a bent wire is one piece for each stretch, joined where it is bent', () => {
    const bent = bentWire(
      [
        [0, 0, 0],
        [0, 0, 5],
        [4, 0, 5],
      ],
      0.5,
    )
    expect(bent.map(({ joined }) => joined)).toEqual([
      [false, true],
      [true, false],
    ])
  })
})
