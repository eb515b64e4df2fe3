import { parseHTML } from 'linkedom'
import type { Figure, FigureOptions } from '../drawings/shared/figure-contract.ts'
import { read } from '../link/read.ts'
import { scenarioOf } from '../link/state.ts'
import { type Frame, frameAt } from '../mechanism/frame.ts'
import { type Run, startRun } from '../mechanism/pass.ts'
import { siteLibrary } from './cards.ts'

/** The machine in the state of a link's text, while the site is built. Throws where the text is not sound: it is ours. */
export const builtState = (text: string): { run: Run; frame: Frame } => {
  const { state, troubles } = read(text, siteLibrary)
  const [trouble] = troubles
  if (trouble) throw new Error(`the state “${text}”: ${trouble.sentence}`)
  const run = startRun(scenarioOf(state, siteLibrary))
  return { run, frame: frameAt(run, state.pass, state.at) }
}

/** Markup without what a browser takes for granted: a drawing has some thousands of attributes that say nothing. */
export const slim = (markup: string): string => markup.replace(/ [\w-]+=""| display="inline"| (?=\/>)/g, '')

/** A figure's drawing as markup, for the page as it is built. */
export const builtFigure = (figure: Figure, run: Run, frame: Frame, options: FigureOptions): string => {
  const { document } = parseHTML('<html><body></body></html>')
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  figure.draw(svg, run, frame, options)
  return slim(svg.innerHTML)
}
