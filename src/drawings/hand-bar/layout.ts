import type { FigureLayout, Layouts, WordsPlace } from '../shared/view.ts'

/** Where things are in the figure of the bar drawn by hand, in pixels of its own picture. Nothing is to scale. */
export interface HandBarLayout extends FigureLayout {
  readonly finger: number
  /** From above: the bed's piece, its needles, and the bar, drawn out of the bed's end by `out`. */
  readonly plan: {
    readonly left: number
    readonly end: number
    readonly top: number
    readonly bottom: number
    readonly pitch: number
    readonly bar: number
    readonly half: number
    readonly out: number
  }
  /** The two sections: their frames, and in each the scale of the drawing and the words. */
  readonly sections: {
    readonly lefts: readonly [number, number]
    readonly top: number
    readonly width: number
    readonly height: number
    readonly scale: number
    readonly words: WordsPlace
  }
}

export const layouts: Layouts<HandBarLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 500,
    finger: 17,
    plan: { left: 0, end: 620, top: 84, bottom: 246, pitch: 17, bar: 132, half: 16, out: 150 },
    sections: {
      lefts: [2, 510],
      top: 290,
      width: 488,
      height: 200,
      scale: 1.5,
      words: { x: 250, y: 60, step: 22 },
    },
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 364,
    finger: 9,
    plan: { left: 0, end: 196, top: 42, bottom: 128, pitch: 9.5, bar: 66, half: 9, out: 60 },
    sections: {
      lefts: [1, 176],
      top: 160,
      width: 167,
      height: 116,
      scale: 0.82,
      words: { x: 0, y: 133, step: 15 },
    },
  },
}
