import { base } from '../link/site-path.ts'
import { layouts, windowFrom } from '../drawings/chain/layout.ts'
import { wholeBedOf } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Frame } from '../mechanism/frame.ts'
import type { Run } from '../mechanism/pass.ts'
import { readSceneStep, type SceneAttributes } from '../words/figures/scene-step.ts'
import { figureOf } from './figures.ts'
import { figureMarkup, machineInState } from './machine-state.ts'
import { minified, withShortStyles } from './minify-svg.ts'
import { stillStyles } from './still-styles.ts'

/** The picture on its own round a figure so wide and high: the room for wider letters, a third of it at the left. */
export const roomRound = (width: number, height: number): { viewBox: string; width: number } => {
  const whole = Math.round(width * 1.15)
  const left = Math.round((whole - width) / 3)
  return { viewBox: `${-left} 0 ${whole} ${height}`, width: whole }
}

/** The file name of the still picture of a figure in a state: the same wherever the same is shown (FNV-1a hash). */
export const stillName = (figure: string, state: string, scene: SceneAttributes = {}): string => {
  let hash = 0x811c9dc5
  const { view, layers, subject, also } = scene
  const shown = [view, layers, subject, also].filter((value) => value !== undefined)
  for (const character of [state, ...shown].join(' '))
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0
  return `${figure}-${hash.toString(36)}`
}

/** The file name of the picture of a step's machine. */
export const stepName = (state: string, scene: SceneAttributes): string => stillName('step', state, scene)

/** A still picture as a page shows it, in pixels, and the machine in its state. */
export interface Still {
  readonly address: string
  readonly width: number
  readonly height: number
  /** The picture in words. */
  readonly words: string
  readonly run: Run
  readonly frame: Frame
}

/** The still picture of a figure in a link's state. Throws where there is no such figure, or the state is not sound. */
export const stillOf = (id: string, state: string, scene: SceneAttributes = {}): Still => {
  const figure = figureOf(id)
  const { run, frame } = machineInState(state)
  const { width, height } = figure.sizes.narrow
  return {
    address: `${base}/stills/${stillName(id, state)}.svg`,
    width: roomRound(width, height).width,
    height,
    words: figure.describe(run, frame, readSceneStep(scene)),
    run,
    frame,
  }
}

/**
 * Where the window of a still picture of the whole chain begins: as on a page, but with a catch of each strip in it, at
 * least, where the carriage waits beyond the bed.
 */
export const stillWindow = ({ x, pass, condition }: Frame): number => {
  const bed = wholeBedOf(condition.dimensions.needles)
  const { needles } = layouts.narrow
  const follows = windowFrom(layouts.narrow, x, pass.way, bed)
  return Math.min(
    bed.last + 0.5 - dimensions.strips,
    Math.max(bed.first - 0.5 + dimensions.strips - needles, follows),
  )
}

/** The narrow picture of a figure in a state as an SVG file, with its styles in it. */
export const stillPicture = (id: string, state: string): string => {
  const figure = figureOf(id)
  const { run, frame } = machineInState(state)
  const { height, ...narrow } = figure.sizes.narrow
  const { viewBox, width } = roomRound(narrow.width, height)
  const drawing = minified(
    figureMarkup(figure, run, frame, { shape: 'narrow', prefix: 'still', from: stillWindow(frame) }),
  )
  const attributes = `viewBox="${viewBox}" width="${width}" height="${height}"`
  return withShortStyles(attributes, stillStyles(id), drawing)
}
