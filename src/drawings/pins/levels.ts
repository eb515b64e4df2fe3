import { at as entryAt } from '../../mechanism/lookup.ts'
import { holeClearance } from '../../mechanism/pin.ts'
import { nearestHeights } from '../../words/figures/pins.ts'
import { millimetres } from '../../words/lists.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { dimensionLine, px } from '../shared/paths.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { levelY, planY, rightOf } from './layout.ts'
import { drawnEdge } from './section.ts'
import type { ColumnView, PinsView } from './view.ts'

/** Levels pressed apart so that their words do not touch, each as near to its own place as it can be. */
export const spread = (levels: readonly number[], gap: number): number[] => {
  const order = levels.map((_, n) => n).sort((a, b) => entryAt(levels, a) - entryAt(levels, b))
  const placed = [...levels]
  for (let round = 0; round < levels.length; round++)
    order.slice(1).forEach((lower, n) => {
      const upper = entryAt(order, n)
      const short = gap - (entryAt(placed, lower) - entryAt(placed, upper))
      if (short <= 0) return
      placed[upper] = entryAt(placed, upper) - short / 2
      placed[lower] = entryAt(placed, lower) + short / 2
    })
  return placed
}

/** The heights that count, in mm above the datum. */
const heightsOf = (
  view: PinsView,
): { edge: number; bite: number; high: number | null; low: number | null } => {
  const edge = view.frame.condition.sweepEdge
  return { edge, bite: edge + view.frame.condition.dimensions.fullBite, ...nearestHeights(view.frame) }
}

/** The sweep's edge, the line of its full bite and the datum, across the section. */
export const drawLevels = (root: Group, view: PinsView): void => {
  const { layout } = view
  const { edge, bite, high, low } = heightsOf(view)
  const [left, right] = [layout.left, rightOf(layout)]
  const across = (height: number): string => `M${left - 6},${px(levelY(layout, height))}H${px(right + 6)}`
  drawShape(root, 'path', 'edge-line', { d: across(drawnEdge(edge)) + across(0) })
  drawShape(root, 'path', 'bite-line', { d: across(drawnEdge(bite)) })
  const tips = [high, low].filter((height) => height !== null)
  const reach = layout.shape === 'wide' ? 20 : 12
  const y = (height: number): number => px(levelY(layout, height))
  drawShape(root, 'path', 'tip-line', {
    d: tips.map((height) => `M${left},${y(height)}H${px(right + reach)}`).join(''),
  })
  drawShape(root, 'path', 'edge-line profile-edge', {
    d:
      layout.profile === null
        ? ''
        : [drawnEdge(edge), 0]
            .map((height) => `M${layout.profile! - 46},${y(height)}H${layout.width}`)
            .join(''),
  })
}

interface Gap {
  readonly text: string
  readonly from: number
  readonly to: number
  readonly isBad: boolean
}

/** The two margins in words: how far the sweep bites on a high pin, and how far a low one clears it. */
const gapsOf = (view: PinsView): Gap[] => {
  const { edge, high, low } = heightsOf(view)
  const isWide = view.layout.shape === 'wide'
  const gaps: Gap[] = []
  if (high !== null) {
    const by = millimetres(Math.abs(high - edge))
    const name = high > edge ? (isWide ? 'bites' : 'bite') : isWide ? 'misses by' : 'short'
    gaps.push({
      text: `${name} ${by}`,
      from: edge,
      to: high,
      isBad: high - edge < view.frame.condition.dimensions.fullBite,
    })
  }
  if (low !== null) {
    const name = low < edge ? (isWide ? 'clears' : 'clear') : 'caught'
    gaps.push({
      text: `${name} ${millimetres(Math.abs(edge - low))}`,
      from: low,
      to: edge,
      isBad: low >= edge,
    })
  }
  return gaps
}

/** Both margins dimensioned at the right of the section. */
export const drawGaps = (root: Group, view: PinsView): void => {
  const { layout } = view
  const x = rightOf(layout) + (layout.shape === 'wide' ? 14 : 7)
  const gaps = gapsOf(view)
  const y = (height: number): number => levelY(layout, drawnEdge(height))
  drawShape(root, 'path', 'dimension', {
    d: gaps.map(({ from, to }) => dimensionLine(x, y(from), x, y(to))).join(''),
  })
  const middles = spread(
    gaps.map(({ from, to }) => (y(from) + y(to)) / 2),
    layout.shape === 'wide' ? 15 : 14,
  )
  drawTexts(
    root,
    'gap-words',
    gaps.map(({ text, isBad }, n) => ({
      text,
      x: x + (layout.shape === 'wide' ? 8 : 6),
      y: entryAt(middles, n) + 4,
      look: isBad ? 'bad' : 'strong',
    })),
  )
}

/** What the lines across the section are, with their heights above the top plate. */
export const drawHeights = (root: Group, view: PinsView): void => {
  const { layout } = view
  if (layout.shape === 'narrow') {
    drawTexts(root, 'heights', [])
    return
  }
  const { edge, bite, high, low } = heightsOf(view)
  const lines = [
    { height: high, name: 'high tip' },
    { height: bite, name: 'full bite' },
    { height: edge, name: 'its edge' },
    { height: low, name: 'low tip' },
    { height: 0, name: 'top plate' },
  ].filter((line): line is { height: number; name: string } => line.height !== null)
  const places = spread(
    lines.map(({ height }) => levelY(layout, drawnEdge(height))),
    15.5,
  )
  const labels = lines.map(({ height, name }, n): Label => ({
    text: height === 0 ? name : `${name} ${millimetres(height)}`,
    x: layout.left - 10,
    y: entryAt(places, n) + 4,
    look: 'end',
  }))
  drawTexts(root, 'heights', labels)
}

/** The pin whose front leg is pushed furthest, where it is so far that one sees it; null where none is in the window. */
const furthest = (view: PinsView): ColumnView | null => {
  const most = view.columns.reduce((found, column) =>
    Math.abs(column.lean) > Math.abs(found.lean) ? column : found,
  )
  return Math.abs(most.lean) > 0.25 && isInWindow(view, most) ? most : null
}

/** How far the front leg that is pushed furthest has gone, dimensioned above it. */
export const drawLean = (root: Group, view: PinsView): void => {
  const { layout } = view
  const most = furthest(view)
  if (!most) {
    drawShape(root, 'path', 'dimension', { d: '' })
    drawTexts(root, 'lean-words', [])
    return
  }
  const y = levelY(layout, view.frame.condition.dimensions.pinHigh + 0.3)
  const from = most.x
  const to = from + most.lean * layout.perMm
  drawShape(root, 'path', 'dimension', { d: dimensionLine(from, y, to, y) })
  const arrows = Math.abs(to - from) >= 15 ? 5 : 16
  const towards = Math.sign(most.lean)
  const end = to + towards * (arrows + 48)
  const hasRoom = end > layout.left && end < rightOf(layout)
  const side = hasRoom ? towards : -towards
  drawTexts(root, 'lean-words', [
    {
      text: millimetres(Math.abs(most.lean)),
      x: (hasRoom ? to : from) + side * arrows,
      y: y + 4,
      look: side > 0 ? 'strong' : 'strong end',
    },
  ])
}

const isInWindow = ({ layout }: PinsView, { x }: ColumnView): boolean =>
  x > layout.left && x < rightOf(layout)

/** The tightest gap between the pin under the sweep and its hole's edge, from above. */
export const drawClearance = (root: Group, view: PinsView): void => {
  const { layout, focus } = view
  const off = Math.hypot(focus.side, focus.along)
  const left = holeClearance(view.frame.condition.dimensions) - off
  const isShown = focus.isHole && focus.lean === 0 && left > 0.05
  const [ux, uy] = off < 0.01 ? [1, 0] : [-focus.side / off, -focus.along / off]
  const y = planY(layout)
  const at = (mm: number): [number, number] => [focus.x + ux * mm * layout.perMm, y + uy * mm * layout.perMm]
  const [from, to] = [
    at(view.frame.condition.dimensions.pin / 2),
    at(view.frame.condition.dimensions.pin / 2 + left),
  ]
  drawShape(root, 'path', 'dimension', { d: isShown ? dimensionLine(...from, ...to) : '' })
}
