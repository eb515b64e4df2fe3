import { type Fault, isHoleFault, partOfFault } from '../../mechanism/fault.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import type { Column, Needle } from '../../mechanism/indices.ts'
import { partOf } from '../../mechanism/part.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { FaultPlace } from '../../words/figures/fault-scene.ts'
import type { View } from './engine/camera.ts'
import type { Vector } from './engine/vector.ts'
import type { Layer } from './machine/part.ts'
import { columnAt, needleAt } from './machine/places.ts'
import type { Pose } from './machine/pose.ts'
import { type SceneView, sceneViews } from './views.ts'

/** How the picture of a fault is taken: close to the part that is broken, from the side from which a person sees it. */
export interface FaultView extends SceneView {
  readonly place: FaultPlace
  /** How many mm of the machine the picture is wide. */
  readonly across: number
  /** How far the carriage is past the needle that examples are about, in needles, the way it goes. */
  readonly past: number
  /** Where the carriage is, in needles, where that is elsewhere. */
  readonly at: number | null
}

const reader = sceneViews.behind.layers
const bed = sceneViews.bed.layers

const from = (turned: number, raised: number): View => ({ turned, raised, zoom: 100 })

const place = (
  view: View,
  layers: readonly Layer[],
  across: number,
  named: readonly NumberedPart[],
  more: Partial<Pick<FaultView, 'past' | 'needles'>> = {},
): Omit<FaultView, 'place'> => ({
  view,
  layers,
  model: 'stretch',
  format: 'tall',
  drawnOut: 0,
  across,
  named,
  filledBy: null,
  sections: [],
  needles: null,
  past: 0,
  at: null,
  ...more,
})

/** From where each place of the machine is seen that something may break at. */
const places: Readonly<Record<FaultPlace, Omit<FaultView, 'place'>>> = {
  card: place(from(20, 48), ['card', 'feed', 'frame'], 104, ['card', 'card-guide', 'drum', 'top-plate']),
  hole: place(from(20, 48), ['card', 'feed', 'frame', 'pins'], 64, ['card', 'pin', 'top-plate']),
  pins: place(from(26, 20), reader, 40, ['pin', 'top-plate', 'card', 'rocker']),
  leaf: place(from(20, 2), ['pins', 'frame', 'card', 'rockers'], 34, ['leaf-spring', 'pin', 'rocker']),
  rockers: place(from(26, 20), reader, 48, ['rocker', 'rail', 'pin', 'plate']),
  sweep: place(from(22, 14), reader, 58, ['sweep', 'pin', 'belt']),
  belt: place(from(26, 30), ['sweep', 'card', 'feed', 'cheek'], 184, ['belt', 'wheel', 'sweep', 'card']),
  lever: place(from(-52, 16), ['sweep', 'card', 'feed', 'frame'], 84, ['lever', 'wheel', 'cheek']),
  mark: {
    ...place(from(22, 32), ['carriage', 'needles', 'bed', 'deck', 'retainer', 'belt'], 230, [
      'turn-mark',
      'carriage',
      'needle',
    ]),
    model: 'whole',
    at: 207,
  },
  pawls: place(from(58, 16), ['sweep', 'card', 'feed', 'cheek', 'frame'], 62, ['pawl', 'drum', 'cheek']),
  carriage: place(
    from(22, -40),
    ['carriage', 'cams', 'needles'],
    118,
    ['carriage', 'presser', 'gate.1', 'gate.2'],
    { needles: (order) => order % 4 === 0, past: 2 },
  ),
  cams: place(from(22, -40), ['carriage', 'cams', 'needles'], 74, ['presser', 'gate.1', 'gate.2', 'butt'], {
    needles: (order) => order % 3 === 0,
    past: 2,
  }),
  strips: place(from(30, 38), bed, 76, ['strip', 'catch', 'return-spring', 'butt']),
  butts: place(from(24, 34), ['strips', 'needles', 'shanks', 'bed'], 44, ['catch', 'butt', 'spur', 'strip']),
  retainer: place(from(30, 24), ['needles', 'shanks', 'bed', 'retainer'], 78, ['retainer', 'needle', 'butt']),
}

/** Where each kind of fault is seen; null for what is done, and no part of the machine. */
const placeOfKind: Readonly<Record<FaultKindName, FaultPlace | null>> = {
  'card.torn': 'hole',
  'card.blocked': 'hole',
  'card.side': 'card',
  'card.skew': 'card',
  'card.reversed': 'card',
  'card.locked': 'card',
  'pawl.skips': 'pawls',
  'pawl.jumps': 'pawls',
  'turn.twice': 'lever',
  'pawl.right': 'pawls',
  'pawl.left': 'pawls',
  'pawl.double': 'pawls',
  'turn.short': 'mark',
  'pin.low': 'pins',
  'pin.high': 'pins',
  'pin.sticky': 'pins',
  'pin.over': 'leaf',
  'sweep.worn': 'sweep',
  'belt.off': 'belt',
  'belt.timing': 'belt',
  'belt.slack': 'belt',
  'pivots.loose': 'rockers',
  'rocker.dead': 'rockers',
  'rocker.worn': 'rockers',
  'strip.seized': 'strips',
  'strip.over': 'strips',
  'strip.slow': 'strips',
  'carriage.plain': 'carriage',
  'catch.broken': 'butts',
  'needle.bent': 'butts',
  'needle.stiff': 'butts',
  'needle.gone': 'butts',
  'retainer.worn': 'retainer',
  'presser.right.worn': 'cams',
  'presser.left.worn': 'cams',
  'gate.1.low': 'cams',
  'gate.1.high': 'cams',
}

/** The view of a kind of fault; null where no part of the machine is broken. */
export const faultViewOf = (kind: FaultKindName): FaultView | null => {
  const at = placeOfKind[kind]
  return at === null ? null : { ...places[at], place: at }
}

/** The column and the needle that a fault is at; the middle ones where it is at none. */
const whereOf = (fault: Fault): { column: Column | number; needle: Needle | number } => {
  const part = partOf(partOfFault(fault))
  const [column, needle] = [12.5, 111.5]
  if (isHoleFault(fault)) return { column: fault.at[1], needle }
  return {
    column: 'column' in part ? part.column : column,
    needle: 'needle' in part ? part.needle : needle,
  }
}

/** The middle of the picture of a place, where the fault is in this column or at this needle. */
export const middleOf = (place: FaultPlace, { frame }: Pose, fault: Fault): Vector => {
  const { column, needle } = whereOf(fault)
  switch (place) {
    case 'card':
      return [24, 38, 8]
    case 'hole':
      return [columnAt(column), 35, 3.4]
    case 'pins':
      return [columnAt(column), 22, -5]
    case 'leaf':
      return [columnAt(column) - 1, 20, -8]
    case 'rockers':
      return [columnAt(column), 18, -42]
    case 'sweep':
      return [columnAt(frame.sweepAt), 20, 7]
    case 'belt':
      return [0, 30, 12]
    case 'lever':
      return [-65, 34, -20]
    case 'mark':
      return [needleAt(199) + 40, -4, -70]
    case 'pawls':
      return [65, 40, 0]
    case 'carriage':
    case 'cams':
      return [needleAt(frame.x), -6, -66]
    case 'strips':
      return [26, 20, -78]
    case 'butts':
      // A broken catch has left a stump at its strip, behind the butts.
      return [needleAt(needle), fault.kind === 'catch.broken' ? 14 : 6, -74]
    case 'retainer':
      return [16, -24, -76]
  }
}
