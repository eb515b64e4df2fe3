import { type Float, hasKnitted, longFloats, type Stitch } from '../../mechanism/fabric.ts'
import { slotOf } from '../../mechanism/indices.ts'
import { at, lastOf } from '../../mechanism/lookup.ts'
import { hatch } from '../shared/definitions.ts'
import { hasChanged } from '../shared/memo.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { type FabricView, stitchX } from './view.ts'

/** One row of fabric in the window. */
export interface Row {
  readonly pass: number
  /** Every needle's stitch, from the left end of the bed. */
  readonly stitches: readonly Stitch[]
  /** Needles of the window that have knitted it, and those of them whose stitch is not the one asked for. */
  readonly knitted: readonly number[]
  readonly wrong: readonly number[]
  readonly top: number
  /** Whether it is knitted on all needles of the window, and stays as it is. */
  readonly isWhole: boolean
}

/** A row as it was last shown, known by its key and the stitches asked for; it goes with its stitches. */
interface Shown {
  readonly key: string
  readonly wanted: readonly Stitch[]
  readonly row: Row
}
const shown = new WeakMap<readonly Stitch[], Shown>()

/** The rows of one fabric in the window, the newest first. A row that is as it was is the same object as before. */
export const rowsOf = (
  view: FabricView,
  top: number,
  cloth: readonly (readonly Stitch[])[],
  asked: readonly (readonly Stitch[])[],
): Row[] => {
  const { bed } = view.run.condition
  const { x, pass: present } = view.frame
  const inBed = view.indexes.filter((index) => index >= bed.first && index <= bed.last)
  const inPresent = inBed.filter((index) => hasKnitted(x, index, present.way))
  return view.passes.map((pass, n) => {
    const stitches = at(cloth, n)
    const wanted = at(asked, n)
    const isWhole = pass < present.pass
    const knitted = isWhole ? inBed : inPresent
    const place = top + n * view.layout.stitch.height
    const key = `${view.layout.shape} ${view.from} ${view.indexes.length} ${place} ${view.floatLimit} ${isWhole} ${knitted.length} ${knitted[0]}`
    const before = shown.get(stitches)
    if (before?.key === key && before.wanted === wanted) return before.row
    const wrong = knitted.filter((index) => stitchAt(stitches, index) !== stitchAt(wanted, index))
    const row = { pass, stitches, knitted, wrong, top: place, isWhole }
    shown.set(stitches, { key, wanted, row })
    return row
  })
}

/** The stitch of a needle, by its index, in a row of the whole bed. */
const stitchAt = (stitches: readonly Stitch[], index: number): Stitch | undefined =>
  stitches[slotOf(index, stitches.length)]

/** Runs of neighbours among needles, as first and last. */
const runs = (indexes: readonly number[]): [number, number][] => {
  const found: [number, number][] = []
  for (const index of indexes) {
    const last = found.at(-1)
    if (last && index === last[1] + 1) last[1] = index
    else found.push([index, index])
  }
  return found
}

/** The legs of a row's stitches of one kind: each a V whose foot is in the row below. */
const legs = (view: FabricView, row: Row, stitch: Stitch): string => {
  const { width, height } = view.layout.stitch
  const [side, half, deep] = [width * 0.2, width * 0.3, height * 0.92]
  const [down, across, up] = [px(deep * 0.65), px(half), px(deep * 0.35)]
  const leg = `q${px(half * 0.1)} ${down} ${across} ${px(deep)}q${px(half * 0.9)}-${up} ${across}-${px(deep)}`
  return runs(row.knitted.filter((index) => stitchAt(row.stitches, index) === stitch))
    .map(([first, last]) => {
      const start = `M${px(stitchX(view, first) + side)},${px(row.top + height * 0.06)}`
      return (
        start +
        Array<string>(last - first + 1)
          .fill(leg)
          .join(`m${px(2 * side)} 0`)
      )
    })
    .join('')
}

/** The bars that are in place of stitches where a needle never knits: a ladder. */
const rungs = (view: FabricView, row: Row): string => {
  const { width, height } = view.layout.stitch
  return runs(row.knitted.filter((index) => stitchAt(row.stitches, index) === 'none'))
    .map(([first, last]) => {
      const y = px(row.top + height / 2)
      return `M${px(stitchX(view, first))},${y}h${px((last - first + 1) * width)}`
    })
    .join('')
}

const boxes = (view: FabricView, row: Row, indexes: readonly number[]): string => {
  const { width, height } = view.layout.stitch
  return runs(indexes)
    .map(([first, last]) => {
      const wide = px((last - first + 1) * width)
      return `M${px(stitchX(view, first))},${px(row.top)}h${wide}v${height}h${-wide}Z`
    })
    .join('')
}

/** The outline round all that differs, without lines between neighbours. */
const outlines = (view: FabricView, rows: readonly Row[]): string => {
  const { width, height } = view.layout.stitch
  const within = rows.map(({ wrong }) => new Set(wrong))
  let path = ''
  for (const [n, row] of rows.entries())
    for (const index of row.wrong) {
      const x = px(stitchX(view, index))
      const right = px(stitchX(view, index) + width)
      if (!within[n - 1]?.has(index)) path += `M${x},${px(row.top)}h${width}`
      if (!within[n + 1]?.has(index)) path += `M${x},${px(row.top + height)}h${width}`
      if (!within[n]?.has(index - 1)) path += `M${x},${px(row.top)}v${height}`
      if (!within[n]?.has(index + 1)) path += `M${right},${px(row.top)}v${height}`
    }
  return path
}

const strand = (view: FabricView, row: Row, float: Float): string => {
  const { width, height } = view.layout.stitch
  const y = px(row.top + height * 0.6)
  const from = px(stitchX(view, float.first) - width * 0.25)
  const to = px(stitchX(view, float.last) + width * 1.25)
  return `M${from},${y}H${to}M${from},${y - 3}v6M${to},${y - 3}v6`
}

/** Long floats of a row whose stitches are all knitted. */
const floatsIn = (view: FabricView, row: Row): Float[] => {
  const [first, last] = [at(view.indexes, 0), lastOf(view.indexes)]
  return row.isWhole
    ? longFloats(row.stitches, view.floatLimit).filter((float) => float.last >= first && float.first <= last)
    : []
}

/** A row's paths, by what they show. */
interface RowPaths {
  readonly behind: string
  readonly rungs: string
  readonly first: string
  readonly second: string
  readonly strands: string
  readonly wrong: string
}

/** The paths of rows, for as long as these are shown as they are. */
const shownPaths = new WeakMap<Row, RowPaths>()

const pathsOf = (view: FabricView, row: Row): RowPaths => {
  const known = shownPaths.get(row)
  if (known) return known
  const paths: RowPaths = {
    behind: boxes(view, row, row.knitted),
    rungs: rungs(view, row),
    first: legs(view, row, 'first'),
    second: legs(view, row, 'second'),
    strands: floatsIn(view, row)
      .map((float) => strand(view, row, float))
      .join(''),
    wrong: boxes(view, row, row.wrong),
  }
  shownPaths.set(row, paths)
  return paths
}

/** Draws a fabric from its rows: what is behind, the two yarns, ladders, floats and differences. */
export const drawFabric = (group: Group, view: FabricView, rows: readonly Row[]): void => {
  if (!hasChanged(group, [view.prefix, ...rows])) return
  const all = rows.map((row) => pathsOf(view, row))
  const draw = (name: string, of: (paths: RowPaths) => string): void => {
    drawShape(group, 'path', name, { d: all.map(of).join('') })
  }
  draw('behind', ({ behind }) => behind)
  draw('rungs', (paths) => paths.rungs)
  // Most of the fabric stays as it is while the newest row is knitted: each row's yarn is a path of its own.
  for (const yarn of ['first', 'second'] as const)
    drawShapes(drawGroup(group, `rows-${yarn}`), 'path', `yarn ${yarn}`, all, (paths) => ({ d: paths[yarn] }))
  draw('float-edge', ({ strands }) => strands)
  draw('float', ({ strands }) => strands)
  draw('wrong', ({ wrong }) => wrong)
  drawShape(group, 'path', 'wrong', { fill: hatch(view.prefix, 'wrong') })
  drawShape(group, 'path', 'wrong-edge', { d: outlines(view, rows) })
}
