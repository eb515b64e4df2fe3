import { dimensions } from '../../mechanism/dimensions.ts'
import { type ButtPosition, shape } from '../shared/detail/profile.ts'
import { type FigureLayout, type Layouts, layoutsByBed, type WordsPlace } from '../shared/view.ts'

/** How many times heights are drawn larger than lengths. */
export const lift = 2

/** A large detail: its frame, where its needle is in it, and its scale in pixels a mm along the bed. */
interface Panel {
  readonly width: number
  readonly height: number
  readonly top: number
  readonly lefts: readonly [number, number]
  readonly needle: number
  readonly rest: number
  readonly along: number
  /** Left edge of the picture, and where the words begin. */
  readonly picture: number
  readonly words: WordsPlace
}

/**
 * Where things are in the strip figure, in pixels of its own picture. The bed is drawn to `pitch` pixels a needle,
 * the mechanism on it up to eight times as large, so that each catch has its own eighth of the bed and a shift can be
 * seen.
 */
export interface StripLayout extends FigureLayout {
  readonly pitch: number
  /** How many times the mechanism is drawn larger than the bed it is on. */
  readonly enlarged: number
  /** Where needle 0 of the training machine's bed is, or would be. */
  readonly first: number
  /** The rest level of the butts; the strip in the bed below it: its ends at rest, and its lower edge. */
  readonly left: number
  readonly right: number
  readonly rest: number
  readonly foot: number
  /** Upper edge of the carriage. */
  readonly cover: number
  /** Where the spring ends, and how thick stop and wall are. */
  readonly wall: number
  readonly block: number
  readonly bedFoot: number
  readonly names: number
  readonly bracket: number
  /** The three columns: about where their pins are, where their rods begin, and the plate that guides the rods. */
  readonly columns: readonly [number, number, number]
  readonly rodTop: number
  readonly plate: number
  /** Pivots of the rockers, level from which pin heights count; both 0 where only the rods are drawn. */
  readonly pivot: number
  readonly datum: number
  readonly panel: Panel
}

const wide: StripLayout = {
  shape: 'wide',
  width: 1000,
  height: 600,
  pitch: 4,
  enlarged: 6,
  first: 102,
  left: 70,
  right: 914,
  rest: 200,
  foot: 245,
  cover: 184,
  wall: 964,
  block: 10,
  bedFoot: 288,
  names: 304,
  bracket: 312,
  columns: [404, 500, 596],
  rodTop: 136,
  plate: 154,
  pivot: 120,
  datum: 83,
  panel: {
    width: 484,
    height: 238,
    top: 356,
    lefts: [8, 508],
    needle: 385,
    rest: 58,
    along: 26,
    picture: 176,
    words: { x: 40, y: 30, step: 19 },
  },
}

const narrow: StripLayout = {
  shape: 'narrow',
  width: 344,
  height: 360,
  pitch: 1.36,
  enlarged: 8,
  first: 38,
  left: 26,
  right: 316,
  rest: 56,
  foot: 78,
  cover: 47,
  wall: 334,
  block: 5,
  bedFoot: 100,
  names: 114,
  bracket: 118,
  columns: [104, 172, 240],
  rodTop: 30,
  plate: 38,
  pivot: 0,
  datum: 0,
  panel: {
    width: 168,
    height: 206,
    top: 152,
    lefts: [2, 174],
    needle: 118,
    rest: 78,
    along: 17,
    picture: 0,
    words: { x: 24, y: 17, step: 16 },
  },
}

export const layouts: Layouts<StripLayout> = { wide, narrow }

/** The layout for a bed of any length, which is as long in the picture; the mechanism on it keeps its scale. */
export const layoutOf = layoutsByBed(layouts, (layout, whole) => {
  const share = (whole.last - whole.first) / (dimensions.needles - 1)
  const pitch = layout.pitch / share
  return { ...layout, pitch, enlarged: layout.enlarged * share, first: layout.first - whole.first * pitch }
})

/** Where a point of the bed, in needles, is in the picture; and the point at a place of the picture. */
export const bedX = (layout: StripLayout, needle: number): number => layout.first + needle * layout.pitch
export const bedAt = (layout: StripLayout, x: number): number => (x - layout.first) / layout.pitch

/** Pixels a millimetre of the mechanism, along the bed. */
export const alongOf = (layout: StripLayout): number => (layout.pitch * layout.enlarged) / dimensions.pitch

/** Upper edge of the strip, in the bed. */
export const stripTop = (layout: StripLayout): number => layout.rest - shape.stripTop * alongOf(layout) * lift

/** Where a needle is, and the scales of the mechanism there. */
export const buttPosition = (layout: StripLayout, needle: number): ButtPosition => ({
  x: bedX(layout, needle),
  rest: layout.rest,
  along: alongOf(layout),
  up: alongOf(layout) * lift,
})
