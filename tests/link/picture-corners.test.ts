import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Brightness, cardOfCells, cellAverages, usualThreshold } from '@/link/card-picture.ts'
import {
  areGrid,
  areWhole,
  type Corners,
  type PicturePoint,
  projectionTo,
  sizeWithin,
  wholePicture,
  withCorner,
} from '@/link/picture-corners.ts'
import { type Card, hasHole } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'

type Vector = readonly [number, number, number]

/** How a card lies before the camera: turned about three axes, in radians. */
interface Pose {
  readonly yaw: number
  readonly pitch: number
  readonly roll: number
}

const photo = { width: 360, height: 300, focus: 420, distance: 42 }
const dot = (one: Vector, other: Vector): number => one[0] * other[0] + one[1] * other[1] + one[2] * other[2]

/** The directions of a card's columns, of its rows and of what is behind it, as the camera sees them. */
const axesOf = ({ yaw, pitch, roll }: Pose): readonly [Vector, Vector, Vector] => {
  const rotate = ([x, y, z]: Vector): Vector => {
    const [x1, y1] = [x * Math.cos(roll) - y * Math.sin(roll), x * Math.sin(roll) + y * Math.cos(roll)]
    const [y2, z2] = [y1 * Math.cos(pitch) - z * Math.sin(pitch), y1 * Math.sin(pitch) + z * Math.cos(pitch)]
    return [x1 * Math.cos(yaw) + z2 * Math.sin(yaw), y2, z2 * Math.cos(yaw) - x1 * Math.sin(yaw)]
  }
  return [rotate([1, 0, 0]), rotate([0, 1, 0]), rotate([0, 0, 1])]
}

/** What a camera sees of a place on the card's sheet, in cells from the middle: a pinhole takes a picture. */
const seen = (pose: Pose, across: number, down: number): PicturePoint => {
  const [right, below] = axesOf(pose)
  const [x, y, z] = [0, 1, 2].map((n) => right[n]! * across + below[n]! * down) as unknown as Vector
  const scale = photo.focus / (z + photo.distance)
  return { x: photo.width / 2 + x * scale, y: photo.height / 2 + y * scale }
}

/** A photograph of a card with round holes and a margin, on a dark table, each pixel by the ray that meets it. */
const photographOf = (card: Card, pose: Pose): { picture: Brightness; corners: Corners } => {
  const [right, below, behind] = axesOf(pose)
  const shadeAt = (px: number, py: number): number => {
    const ray: Vector = [px - photo.width / 2, py - photo.height / 2, photo.focus]
    const reach = (behind[2] * photo.distance) / dot(behind, ray)
    const hit: Vector = [ray[0] * reach, ray[1] * reach, ray[2] * reach - photo.distance]
    const [across, down] = [dot(hit, right) + 12, dot(hit, below) + card.length / 2]
    if (across < -2 || across > 26 || down < -3 || down > card.length + 3) return 60
    const [c, r] = [Math.floor(across), Math.floor(down)]
    const isHole = c >= 0 && c < 24 && r >= 0 && r < card.length && hasHole(card[r]!, toColumn(c + 1))
    return isHole && Math.hypot(across - c - 0.5, down - r - 0.5) < 0.45 ? 20 : 235
  }
  const values = Array.from({ length: photo.width * photo.height }, (_, n) =>
    shadeAt((n % photo.width) + 0.5, Math.floor(n / photo.width) + 0.5),
  )
  const half = card.length / 2
  const corners: Corners = [
    seen(pose, -12, -half),
    seen(pose, 12, -half),
    seen(pose, 12, half),
    seen(pose, -12, half),
  ]
  return { picture: { width: photo.width, height: photo.height, values }, corners }
}

const cardIn = (picture: Brightness, rows: number, corners?: Corners): Card => {
  const cells = cellAverages(picture, rows, corners)
  return cardOfCells(cells, { threshold: usualThreshold(cells), holes: 'dark', isRow1AtBottom: false })
}

const tilt = (most: number) => fc.double({ min: -most, max: most, noNaN: true })
const poses = fc.record({ yaw: tilt(0.45), pitch: tilt(0.45), roll: tilt(0.3) })
const cards = fc.array(fc.integer({ min: 0, max: 0xffffff }), { minLength: 8, maxLength: 12 })

describe('a photograph of a card, from the side and with a margin', () => {
  test('gives the card once the corners are where the grid’s are', () => {
    fc.assert(
      fc.property(cards, poses, (card, pose) => {
        const { picture, corners } = photographOf(card, pose)
        expect(areGrid(corners)).toBe(true)
        expect(cardIn(picture, card.length, corners)).toEqual(card)
      }),
      { numRuns: 25 },
    )
  })

  test('gives the card even where the corners are a fifth of a cell off', () => {
    const card = [0x999999, 0x666666, 0xf0f0f0, 0x0f0f0f, 0xaaaaaa, 0x555555, 0xcccccc, 0x123456]
    const { picture, corners } = photographOf(card, { yaw: 0.3, pitch: -0.2, roll: 0.1 })
    const [one, , three] = corners
    const off = withCorner(withCorner(corners, 0, { x: one.x - 2, y: one.y + 2 }), 2, {
      x: three.x + 2,
      y: three.y + 2,
    })
    expect(cardIn(picture, card.length, off)).toEqual(card)
  })

  test('gives another card where it is taken whole', () => {
    const card = [0x999999, 0x666666, 0xf0f0f0, 0x0f0f0f, 0xaaaaaa, 0x555555, 0xcccccc, 0x123456]
    const { picture } = photographOf(card, { yaw: 0.3, pitch: -0.2, roll: 0.1 })
    expect(cardIn(picture, card.length)).not.toEqual(card)
  })
})

describe('the corners of a grid', () => {
  const close = (one: PicturePoint, other: PicturePoint): void => {
    expect(one.x).toBeCloseTo(other.x, 6)
    expect(one.y).toBeCloseTo(other.y, 6)
  }

  test('are met by the mapping, and lines stay where a camera sees them', () => {
    fc.assert(
      fc.property(poses, tilt(11), tilt(5), (pose, across, down) => {
        const corners: Corners = [
          seen(pose, -12, -6),
          seen(pose, 12, -6),
          seen(pose, 12, 6),
          seen(pose, -12, 6),
        ]
        const project = projectionTo(corners)
        close(project(0, 0), corners[0])
        close(project(1, 0), corners[1])
        close(project(1, 1), corners[2])
        close(project(0, 1), corners[3])
        close(project((across + 12) / 24, (down + 6) / 12), seen(pose, across, down))
      }),
    )
  })

  test('are a grid’s only clockwise and with none inside the others', () => {
    const whole = wholePicture(100, 50)
    const [one, two, three, four] = whole
    expect(areGrid(whole)).toBe(true)
    expect(areGrid([three, four, one, two])).toBe(true)
    expect(areGrid([two, one, four, three])).toBe(false)
    expect(areGrid([one, three, two, four])).toBe(false)
    expect(areGrid(withCorner(whole, 2, { x: 40, y: 20 }))).toBe(false)
    expect(areGrid(withCorner(whole, 2, { x: 50, y: 25 }))).toBe(false)
    expect(areGrid(withCorner(whole, 1, one))).toBe(false)
    expect(areGrid(wholePicture(1, 1))).toBe(true)
  })

  test('know the whole picture and the size of what is within them', () => {
    expect(areWhole(wholePicture(24, 3), 24, 3)).toBe(true)
    expect(areWhole(wholePicture(24, 3), 24, 4)).toBe(false)
    expect(areWhole(withCorner(wholePicture(24, 3), 0, { x: 0, y: 1 }), 24, 3)).toBe(false)
    expect(sizeWithin(wholePicture(24, 3))).toEqual({ width: 24, height: 3 })
    expect(
      sizeWithin([
        { x: 10, y: 0 },
        { x: 30, y: 0 },
        { x: 40, y: 30 },
        { x: 0, y: 30 },
      ]).width,
    ).toBe(30)
  })
})
