import { describe, expect, test } from 'vitest'
import { directionsOf } from '@/drawings/scene/engine/camera.ts'
import { type Canvas2D, canvasPen, type Inks } from '@/drawings/scene/engine/canvas-pen.ts'
import { inkFor } from '@/drawings/scene/engine/ink.ts'
import { box, type Hull } from '@/drawings/scene/engine/piece.ts'

const line = { colour: '#000', width: 1 }
const inks: Inks = {
  tones: ['#000', '#111', '#222', '#333', '#444'],
  lines: {
    outline: { ...line, width: 1.5 },
    crease: { ...line, width: 0.85 },
    mark: line,
    hatching: line,
    wrong: line,
    axis: line,
  },
  marks: { hole: '#555', opening: '#666', blocked: '#777' },
}

/** What a canvas is made to draw: places as they come, and the width of each line that is drawn. */
const drawn = (hulls: readonly Hull[], isHasty = false): { places: number[][]; widths: number[] } => {
  const [places, widths]: [number[][], number[]] = [[], []]
  const canvas = {
    lineWidth: 1,
    beginPath: () => undefined,
    closePath: () => undefined,
    moveTo: (x: number, y: number) => void places.push([x, y]),
    lineTo: (x: number, y: number) => void places.push([x, y]),
    fill: () => undefined,
    stroke: () => void widths.push(canvas.lineWidth),
  }
  const camera = {
    ...directionsOf({ turned: 30, raised: 30, zoom: 100 }),
    scale: 4,
    origin: [0, 0],
    line: 1,
  } as const
  const pen = canvasPen(canvas as unknown as Canvas2D, camera.line, () => inks, isHasty)
  const ink = inkFor(camera, pen)
  for (const hull of hulls) ink(hull, false)
  return { places, widths }
}

const [from, to] = [
  [0, 0, 0],
  [8, 4, 2],
] as const

describe('a pen that draws on a canvas', () => {
  test('draws a box with an outline and with creases, and in haste without creases', () => {
    expect(drawn([box(from, to)]).widths).toEqual([0.85, 1.5])
    expect(drawn([box(from, to)], true).widths).toEqual([1.5])
  })

  test('draws a piece a little over its joint with the next one, and no further elsewhere', () => {
    const furthest = (hull: Hull): number => Math.max(...drawn([hull]).places.map(([x]) => x!))
    const least = (hull: Hull): number => Math.min(...drawn([hull]).places.map(([x]) => x!))
    const [plain, joined] = [box(from, to), box(from, to, { right: { kind: 'joint' } })]
    expect(furthest(joined) - furthest(plain)).toBeGreaterThan(0.2)
    expect(furthest(joined) - furthest(plain)).toBeLessThan(0.6)
    expect(least(joined)).toBeCloseTo(least(plain), 9)
  })
})
