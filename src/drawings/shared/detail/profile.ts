import { outline, px } from '../paths.ts'

/**
 * The shape of a butt and of its catch, seen along the needle: x along the bed from the needle's middle, heights above
 * the butts' rest level, in mm. The butt is a plate with a nose at its top; the catch is a springy finger that hangs
 * from the strip and ends in a beak. A dipped nose lies below the beak's flat underside, so a shifted catch passes
 * over it; a nose at rest is above the beak, so the catch passes beneath and has nothing to catch. The beak's
 * upper side slopes: a nose that comes down on it pushes the finger aside and snaps past.
 */
export const shape = {
  halfStem: 0.35,
  /** Left edge of the nose, and how thick it is. */
  nose: -1.05,
  noseThick: 0.3,
  /** Length of the plate below its top. */
  plate: 2.5,
  /** The beak: thickness at its tip, how steeply its upper side rises, length, and width of the finger. */
  tipThick: 0.12,
  slope: 0.45,
  beak: 0.75,
  finger: 0.4,
  /** Lower and upper side of the strip. */
  stripFoot: 0.5,
  stripTop: 1,
  /** Top of the bed. */
  bed: -2.05,
  /** How far a bent butt leans away from its catch. */
  lean: 0.65,
} as const

/** Where a needle is in a picture and how large a millimetre is there, along the bed and upwards. */
export interface ButtPosition {
  readonly x: number
  readonly rest: number
  readonly along: number
  readonly up: number
}

/** A point of the profile in the picture's pixels. */
const at = (place: ButtPosition, x: number, height: number): readonly [number, number] => [
  place.x + x * place.along,
  place.rest - height * place.up,
]

/** The butt and its plate with its top at `height`, leaning by `lean` above the bed. */
export const buttOutline = (place: ButtPosition, height: number, lean: number): string => {
  const { halfStem, nose, noseThick, plate, bed } = shape
  const foot = height - plate
  const bend = Math.max(foot, bed)
  const points: [number, number][] = [
    [-halfStem, foot],
    [-halfStem, bend],
    [-halfStem + lean, height - noseThick],
    [nose + lean, height - noseThick],
    [nose + lean, height],
    [halfStem + lean, height],
    [halfStem, bend],
    [halfStem, foot],
  ]
  return outline(points.map(([x, level]) => at(place, x, level)))
}

/** Where the tip of a catch is that has shifted by `shift`, in mm from its needle's middle. */
export const tipAt = (reach: number, shift: number): number => shape.nose - reach + shift

/** A catch: its strip has shifted by `shift`, its tip by `tip`; its underside is at `under`. All in mm. */
export interface Catch {
  readonly reach: number
  readonly shift: number
  readonly tip: number
  readonly under: number
}

/** The finger and its beak. */
export const catchOutline = (place: ButtPosition, { reach, shift, tip, under }: Catch): string => {
  const end = tipAt(reach, tip)
  const root = end - shape.beak
  const top = tipAt(reach, shift) - shape.beak
  const points: [number, number][] = [
    [top - shape.finger, shape.stripFoot],
    [root - shape.finger, under],
    [end, under],
    [end, under + shape.tipThick],
    [root, under + shape.tipThick + shape.slope * shape.beak],
    [top, shape.stripFoot],
  ]
  return outline(points.map(([x, level]) => at(place, x, level)))
}

/** What is left of a finger whose beak has broken off: a stump with a ragged end. */
export const stumpOutline = (place: ButtPosition, { reach, shift }: Catch): string => {
  const right = tipAt(reach, shift) - shape.beak
  const left = right - shape.finger
  const points: [number, number][] = [
    [left, shape.stripFoot],
    [left, -0.02],
    [left + shape.finger * 0.3, 0.12],
    [left + shape.finger * 0.55, -0.08],
    [right, 0.1],
    [right, shape.stripFoot],
  ]
  return outline(points.map(([x, level]) => at(place, x, level)))
}

/** A coil spring seen from the side between two levels, `half` wide to each side, in mm. */
export const springUp = (place: ButtPosition, bottom: number, top: number, half: number): string => {
  const turns = 5
  const step = (top - bottom) / (2 * turns)
  let path = ''
  for (let n = 0; n <= 2 * turns; n++) {
    const [x, y] = at(place, n % 2 === 0 ? -half : half, bottom + n * step)
    path += `${n === 0 ? 'M' : 'L'}${px(x)},${px(y)}`
  }
  return path
}
