import { outline, px } from '../paths.ts'

/**
 * The shape of a butt and of its catch, seen along the needle from the front: x along the bed from the needle's middle,
 * heights above the butts' rest level, in mm. Beside the butt the needle has a spur; the catch is a springy finger that
 * reaches up and forward from its strip, which lies in the bed behind the butts, and ends in a nose. A dipped spur is
 * below the nose's flat underside, so a shifted catch comes over it; a spur at rest is above the nose, so the catch
 * passes beneath and has nothing to catch. The nose's upper side slopes: a spur that comes down on it pushes the finger
 * aside and snaps past.
 */
export const shape = {
  halfStem: 0.35,
  /**
   * Left edge of the spur, how far its upper side is below the butt's top, and how thick it is: of a held butt it is below
   * the second gate's edge, and of a dipped one above the bed.
   */
  spur: -1.05,
  spurDrop: 0.75,
  spurThick: 0.2,
  /** Length of the plate below its top. */
  plate: 2.9,
  /** The nose: thickness at its tip, how steeply its upper side rises, length, and width of the finger. */
  tipThick: 0.12,
  slope: 0.45,
  nose: 0.75,
  finger: 0.4,
  /** Top of the bed; in it, in a channel behind the butts, upper and lower side of the strip; floor of that channel. */
  bed: -2.45,
  stripTop: -2.75,
  stripFoot: -3.2,
  channel: -3.35,
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

/** The butt and its plate with its top at `height`, leaning by `lean` above the bed, and the spur beside it. */
export const buttOutline = (place: ButtPosition, height: number, lean: number): string => {
  const { halfStem, spur, spurDrop, spurThick, plate, bed } = shape
  const foot = height - plate
  const [over, under] = [height - spurDrop, height - spurDrop - spurThick]
  const bend = Math.min(under, Math.max(foot, bed))
  const points: [number, number][] = [
    [-halfStem, foot],
    [-halfStem, bend],
    [-halfStem + lean, under],
    [spur + lean, under],
    [spur + lean, over],
    [-halfStem + lean, over],
    [-halfStem + lean, height],
    [halfStem + lean, height],
    [halfStem, bend],
    [halfStem, foot],
  ]
  return outline(points.map(([x, level]) => at(place, x, level)))
}

/** Where the tip of a catch is that has shifted by `shift`, in mm from its needle's middle. */
export const tipAt = (reach: number, shift: number): number => shape.spur - reach + shift

/** A catch: its strip has shifted by `shift`, its tip by `tip`; the underside of its nose is at `under`. All in mm. */
export interface Catch {
  readonly reach: number
  readonly shift: number
  readonly tip: number
  readonly under: number
}

/** The finger, up from its strip, and its nose. */
export const catchOutline = (place: ButtPosition, { reach, shift, tip, under }: Catch): string => {
  const end = tipAt(reach, tip)
  const root = end - shape.nose
  const base = tipAt(reach, shift) - shape.nose
  const top = under + shape.tipThick + shape.slope * shape.nose
  const points: [number, number][] = [
    [base - shape.finger, shape.stripTop],
    [root - shape.finger, top],
    [root, top],
    [end, under + shape.tipThick],
    [end, under],
    [root, under],
    [base, shape.stripTop],
  ]
  return outline(points.map(([x, level]) => at(place, x, level)))
}

/** What is left of a finger whose nose has broken off: a stump with a ragged end. */
export const stumpOutline = (place: ButtPosition, { reach, shift }: Catch): string => {
  const right = tipAt(reach, shift) - shape.nose
  const left = right - shape.finger
  const points: [number, number][] = [
    [left, shape.stripTop],
    [left, shape.stripTop + 0.52],
    [left + shape.finger * 0.3, shape.stripTop + 0.38],
    [left + shape.finger * 0.55, shape.stripTop + 0.58],
    [right, shape.stripTop + 0.4],
    [right, shape.stripTop],
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
