import { type SceneKind, sceneKinds, type SceneStep } from '../../words/figures/scene-step.ts'
import { stretchNeedles } from './machine/needles.ts'
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

/** The needle that a step follows, by its count in the stretch from 1; null where it follows none that is drawn. */
const orderOf = ({ subject }: SceneStep): number | null => {
  if (subject?.kind !== 'needle' && subject?.kind !== 'catch') return null
  const order = stretchNeedles.indexOf(subject.needle) + 1
  return order === 0 ? null : order
}

/** A view cut beside a needle, or with that needle among those that are there. */
const atNeedle = (view: SceneView, order: number): Partial<SceneView> => {
  if (view.section) return sectionBeside(order)
  const { needles } = view
  return needles ? { needles: (other) => other === order || needles(other) } : {}
}

/** The view that a step shows: a named view, at the needle that the step follows, with the kinds of part that are there. */
export const viewOfStep = (step: SceneStep): SceneView => {
  const whole = sceneViews[step.view]
  const order = orderOf(step)
  const here = order === null ? whole : { ...whole, ...atNeedle(whole, order) }
  if (step.layers === null) return here
  return {
    ...here,
    layers: [...new Set(step.layers.flatMap((kind) => layersOf[kind]))],
    named: step.layers.flatMap((kind) => sceneKinds[kind]),
  }
}
