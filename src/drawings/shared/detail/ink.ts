import { change, changeText, type Group, part } from '../svg.ts'

/** One line or outline of a picture, as data: pure functions list them, and one function draws the list. */
export interface Ink {
  /** Its classes: what it is and how it is marked. */
  readonly kind: string
  /** Its path in the picture's pixels. */
  readonly d: string
  /** The hatching that fills it, where it is cut or broken. */
  readonly hatch?: 'cut' | 'broken'
  /** Id of the part it shows, such as `strip.3`. */
  readonly part?: string
}

/** One label: its classes besides "note", where it stands in the picture's pixels, and what it says. */
export interface Lettering {
  readonly kind: string
  readonly x: number
  readonly y: number
  readonly text: string
}

const round = (value: number): number => Math.round(value * 10) / 10 + 0

/** Draws these lines, in order, into the group of this name. Every attribute is written each time, in one order. */
export const drawInk = (parent: Group, name: string, prefix: string, inks: readonly Ink[]): Group => {
  const group = part(parent, 'g', name)
  const paths = group.selectChildren<SVGPathElement, Ink>('path').data(inks).join('path')
  change(paths, 'class', ({ kind }) => kind)
  change(paths, 'd', ({ d }) => d)
  change(paths, 'fill', ({ hatch }) => (hatch ? `url(#${prefix}-${hatch})` : ''))
  change(paths, 'data-part', (ink) => ink.part ?? '')
  return group
}

/** Draws these labels into the group of this name. */
export const drawLettering = (parent: Group, name: string, labels: readonly Lettering[]): void => {
  const group = part(parent, 'g', name)
  const texts = group.selectChildren<SVGTextElement, Lettering>('text').data(labels).join('text')
  change(texts, 'class', ({ kind }) => `note ${kind.trim()}`.trim())
  change(texts, 'x', ({ x }) => round(x))
  change(texts, 'y', ({ y }) => round(y))
  changeText(texts, ({ text }) => text)
}
