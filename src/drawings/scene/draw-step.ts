import { numberedParts } from '../../words/numbered-parts.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { type PicturePoint, px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, into } from '../shared/svg.ts'
import type { View } from './engine/camera.ts'
import type { SceneLabel } from './draw-labels.ts'
import type { StepLayout } from './step-layout.ts'

/** How wide a letter of a name is, as a share of its height. */
const letterWidth = 0.45

/** How far a name in the lines below the machine is from the next, in letters: more than a wide word needs beyond its room. */
const betweenNames = 1.15

/** A flag in a picture: what is on it, the point that it is planted at, and whether one sees that. */
export interface Flag {
  readonly words: string
  readonly at: PicturePoint
  readonly isSeen: boolean
  /** Whether it is the subject's, which is dark; other names are light. */
  readonly isSubject: boolean
  /** Whether it hangs below its foot where there is room, and stands above it only where there is none. */
  readonly isHanging: boolean
}

/** A rectangle of a picture, in its pixels. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** A flag's cloth, and the end of its pole there. */
interface Cloth extends Box {
  readonly flag: Flag
  readonly pole: number
}

/** How high a flag's pole is, in letters: a long one keeps the cloth clear of what is around the subject. */
export const [shortPole, longPole] = [1.5, 4.5]

/** How many heights are tried for a flag that would cover another. */
const heights = 5

/** Whether two rectangles lie over one another, or almost. */
export const isOver = (one: Box, other: Box): boolean =>
  one.left < other.left + other.width + 2 &&
  other.left < one.left + one.width + 2 &&
  one.top < other.top + other.height + 2 &&
  other.top < one.top + one.height + 2

/** Where a flag's cloth is: up from the point or down, as there is room; beside the point only at a margin. */
const clothOf = (
  { letters, margins, ring, machine: { y: highest } }: StepLayout,
  flag: Flag,
  poleHeight: number,
  placed: readonly Box[],
): Cloth => {
  const [x, y] = flag.at
  const width = flag.words.length * letters * 0.56 + letters
  const height = letters * 1.45
  const [least, most] = [margins.left + ring + 4, margins.right - ring - 4 - width]
  const left = Math.max(least, Math.min(most, x - (flag.isSubject ? 0 : width / 2)))
  const at = (pole: number, isUp: boolean): Cloth => {
    const top = isUp ? y - pole - height : y + pole
    return { flag, left, top, width, height, pole: isUp ? top + height : top }
  }
  const poles = Array.from({ length: heights }, (_, n) => letters * poleHeight + n * (height + 3))
  const tried = flag.isHanging
    ? [false, true].flatMap((isUp) => poles.map((pole) => at(pole, isUp)))
    : [
        at(letters * poleHeight, true),
        // Where the picture's top is near, before the flag hangs down.
        at(letters * shortPole, true),
        ...poles.flatMap((pole) => [at(pole, true), at(pole, false)]),
      ]
  const isFree = (cloth: Cloth): boolean =>
    cloth.top > highest && !placed.some((other) => isOver(cloth, other))
  return tried.find(isFree) ?? at(letters * poleHeight, !flag.isHanging)
}

/** The room of a flag's foot: what it is planted at has to be seen. */
const footOf = ({ at: [x, y] }: Flag): Box => ({ left: x - 3, top: y - 3, width: 6, height: 6 })

/**
 * Draws the flag that the subject wears, and the names of what else a step speaks of, none over another or another's foot,
 * or over what is `taken`.
 */
export const drawFlags = (
  parent: Group,
  layout: StepLayout,
  flags: readonly Flag[],
  poleHeight: number,
  taken: readonly Box[],
): void => {
  const cloths: Cloth[] = []
  for (const flag of flags) {
    const feet = flags.filter((other) => other !== flag).map(footOf)
    cloths.push(clothOf(layout, flag, poleHeight, [...taken, ...feet, ...cloths]))
  }
  const band = drawGroup(parent, 'scene-flags')
  const groups = drawShapes(band, 'g', 'scene-flag', cloths, ({ flag }) => ({
    'data-subject': flag.isSubject ? 'subject' : '',
  }))
  groups.each(function ({ flag, left, top, width, height, pole }) {
    const [x, y] = flag.at
    const group = into(this)
    drawShape(group, 'path', 'scene-pole', {
      d: `M${px(x)},${px(y)}V${px(pole)}`,
      'data-hidden': flag.isSeen ? '' : 'hidden',
    })
    drawShape(group, 'path', 'scene-cloth', {
      d: `M${px(left)},${px(top)}h${px(width)}v${px(height)}h${px(-width)}Z`,
    })
    drawShape(group, 'text', 'scene-flag-words', {
      x: px(left + width / 2),
      y: px(top + height * 0.72),
      text: flag.words,
    })
    drawShapes(group, 'circle', 'scene-foot', flag.isSeen ? [0] : [], () => ({ cx: px(x), cy: px(y), r: 3 }))
  })
}

/** Draws the names of the numbers, in lines below the machine. */
export const drawNames = (
  parent: Group,
  layout: StepLayout,
  labels: readonly SceneLabel[],
  lit: NumberedPart | null,
): void => {
  if (!layout.names) return
  const { left, right, top, step } = layout.names
  let [x, y] = [left, top]
  const placed = labels
    .toSorted((one, other) => numberedParts[one.name].number - numberedParts[other.name].number)
    .map(({ name }) => {
      const text = `${numberedParts[name].number} ${numberedParts[name].name}`
      const width = layout.letters * (text.length * letterWidth + betweenNames)
      if (x > left && x + width > right) [x, y] = [left, y + step]
      const at = { name, text, x, y }
      x += width
      return at
    })
  drawShapes(drawGroup(parent, 'scene-names'), 'text', 'scene-name', placed, ({ name, text, x, y }) => ({
    x: px(x),
    y: px(y),
    'data-name': name,
    'data-lit': name === lit ? 'lit' : '',
    text,
  }))
}

/** Draws the slab that shows from which side one sees the machine, as from above: its front is at the bottom. */
export const drawStand = (parent: Group, { stand: { x, y, size } }: StepLayout, { turned }: View): void => {
  const band = drawGroup(parent, 'scene-stand', { transform: `translate(${x} ${y}) scale(${size})` })
  drawShape(band, 'path', 'stand-slab', { d: 'M-20,-8H20V8H-20Z' })
  drawShape(band, 'path', 'stand-block', { d: 'M-8,-8H8V-2H-8Z' })
  drawShape(band, 'path', 'stand-you', {
    d: 'M0,14L-5,24H5Z',
    transform: `rotate(${px(-turned)})`,
  })
}
