import type { Figure, FigureOptions } from '../drawings/shared/figure-contract.ts'
import { read } from '../link/read.ts'
import { scenarioOf } from '../link/state.ts'
import { type Frame, frameAt } from '../mechanism/frame.ts'
import { type Run, startRun } from '../mechanism/pass.ts'
import { siteLibrary } from './cards.ts'
import { drawnMarkup } from './drawn-markup.ts'

/** The machine in the state of a link's text, while the site is built. Throws where the text is not sound: it is ours. */
export const machineInState = (text: string): { run: Run; frame: Frame } => {
  const { state, troubles } = read(text, siteLibrary)
  const [trouble] = troubles
  if (trouble) throw new Error(`the state “${text}”: ${trouble.sentence}`)
  const run = startRun(scenarioOf(state, siteLibrary))
  return { run, frame: frameAt(run, state.pass, state.at) }
}

/** A figure's drawing as markup, for the page as it is built. */
export const figureMarkup = (figure: Figure, run: Run, frame: Frame, options: FigureOptions): string =>
  drawnMarkup((svg) => {
    figure.draw(svg, run, frame, options)
  })
