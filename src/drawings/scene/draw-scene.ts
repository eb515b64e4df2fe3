import { drawList, type Group } from '../shared/svg.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { batched } from './engine/batch.ts'
import { type Camera, enlarged, projectAll } from './engine/camera.ts'
import { pairedCourses } from './engine/course.ts'
import { inkFor } from './engine/ink.ts'
import type { Drawn } from './engine/leaf.ts'
import { walk } from './engine/order.ts'
import type { Pen } from './engine/pen.ts'
import { flat } from './engine/piece.ts'
import { type SvgLook, svgPen, type SvgPath } from './engine/svg-pen.ts'
import { type PictureSize, visibleIn } from './engine/visible.ts'
import type { MachinePiece } from './machine/part.ts'
import { drawnOf, type Scene } from './scene.ts'

/** What a picture brings out of the machine. */
export interface Marked {
  /** The part that is lit. */
  readonly lit: NumberedPart | null
  /** Which pieces have full ink, where the others have a third of it; all where it is null. */
  readonly path: ((piece: MachinePiece) => boolean) | null
}

/** Nothing brought out. */
export const unmarked: Marked = { lit: null, path: null }

/** The classes of a piece in the styles: whether its ink is faint, and what it is made of, or how it is marked. */
const lookOf = (piece: MachinePiece, { lit, path }: Marked): string => {
  if (piece.name === lit) return 'lit'
  const look = piece.mood === 'plain' ? piece.material : piece.mood
  return path === null || piece.mood === 'broken' || path(piece) ? look : `faint ${look}`
}

/** The looks of the pieces of a machine, and for what they were found. */
interface Looks extends Marked {
  readonly looks: readonly string[]
}

const known = new WeakMap<readonly MachinePiece[], Looks>()

/** The look of each piece: it is the same while the machine turns. */
const looksOf = ({ pieces }: Scene, { lit, path }: Marked): readonly string[] => {
  const last = known.get(pieces)
  if (last?.lit === lit && last.path === path) return last.looks
  const looks = pieces.map((piece) => lookOf(piece, { lit, path }))
  known.set(pieces, { lit, path, looks })
  return looks
}

/** Draws pieces of a scene with a pen; `onLook` is called before each with its classes. */
const inkOf = (
  scene: Scene,
  camera: Camera,
  pen: Pen,
  marked: Marked,
  onLook: (look: string) => void,
): ((drawn: Drawn) => void) => {
  const ink = inkFor(camera, pen)
  const looks = looksOf(scene, marked)
  return ({ piece, shape }) => {
    onLook(looks[piece]!)
    const { mood, name } = scene.pieces[piece]!
    ink(shape, mood === 'broken' && name !== marked.lit)
  }
}

/** Draws the lines that join what is taken apart, over all of it. */
const inkLines = ({ lines }: Scene, camera: Camera, pen: Pen): void => {
  if (lines.length === 0) return
  const places = new Float64Array(4 * lines.length)
  projectAll(camera, flat(lines.flat()), places)
  pen.lines('axis', places, pairedCourses(lines.length))
}

/** Draws a scene with a pen, from the back to the front; `onLook` is called before each piece with its classes. */
export const inkScene = (
  scene: Scene,
  camera: Camera,
  pen: Pen,
  marked: Marked,
  onLook: (look: string) => void,
): void => {
  walk(scene.posed, camera, inkOf(scene, camera, pen, marked, onLook))
  inkLines(scene, camera, pen)
}

/** The paths of some pieces of a scene, each piece's look before the tone; in a still what is faint has few words. */
const pathsOf = (
  scene: Scene,
  camera: Camera,
  marked: Marked,
  drawn: readonly Drawn[],
  look: SvgLook,
  isStill = false,
): SvgPath[] => {
  const paths: SvgPath[] = []
  let piece = ''
  const isFaint = (): boolean => piece.startsWith('faint ')
  const pen = svgPen(isStill ? { ...look, isFaint } : look, (path) => {
    const isToned = /^(?:t\d|s-wire|w-line)$/.test(path.look)
    const before = isToned ? `${piece} ` : isFaint() ? 'faint ' : ''
    paths.push({ ...path, look: before + path.look })
  })
  const ink = inkOf(scene, camera, pen, marked, (now) => {
    piece = now
  })
  for (const each of drawn) ink(each)
  inkLines(scene, camera, pen)
  return paths
}

/** Draws a scene as paths of a group. */
export const drawScene = (group: Group, scene: Scene, camera: Camera, marked: Marked): void => {
  group.style('--line-wide', camera.line)
  drawList(
    group,
    'path',
    pathsOf(scene, camera, marked, drawnOf(scene, camera), { line: camera.line, grain: 0.1 }),
    ({ look, d }) => ({
      class: look,
      d,
    }),
  )
}

/** How many times as large stills are written, so that their corners are whole numbers, half a pixel fine. */
export const stillTimes = 2

/**
 * Draws what one sees of a scene in a picture of this size, and nothing that is hidden or outside it: `stillTimes` as
 * large, as stills are written.
 */
export const drawSeen = (
  group: Group,
  scene: Scene,
  camera: Camera,
  size: PictureSize,
  marked: Marked = unmarked,
  grain = 1,
): void => {
  const drawn = drawnOf(scene, camera)
  const visible = visibleIn(camera, drawn, size)
  const shown = drawn.filter((each) => visible.has(each))
  const large = enlarged(camera, stillTimes)
  group.style('--line-wide', large.line)
  const look = {
    line: large.line,
    grain,
    size: { width: size.width * stillTimes, height: size.height * stillTimes },
  }
  drawList(group, 'path', batched(pathsOf(scene, large, marked, shown, look, true)), ({ look, d, wide }) => ({
    class: look,
    d,
    ...(wide === undefined ? {} : { 'stroke-width': wide }),
  }))
}
