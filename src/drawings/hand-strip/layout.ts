import type { Strip } from '../../mechanism/indices.ts'
import type { FigureLayout, Layouts, WordsPlace } from '../shared/view.ts'

/** Where things are in the figure of a strip felt by hand, in pixels of its own picture. Nothing is to scale but the shifts. */
export interface HandStripLayout extends FigureLayout {
  /** Middle of strip 1 from above, and from strip to strip; half a strip's thickness. */
  readonly first: number
  readonly step: number
  readonly half: number
  /** Where the strips' ends are at rest, the bed's end, and where bed and strips are broken off. */
  readonly end: number
  readonly bed: number
  readonly broken: number
  /** How thick the bed's end is. */
  readonly wall: number
  /** Pixels a mm of shift. */
  readonly perMm: number
  /** Half a finger's thickness. */
  readonly finger: number
  /** Where the words beside the strips begin. */
  readonly words: number
  /** The three pictures of a butt: their frames, the needle in each, its rest level, the scale, and the words. */
  readonly acts: {
    readonly lefts: readonly [number, number, number]
    readonly top: number
    readonly width: number
    readonly height: number
    readonly needle: number
    readonly rest: number
    readonly along: number
    readonly up: number
    readonly words: WordsPlace
  }
}

export const layouts: Layouts<HandStripLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 560,
    first: 72,
    step: 25,
    half: 7,
    end: 250,
    bed: 318,
    broken: 640,
    wall: 22,
    perMm: 16,
    finger: 15,
    words: 662,
    acts: {
      lefts: [2, 343, 684],
      top: 310,
      width: 314,
      height: 250,
      needle: 112,
      rest: 84,
      along: 22,
      up: 33,
      words: { x: 162, y: 34, step: 20 },
    },
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 364,
    first: 35.5,
    step: 15.6,
    half: 4.6,
    end: 92,
    bed: 118,
    broken: 194,
    wall: 11,
    perMm: 8,
    finger: 8,
    words: 204,
    acts: {
      lefts: [1, 117.5, 234],
      top: 186,
      width: 109,
      height: 110,
      needle: 74,
      rest: 33,
      along: 15,
      up: 16,
      words: { x: 2, y: 126, step: 15 },
    },
  },
}

/** Middle of a strip from above. */
export const stripY = (layout: HandStripLayout, strip: Strip): number =>
  layout.first + (strip - 1) * layout.step
