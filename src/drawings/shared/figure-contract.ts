import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { SceneStep } from '../../words/figures/scene-step.ts'

/** The two shapes in which each figure is drawn: for desks and projectors, and for phones. */
export const shapes = ['wide', 'narrow'] as const
export type Shape = (typeof shapes)[number]

/** The figures' ids in the order of their numbers; each is drawn by the file of that name. */
export const figureIds = [
  'place',
  'chain',
  'card',
  'pins',
  'timing',
  'strip',
  'hold',
  'gates',
  'fabric',
  'margins',
  'hand-strip',
  'hand-pin',
  'hand-bar',
  'scene',
] as const

/** What a caller chooses about a drawing. */
export interface FigureOptions {
  readonly shape: Shape
  /** Makes the ids of patterns and clips unique on a page. */
  readonly prefix: string
  /** First needle of the bed's window where it is not the one that follows the carriage; with a fraction. */
  readonly from?: number
  /** How far the card has still to roll to the row being read, in rows: 0 to 1 while it steps. */
  readonly roll?: number
  /** The most stitches that a float may pass behind unmarked; common practice where it is not chosen. */
  readonly floatLimit?: number
  /** How a step shows the machine in three dimensions; for that figure alone. */
  readonly scene?: SceneStep
}

/** A figure of the site: drawn by one function, when the site is built and then live on the same elements. */
export interface Figure {
  readonly id: string
  /** Its number on the site, from 0. */
  readonly number: number
  readonly title: string
  /** Width and height of each shape in the picture's own pixels, which are CSS pixels at full size. */
  readonly sizes: Readonly<Record<Shape, { readonly width: number; readonly height: number }>>
  /** Draws into an empty `svg`, or brings what an earlier call drew there up to date. Keeps nothing between calls. */
  readonly draw: (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions) => void
  /** The picture in words, for the state it shows, and for the figure of the machine how it is shown. */
  readonly describe: (run: Run, frame: Frame, scene?: SceneStep) => string
  /** The carriage's place that a point of the picture shows; null where it shows none. */
  readonly placeAt?: (shape: Shape, x: number, y: number, frame: Frame) => number | null
}
