import { partsOf, type SceneKind, sceneKinds, type SceneStep } from '../../words/figures/scene-step.ts'
import type { Extent } from './engine/extent.ts'
import { stretchNeedles } from './machine/needles.ts'
import { type NumberedPart, numberedNames } from '../../words/numbered-parts.ts'
import type { Layer } from './machine/part.ts'
import { columnsOf } from './tip-measures.ts'
import { alongOf, rowAt, sectionBeside, type SceneView, sceneViews, tipsOf } from './views.ts'

/** The layers that each kind of part of a step brings. */
const layersOf: Readonly<Record<SceneKind, readonly Layer[]>> = {
  bed: ['bed'],
  needles: ['needles', 'shanks'],
  carriage: ['carriage'],
  card: ['card'],
  feed: ['feed'],
  reader: ['frame'],
  pins: ['pins'],
  springs: [],
  sweep: ['sweep'],
  rockers: ['rockers'],
  plate: ['plate'],
  strips: ['strips'],
  spurs: [],
  guides: [],
  retainer: ['retainer'],
  deck: ['deck'],
  presser: ['cams'],
  gates: ['cams'],
}

/** What is left out of the layers until a step says that it is there: parts come in the order in which they push. */
const comesWith: Readonly<Partial<Record<NumberedPart, SceneKind>>> = {
  'leaf-spring': 'springs',
  'lift-spring': 'springs',
  'draw-bar': 'springs',
  guide: 'guides',
  'return-spring': 'guides',
  'butt-spring': 'spurs',
  presser: 'presser',
  'gate.1': 'gates',
  'gate.2': 'gates',
  'leading-cam': 'gates',
}

/** The parts that have not come yet. */
const notYet = (layers: readonly SceneKind[]): ReadonlySet<NumberedPart> =>
  new Set(
    numberedNames.filter((name) => {
      const kind = comesWith[name]
      return kind !== undefined && !layers.includes(kind)
    }),
  )

/** The needles of which a step speaks, by their count in the stretch from 1, the subject first, as far as they are drawn. */
const ordersOf = (step: SceneStep): number[] =>
  partsOf(step).flatMap((part) => {
    if (part.kind !== 'needle' && part.kind !== 'catch') return []
    const order = stretchNeedles.indexOf(part.needle) + 1
    return order === 0 ? [] : [order]
  })

/** What fills a step's picture of the bed cut across: where butts are sorted, with the retainer bar where it is there. */
const sortingAt = (layers: SceneStep['layers']): Extent => ({
  least: [0, layers?.includes('retainer') === true ? -28 : -22, -94],
  most: [0, 50, -52],
})

/**
 * A view at the parts of which a step speaks: cut beside the first of its needles, cut off beside them all, or with all of
 * them among those that are there.
 */
const atParts = (step: SceneStep): Partial<SceneView> => {
  const orders = ordersOf(step)
  const [first] = orders
  const { needles } = sceneViews[step.view]
  const columns = columnsOf(step)
  const [column] = columns
  if (step.view === 'row') return column === undefined ? {} : rowAt(column)
  if (step.view === 'tips') return columns.length > 0 ? tipsOf(columns) : {}
  if (first === undefined) return {}
  // With a strip's catches one sees how far the presser reaches, too.
  if (step.view === 'along') return alongOf(orders, step.subject?.kind === 'strip' ? 1.4 : 0)
  if (step.view === 'across') return { ...sectionBeside(first), filledBy: sortingAt(step.layers) }
  return needles ? { needles: (other) => orders.includes(other) || needles(other) } : {}
}

/** The view that a step shows: a named view, at the needles of which it speaks, with the kinds of part that are there. */
export const viewOfStep = (step: SceneStep): SceneView => {
  const whole = { ...sceneViews[step.view], format: 'tall' } as const
  const here = { ...whole, ...atParts(step) }
  if (step.layers === null) return here
  return {
    ...here,
    layers: [...new Set(step.layers.flatMap((kind) => layersOf[kind]))],
    without: notYet(step.layers),
    named: step.layers.flatMap((kind) => sceneKinds[kind]),
  }
}
