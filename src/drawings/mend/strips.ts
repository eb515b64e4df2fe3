import { stripOfNeedle } from '../../mechanism/bed.ts'
import { allStrips, measureOfStrip, type Needle, type Strip } from '../../mechanism/indices.ts'
import { isPushed } from '../shared/detail/needle-state.ts'
import { hatch } from '../shared/definitions.ts'
import { outline, px } from '../shared/paths.ts'
import { type Attributes, drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import { edges, type MendLayout, needleX, perMm } from './layout.ts'
import type { MendView } from './view.ts'

/** Middle height of a strip. */
const stripY = (layout: MendLayout, strip: Strip): number => layout.strips + (strip - 1) * layout.stripSpacing

const shiftPx = ({ frame, layout }: MendView, strip: Strip): number =>
  measureOfStrip(frame.stripShifts, strip) * perMm(layout)

/** Where the piece of the strips that is seen begins and ends with them at rest: the first catch is on it. */
const ends = (layout: MendLayout): { readonly left: number; readonly right: number } => {
  const { left, right } = edges(layout)
  return { left: left - layout.pitch * 0.4, right }
}

/** A strip's outline, broken off at both ends, since it runs on along the whole bed. */
const bar = (view: MendView, strip: Strip): string => {
  const half = view.layout.shape === 'wide' ? 3 : 2.2
  const { left, right } = ends(view.layout)
  const y = stripY(view.layout, strip)
  const x = shiftPx(view, strip)
  return outline([
    [left + x, y - half],
    [right + x, y - half],
    [right + x - half, y - half / 3],
    [right + x + half, y + half / 3],
    [right + x, y + half],
    [left + x, y + half],
    [left + x + half, y + half / 3],
    [left + x - half, y - half / 3],
  ])
}

/** How far beyond its reach a catch's nose is from its needle's middle while its strip is at rest, and how long it is, in mm. */
const nose = { beyond: 0.6, length: 0.8 } as const

/** A catch from above: from its strip to the front, with its nose beside the spur of its needle. */
export const catchPath = (view: MendView, index: Needle): string => {
  const { layout, frame } = view
  const strip = stripOfNeedle(index, frame.condition)
  const x =
    needleX(layout, index) -
    (frame.condition.reach + nose.beyond + nose.length) * perMm(layout) +
    shiftPx(view, strip)
  return `M${px(x)},${px(stripY(layout, strip))}V${layout.line}h${px(nose.length * perMm(layout))}`
}

const looks = (view: MendView, strip: Strip): Attributes => ({
  'data-broken': view.broken.has(`strip.${strip}`) ? 'broken' : '',
  'data-push': isPushed(view.frame, strip) ? 'push' : '',
})

/** The catches of all strips, and before them the strips: each catch passes over the strips in front of its own. */
export const drawStrips = (root: Group, view: MendView): void => {
  const { layout, frame } = view
  const band = drawGroup(root, 'strips')
  drawShapes(band, 'path', 'strip', allStrips, (strip) => ({
    d: bar(view, strip),
    ...looks(view, strip),
    fill: view.broken.has(`strip.${strip}`) ? hatch(view.prefix, 'broken') : '',
  }))
  const catchesOf = (strip: Strip): string =>
    view.indexes
      .filter((index) => stripOfNeedle(index, frame.condition) === strip)
      .map((index) => catchPath(view, index))
      .join('')
  for (const name of ['catch-edge', 'catch'])
    drawShapes(drawGroup(band, `${name}s`), 'path', name, allStrips, (strip) => ({
      d: catchesOf(strip),
      ...looks(view, strip),
    }))
  const { right } = edges(layout)
  drawShapes(band, 'text', 'strip-name', allStrips, (strip) => ({
    x: px(right + (layout.shape === 'wide' ? 16 : 12)),
    y: px(stripY(layout, strip) + 4.2),
    ...looks(view, strip),
    text: view.broken.has(`strip.${strip}`) ? `${strip} seized` : strip,
  }))
}
