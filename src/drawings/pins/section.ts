import { sweepEnd } from '../../mechanism/sweep.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { hatch } from '../shared/definitions.ts'
import { outline, px } from '../shared/paths.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { columnPitch, columnX, levelY, rightOf } from './layout.ts'
import type { ColumnView, PinsView } from './view.ts'

/** Thickness of the card in mm: this drawing's choice. */
const cardThickness = 0.2

const middle = (dimensions.pinHigh + dimensions.pinLow) / 2

/** Where the section's plane, along the row of pins, cuts a hole; null where it misses it. In the picture's pixels. */
const cutOf = (view: PinsView, { x, side, along }: ColumnView): [number, number] | null => {
  const { perMm } = view.layout
  const half = Math.sqrt(Math.max(0, (dimensions.hole / 2) ** 2 - along ** 2))
  return half > 0 ? [x + (side - half) * perMm, x + (side + half) * perMm] : null
}

/** Whether a pin that is stuck up has gone through the card where it has no hole for it. */
const pierces = (column: ColumnView): boolean => column.hasCard && column.height > middle && !column.fits

/** The gaps in the card along the section, from the left, joined where they meet. */
const gapsOf = (view: PinsView): [number, number][] => {
  const half = (dimensions.pin / 2 + 0.1) * view.layout.perMm
  const all = view.columns.flatMap((column): [number, number][] => {
    const cut = column.isHole ? cutOf(view, column) : null
    const hole = pierces(column) ? [column.x - half, column.x + half] : null
    return [cut, hole].filter((gap) => gap !== null) as [number, number][]
  })
  const joined: [number, number][] = []
  for (const [from, to] of all.sort((a, b) => a[0] - b[0])) {
    const last = joined.at(-1)
    if (last && from <= last[1]) last[1] = Math.max(last[1], to)
    else joined.push([from, to])
  }
  return joined
}

/** Underside of the card as points from the left: it rests on the pins that it stops. */
const underside = (view: PinsView): [number, number][] => {
  const { layout, columns } = view
  const rest = ({ height, fits }: ColumnView): number =>
    fits || height > middle ? dimensions.pinLow : height
  const nodes = columns.map((column): [number, number] => [column.x, levelY(layout, rest(column))])
  const far = 2 * columnPitch(layout)
  return [[layout.left - far, nodes[0]?.[1] ?? 0], ...nodes, [rightOf(layout) + far, nodes.at(-1)?.[1] ?? 0]]
}

const heightAt = (line: readonly [number, number][], x: number): number => {
  const next = line.findIndex(([at]) => at >= x)
  const [before, after] = [line[Math.max(0, next - 1)], line[next]]
  if (!before || !after || after[0] === before[0]) return after?.[1] ?? 0
  return before[1] + ((after[1] - before[1]) * (x - before[0])) / (after[0] - before[0])
}

const pieceOf = (line: readonly [number, number][], from: number, to: number, thick: number): string => {
  const between = line.filter(([x]) => x > from && x < to)
  const under: [number, number][] = [[from, heightAt(line, from)], ...between, [to, heightAt(line, to)]]
  return outline([...under, ...under.map(([x, y]): [number, number] => [x, y - thick]).reverse()])
}

/** The card cut along the row of pins, with a gap at each hole. */
export const drawCardSection = (root: Group, view: PinsView): void => {
  const { layout, frame, prefix } = view
  const line = underside(view)
  const thick = cardThickness * layout.perMm
  const gaps = gapsOf(view)
  const edges = [line[0]?.[0] ?? 0, ...gaps.flat(), line.at(-1)?.[0] ?? 0]
  const hasCard = frame.pass.row !== null
  let path = ''
  for (let n = 0; hasCard && n + 1 < edges.length; n += 2) {
    const [from = 0, to = 0] = [edges[n], edges[n + 1]]
    if (to - from > 0.5) path += pieceOf(line, from, to, thick)
  }
  drawShape(root, 'path', 'card-cut', { d: path, fill: hatch(prefix, 'cut') })
  drawShape(root, 'path', 'card-wrong', {
    d: view.columns
      .filter((column) => column.isWrong || pierces(column) || (column.isHole && !column.fits))
      .map((column) => {
        const half = (dimensions.hole / 2) * layout.perMm
        const [from, to] = cutOf(view, column) ?? [column.x - half, column.x + half]
        if (column.isWrong && !column.isHole) return pieceOf(line, from, to, thick)
        const [left, right] =
          pierces(column) && !column.isHole ? [column.x - half / 2, column.x + half / 2] : [from, to]
        const top = heightAt(line, left) - thick
        return `M${px(left)},${px(top + thick + 3)}V${px(top - 3)}M${px(right)},${px(top + thick + 3)}V${px(top - 3)}`
      })
      .join(''),
    fill: hatch(prefix, 'broken'),
  })
}

/** Half the tooth's length at its lower edge as new and at the belt, and the belt's height, in mm. */
const tooth = {
  flat: dimensions.sweepFlat * dimensions.pitch,
  full: sweepEnd * dimensions.pitch,
  belt: 3.75,
}

/** The most in mm that the drawing has room for above the datum. */
const ceiling = 4.1

/** Height of the sweep's edge as it is drawn: on the sheet, however worn. */
export const drawnEdge = (edge: number): number => Math.min(edge, ceiling)

const toothHalf = (height: number): number =>
  tooth.flat +
  ((tooth.full - tooth.flat) * (height - dimensions.sweepEdge)) / (tooth.belt - dimensions.sweepEdge)

/** The piece of a tooth between two heights in mm, with its middle at `x`. */
const toothPiece = (view: PinsView, x: number, low: number, high: number): string => {
  const { perMm } = view.layout
  const [narrow, broad] = [toothHalf(low) * perMm, toothHalf(high) * perMm]
  const [bottom, top] = [levelY(view.layout, low), levelY(view.layout, high)]
  return outline([
    [x - broad, top],
    [x + broad, top],
    [x + narrow, bottom],
    [x - narrow, bottom],
  ])
}

/** The sweep's teeth, 24 columns apart: the plate whose lower edge takes the high pins along. */
export const drawSweep = (root: Group, view: PinsView): void => {
  const { layout, frame, first, prefix } = view
  const middles = [-1, 0, 1].map((turn) => columnX(layout, first, frame.sweepAt + turn * dimensions.columns))
  const far = toothHalf(tooth.belt) * layout.perMm
  const seen = middles.filter((x) => x > layout.left - far && x < rightOf(layout) + far)
  const edge = Math.min(drawnEdge(frame.condition.sweepEdge), tooth.belt)
  const y = levelY(layout, tooth.belt)
  drawShape(root, 'path', 'belt-line', {
    d: `M${layout.left - 20},${px(y - 4)}H${px(rightOf(layout) + 20)}M${layout.left - 20},${px(y)}H${px(rightOf(layout) + 20)}`,
  })
  drawShape(root, 'path', 'sweep-tooth', {
    d: seen.map((x) => toothPiece(view, x, edge, tooth.belt)).join(''),
    'data-look': view.broken.has('sweep') || view.broken.has('belt') ? 'broken' : '',
    'data-part': 'sweep',
  })
  const isWorn = edge - dimensions.sweepEdge > 0.01
  drawShape(root, 'path', 'sweep-worn', {
    d: isWorn ? seen.map((x) => toothPiece(view, x, dimensions.sweepEdge, edge)).join('') : '',
    fill: hatch(prefix, 'broken'),
  })
}
