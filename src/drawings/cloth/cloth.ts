import { select } from 'd3'
import { askedRow, type Float, knittedRow, longFloats, type Stitch } from '../../mechanism/fabric.ts'
import { at } from '../../mechanism/lookup.ts'
import type { Run } from '../../mechanism/pass.ts'
import { ofNeedle, slotOf } from '../../mechanism/indices.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group, setSize } from '../shared/svg.ts'

/** A whole piece of fabric as it comes out and as it should, row by row over all needles in use. */
export interface Cloth {
  readonly rows: readonly ClothRow[]
}

/** One row of it; the passes before the first knitted nothing that the card asked for. */
interface ClothRow {
  /** The pass that knitted it, from 2. */
  readonly pass: number
  readonly came: readonly Stitch[]
  readonly asked: readonly Stitch[]
  /** Needles whose stitch is not the one asked for. */
  readonly wrong: readonly number[]
  /** Floats behind more stitches than the limit. */
  readonly floats: readonly Float[]
}

/** The most rows that are kept in sight. */
const clothRows = 24

/** The rows that whole passes have knitted up to and with `pass`, the newest first. */
export const clothOf = (run: Run, pass: number, floatLimit: number): Cloth => {
  const { first, last } = run.condition.bed
  const count = Math.max(0, Math.min(clothRows, pass - 1))
  const rows = Array.from({ length: count }, (_, n): ClothRow => {
    const came = knittedRow(run, pass - n)
    const asked = askedRow(run, pass - n)
    const wrong: number[] = []
    for (let index = first; index <= last; index++)
      if (ofNeedle(came, index) !== ofNeedle(asked, index)) wrong.push(index)
    return { pass: pass - n, came, asked, wrong, floats: longFloats(came, floatLimit) }
  })
  return { rows }
}

const width = 344
const rowHeight = 4
const nameHeight = 18
const gap = 10
const deep = clothRows * rowHeight

/** The picture's size in its own pixels. */
export const clothSize = { width, height: 2 * (nameHeight + deep) + gap + 14 }

/** Runs of neighbours that share what `is` asks, as path boxes. */
const boxes = (
  first: number,
  last: number,
  pitch: number,
  y: number,
  is: (index: number) => boolean,
): string => {
  let path = ''
  for (let index = first; index <= last; index++) {
    if (!is(index)) continue
    const from = index
    while (index < last && is(index + 1)) index++
    path += `M${px((from - first) * pitch)},${y}h${px((index - from + 1) * pitch)}v${rowHeight}H${px((from - first) * pitch)}Z`
  }
  return path
}

/** Draws the cloth twice, as it comes out above and as it should be below, with what differs marked. */
export const drawCloth = (svg: SVGSVGElement, cloth: Cloth, bed: { first: number; last: number }): void => {
  setSize(svg, clothSize)
  const root = drawGroup(select<SVGGElement, null>(svg), 'whole-cloth')
  const { first, last } = bed
  const pitch = width / (last - first + 1)
  const tops = [nameHeight, nameHeight + deep + gap + nameHeight]
  drawShapes(root, 'text', 'cloth-name', ['As it comes out', 'As it should be'], (text, n) => ({
    x: 0,
    y: at(tops, n) - 5,
    text,
  }))
  const draw = (group: Group, name: string, d: string): void => {
    drawShape(group, 'path', name, { d })
  }
  const fabric = (name: string, top: number, of: (row: ClothRow) => readonly Stitch[]): Group => {
    const group = drawGroup(root, name)
    const rows = (is: (stitch: Stitch | undefined) => boolean): string =>
      cloth.rows
        .map((row, n) => {
          const stitches = of(row)
          return boxes(first, last, pitch, top + n * rowHeight, (index) =>
            is(stitches[slotOf(index, stitches.length)]),
          )
        })
        .join('')
    drawShape(group, 'rect', 'cloth-ground', { y: top, width, height: deep })
    draw(
      group,
      'cloth-first',
      rows((stitch) => stitch === 'first'),
    )
    draw(
      group,
      'cloth-second',
      rows((stitch) => stitch === 'second'),
    )
    return group
  }
  const [above = 0, below = 0] = tops
  const came = fabric('cloth-came', above, (row) => row.came)
  fabric('cloth-asked', below, (row) => row.asked)
  const marks = cloth.rows.map((row, n) => {
    const isWrong = new Set(row.wrong)
    return boxes(first, last, pitch, above + n * rowHeight, (index) => isWrong.has(index))
  })
  draw(came, 'cloth-wrong', marks.join(''))
  const columns = [...new Set(cloth.rows.flatMap(({ wrong }) => wrong))]
  const foot = above + deep
  draw(
    came,
    'cloth-columns',
    columns.map((index) => `M${px((index - first + 0.5) * pitch)},${foot + 1}l2,5h-4Z`).join(''),
  )
}
