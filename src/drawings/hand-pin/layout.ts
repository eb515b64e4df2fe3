import type { FigureLayout, Layouts } from '../shared/view.ts'

/** Where things are in the figure of a pin felt by hand, in pixels of its own picture. */
export interface HandPinLayout extends FigureLayout {
  readonly finger: number
  /** The pin from the side: its front and its back leg, the top plate's upper side, pixels a mm, and the words. */
  readonly side: {
    readonly front: number
    readonly back: number
    readonly datum: number
    readonly perMm: number
    readonly title: number
    readonly words: readonly [x: number, y: number]
  }
  /** The same pin from the front: its leg at rest, the top plate, pixels a mm, the rods' plate, the strip, and the words. */
  readonly front: {
    readonly leg: number
    readonly left: number
    readonly right: number
    readonly datum: number
    readonly perMm: number
    readonly plate: number
    readonly strip: number
    readonly title: number
    readonly words: readonly [x: number, y: number]
  }
  /** From line to line of words. */
  readonly line: number
}

export const layouts: Layouts<HandPinLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 480,
    finger: 17,
    side: { front: 120, back: 208, datum: 236, perMm: 24, title: 0, words: [268, 300] },
    front: {
      leg: 684,
      left: 530,
      right: 830,
      datum: 190,
      perMm: 24,
      plate: 322,
      strip: 380,
      title: 520,
      words: [520, 446],
    },
    line: 20,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 364,
    finger: 10,
    side: { front: 38, back: 80, datum: 142, perMm: 11.5, title: 0, words: [0, 292] },
    front: {
      leg: 236,
      left: 160,
      right: 288,
      datum: 142,
      perMm: 11.5,
      plate: 206,
      strip: 234,
      title: 142,
      words: [150, 292],
    },
    line: 15,
  },
}
