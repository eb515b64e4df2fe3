import { columnOfNeedle, columnsOfStrip, stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import type { Condition } from '../../mechanism/condition.ts'
import type { Column, Needle, Strip } from '../../mechanism/indices.ts'
import { type Part, type PartId, partId, partOf } from '../../mechanism/part.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { type Camera, project } from './engine/camera.ts'
import { extentOf } from './engine/extent.ts'
import type { Vector } from './engine/vector.ts'
import type { MachinePiece } from './machine/part.ts'
import type { Scene } from './scene.ts'
import { anywhere, type Meant, pointsSeen, type Sight } from './sight.ts'

/** What belongs to a subject: parts of the model, in the order in which one would look for its flag, and kinds of part. */
interface Path {
  readonly parts: readonly PartId[]
  readonly kinds: readonly NumberedPart[]
  /** The columns whose springs belong to it. */
  readonly columns: readonly Column[]
}

const reading: readonly NumberedPart[] = ['card', 'sweep']
const sorting: readonly NumberedPart[] = ['presser', 'gate.1', 'gate.2']

const ofColumn = (column: Column): PartId[] => [
  partId({ kind: 'pin', column }),
  partId({ kind: 'rocker', column }),
]
const ofStrip = (strip: Strip): PartId => partId({ kind: 'strip', strip })

const ofNeedle = (needle: Needle, condition: Condition): Path => {
  const column = columnOfNeedle(needle, condition)
  return {
    parts: [
      partId({ kind: 'needle', needle }),
      partId({ kind: 'catch', needle }),
      ...ofColumn(column),
      ofStrip(stripOfNeedle(needle, condition)),
    ],
    kinds: [...reading, ...sorting],
    columns: [column],
  }
}

/** The path that a subject is on: from the hole to the needle, or as much of it as the part has to do with. */
const pathOf = (subject: Part, condition: Condition): Path => {
  switch (subject.kind) {
    case 'needle':
      return ofNeedle(subject.needle, condition)
    case 'catch': {
      const path = ofNeedle(subject.needle, condition)
      return { ...path, parts: [partId(subject), ...path.parts] }
    }
    case 'pin':
    case 'rocker':
      return {
        parts: [partId(subject), ...ofColumn(subject.column), ofStrip(stripOfColumn(subject.column))],
        kinds: reading,
        columns: [subject.column],
      }
    case 'strip':
      return {
        parts: [partId(subject), ...columnsOfStrip(subject.strip).flatMap(ofColumn)],
        kinds: ['presser'],
        columns: [],
      }
    case 'sweep':
    case 'belt':
      return { parts: [partId(subject)], kinds: ['sweep', 'belt', 'wheel'], columns: [] }
    case 'gate':
      return { parts: [partId(subject)], kinds: ['butt', 'leading-cam'], columns: [] }
    case 'presser':
      return { parts: ['presser'], kinds: ['butt', 'leading-cam'], columns: [] }
    case 'carriage':
      return { parts: ['carriage'], kinds: ['carriage', ...sorting, 'leading-cam'], columns: [] }
    case 'card':
      return { parts: ['card'], kinds: ['card', 'card-guide', 'pin'], columns: [] }
    case 'pawl':
      return { parts: [partId(subject)], kinds: ['pawl', 'drum', 'card'], columns: [] }
    case 'retainer':
      return { parts: ['retainer'], kinds: ['retainer', 'needle'], columns: [] }
    case 'pivots':
      return { parts: [], kinds: ['rail', 'rocker'], columns: [] }
    case 'turn':
    case 'lever':
      return { parts: [], kinds: ['drum', 'pawl'], columns: [] }
  }
}

const springs: ReadonlySet<NumberedPart> = new Set(['leaf-spring', 'lift-spring'])

/** Which pieces are on a subject's path. */
export const isOnPath = (subject: Part, condition: Condition): ((piece: MachinePiece) => boolean) => {
  const path = pathOf(subject, condition)
  const [parts, kinds] = [new Set(path.parts), new Set(path.kinds)]
  const strip = subject.kind === 'strip' ? subject.strip : null
  return ({ name, part, order }) =>
    (part !== null && parts.has(part)) ||
    kinds.has(name) ||
    (springs.has(name) && path.columns.some((column) => column === order)) ||
    (strip !== null && name === 'catch' && part !== null && isCatchOf(part, strip, condition))
}

const isCatchOf = (part: PartId, strip: Strip, condition: Condition): boolean => {
  const named = partOf(part)
  return named.kind === 'catch' && stripOfNeedle(named.needle, condition) === strip
}

/** Where a subject's flag is planted. */
export interface FlagPlace {
  readonly at: Vector
  /** Whether one sees what it is planted on. */
  readonly isSeen: boolean
}

/** The highest of these points in the picture. */
const highest = (camera: Camera, points: readonly Vector[]): Vector | undefined =>
  points.toSorted((one, other) => project(camera, one)[1] - project(camera, other)[1])[0]

/**
 * Where a subject's flag is planted in a scene: on the subject itself where one sees it, else on the next part of its path
 * that one sees, at a point of the picture that may have it; where none is seen, on the subject behind what hides it. Null where nothing of it is in the scene.
 */
export const flagPlace = (
  scene: Scene,
  camera: Camera,
  subject: Part,
  condition: Condition,
  { drawn, seen }: Sight,
  isPoint: Meant['isPoint'] = anywhere.isPoint,
): FlagPlace | null => {
  const { parts, kinds } = pathOf(subject, condition)
  const groups = [
    ...parts.map((id) => drawn.filter(({ piece }) => scene.pieces[piece]!.part === id)),
    // A strip that is cut away is seen by its catches.
    ...(subject.kind === 'strip'
      ? [
          drawn.filter(({ piece }) => {
            const { name, part } = scene.pieces[piece]!
            return name === 'catch' && part !== null && isCatchOf(part, subject.strip, condition)
          }),
        ]
      : []),
    ...(parts.length === 0 ? kinds : []).map((name) =>
      drawn.filter(({ piece }) => scene.pieces[piece]!.name === name),
    ),
  ].filter((group) => group.length > 0)
  for (const group of groups) {
    const own = new Set(group.map(({ piece }) => piece))
    const at = highest(
      camera,
      pointsSeen(camera, group, (point) => {
        const place = project(camera, point)
        if (!isPoint(place)) return false
        const piece = seen(place)
        return piece !== null && own.has(piece)
      }),
    )
    if (at) return { at, isSeen: true }
  }
  const hidden = highest(
    camera,
    (groups[0] ?? []).map(({ shape }): Vector => {
      const { least, most } = extentOf(shape)
      return [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2, (least[2] + most[2]) / 2]
    }),
  )
  return hidden ? { at: hidden, isSeen: false } : null
}
