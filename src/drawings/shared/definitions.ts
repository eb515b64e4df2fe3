import { px } from './paths.ts'
import { drawGroup, drawList, drawShape, drawShapes, type Group, into } from './svg.ts'

/** The fill with a hatching of the picture with this prefix: of what is cut, or of what is broken or wrong. */
export const hatch = (prefix: string, name: 'cut' | 'broken' | 'wrong'): string => `url(#${prefix}-${name})`

/** A hatching: squares of a size in pixels with a line down each, turned by an angle in degrees. */
interface Hatching {
  readonly name: 'cut' | 'broken' | 'wrong'
  readonly size: number
  readonly angle: number
  readonly line: string
  /** Whether it hides what is behind it. */
  readonly hasGround: boolean
}

const hatching = (name: 'cut' | 'broken', angle: number): Hatching => ({
  name,
  size: 5,
  angle,
  line: 'M0,0V5',
  hasGround: true,
})

/** Both hatchings with a ground, as most pictures have them: they lean opposite ways. */
const crossing = [hatching('cut', 45), hatching('broken', -45)]

/** The same, leaning the same way. */
export const parallel = [hatching('cut', 45), hatching('broken', 45)]

/** The group that holds a picture's hatchings and clips. */
const definitions = (root: Group): Group => drawGroup(root, 'definitions')

/** Draws hatchings, with ids of their own for each picture on a page. */
export const drawHatchings = (
  root: Group,
  prefix: string,
  hatchings: readonly Hatching[] = crossing,
): void => {
  const patterns = drawShapes(
    definitions(root),
    'pattern',
    'hatching',
    hatchings,
    ({ name, size, angle }) => ({
      id: `${prefix}-${name}`,
      width: size,
      height: size,
      patternUnits: 'userSpaceOnUse',
      patternTransform: `rotate(${angle})`,
    }),
  )
  patterns.each(function ({ name, size, line, hasGround }) {
    if (hasGround) drawShape(into(this), 'rect', 'hatch-ground', { width: size, height: size })
    drawShape(into(this), 'path', `hatch-${name}`, { d: line })
  })
}

/** A rectangle in the picture's pixels. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const clipPath = (root: Group, prefix: string, name: string): Group =>
  into(
    drawShape(definitions(root), 'clipPath', `${name}-clip`, {
      id: `${prefix}-${name}`,
    }).node() as SVGElement,
  )

/** The reference to a clip of the picture with this prefix. */
export const clipTo = (prefix: string, name: string): string => `url(#${prefix}-${name})`

/** A clip of this name: only what lies in the box is seen. Returns its reference. */
export const drawClip = (root: Group, prefix: string, name: string, box: Box): string => {
  drawList(clipPath(root, prefix, name), 'rect', [box], ({ x, y, width, height }) => ({
    x: px(x),
    y: px(y),
    width: px(Math.max(0, width)),
    height: px(Math.max(0, height)),
  }))
  return clipTo(prefix, name)
}

/** The clip of the window on the bed, named "window". */
export const drawWindowClip = (root: Group, prefix: string, { x, y, width, height }: Box): void => {
  drawShape(clipPath(root, prefix, 'window'), 'rect', 'window-box', { x, y, width, height })
}
