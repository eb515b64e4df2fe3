import { type SceneKind, sceneKinds, type SceneStep } from '../../words/figures/scene-step.ts'
import type { Extent } from './engine/extent.ts'
import { stretchNeedles } from './machine/needles.ts'
import { type NumberedPart, numberedNames } from '../../words/numbered-parts.ts'
import type { Layer } from './machine/part.ts'
import { sectionBeside, type SceneView, sceneViews } from './views.ts'

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
const ordersOf = ({ subject, also }: SceneStep): number[] =>
  [...(subject ? [subject] : []), ...also].flatMap((part) => {
    if (part.kind !== 'needle' && part.kind !== 'catch') return []
    const order = stretchNeedles.indexOf(part.needle) + 1
    return order === 0 ? [] : [order]
  })

/** What fills a step's picture of the bed cut across: where butts are sorted, with the retainer bar where it is there. */
const sortingAt = (layers: SceneStep['layers']): Extent => ({
  least: [0, layers?.includes('retainer') === true ? -28 : -22, -94],
  most: [0, 50, -52],
})

/** A view cut beside the first of these needles, or with all of them among those that are there. */
const atNeedles = ({ section, needles }: SceneView, orders: readonly number[]): Partial<SceneView> => {
  const [first] = orders
  if (first === undefined) return {}
  if (section) return sectionBeside(first)
  return needles ? { needles: (other) => orders.includes(other) || needles(other) } : {}
}

/** The view that a step shows: a named view, at the needles of which it speaks, with the kinds of part that are there. */
export const viewOfStep = (step: SceneStep): SceneView => {
  const whole = { ...sceneViews[step.view], format: 'tall' } as const
  const filledBy = step.view === 'across' ? sortingAt(step.layers) : null
  const here = { ...whole, filledBy, ...atNeedles(whole, ordersOf(step)) }
  if (step.layers === null) return here
  return {
    ...here,
    layers: [...new Set(step.layers.flatMap((kind) => layersOf[kind]))],
    without: notYet(step.layers),
    named: step.layers.flatMap((kind) => sceneKinds[kind]),
  }
}
