import type { Way } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/** How many times heights are drawn larger than lengths. */
export const lift = 5

/**
 * Where things are in the gates figure, in pixels of its own picture. The carriage stands still in it and the butts
 * pass; one axis for both views, counted in needles behind the presser's trailing edge.
 */
export interface GatesLayout extends FigureLayout {
  /** Pixels a needle; where the presser's trailing edge is when the carriage goes to the right. */
  readonly pitch: number
  readonly edge: number
  /** From above: the carriage's upper and lower edge, and the butts' line. */
  readonly bodyTop: number
  readonly bodyFoot: number
  readonly line: number
  readonly names: number
  /** From the side: the cams' upper edge, the rest level, the bed. */
  readonly camTop: number
  readonly rest: number
  readonly bed: number
  readonly bedFoot: number
  /** Half a butt, how thick a cam's wall is, and where the lines of words begin. */
  readonly half: number
  readonly wall: number
  readonly words: number
  readonly wordStep: number
}

const wide: GatesLayout = {
  shape: 'wide',
  width: 1000,
  height: 600,
  pitch: 54,
  edge: 572,
  bodyTop: 32,
  bodyFoot: 226,
  line: 104,
  names: 246,
  camTop: 322,
  rest: 352,
  bed: 464,
  bedFoot: 480,
  half: 5.5,
  wall: 17,
  words: 512,
  wordStep: 25,
}

const narrow: GatesLayout = {
  shape: 'narrow',
  width: 344,
  height: 360,
  pitch: 27,
  edge: 258,
  bodyTop: 3,
  bodyFoot: 106,
  line: 44,
  names: 122,
  camTop: 148,
  rest: 166,
  bed: 222,
  bedFoot: 230,
  half: 3.2,
  wall: 9,
  words: 250,
  wordStep: 15,
}

export const layouts: Layouts<GatesLayout> = { wide, narrow }

/** Place in the picture of a point so many needles behind the presser's trailing edge; and the other way about. */
export const behindX = (layout: GatesLayout, way: Way, behind: number): number => {
  const right = layout.edge - behind * layout.pitch
  return way === 1 ? right : layout.width - right
}
export const behindAt = (layout: GatesLayout, way: Way, x: number): number =>
  (layout.edge - (way === 1 ? x : layout.width - x)) / layout.pitch

/** Pixels a millimetre, along the bed and across it. */
export const perMm = (layout: GatesLayout): number => layout.pitch / dimensions.pitch

/** A height in mm above the rest level, from the side. */
export const levelY = (layout: GatesLayout, height: number): number =>
  layout.rest - height * perMm(layout) * lift

/** How far behind and ahead of the presser's edge the picture reaches, in needles. */
export const reaches = (layout: GatesLayout): { behind: number; ahead: number } => ({
  behind: layout.edge / layout.pitch,
  ahead: -(layout.width - layout.edge) / layout.pitch,
})
