import { type Camera, projectAll } from './camera.ts'
import { joinedCourses } from './course.ts'
import type { Course, MarkLook, Pen, Places } from './pen.ts'
import { flat, type Mark } from './piece.ts'

/** What is on a face, as it is drawn: it never changes. */
interface Known {
  readonly points: Float64Array
  readonly places: Places
  readonly holes: readonly (readonly [look: MarkLook, loops: readonly Course[]])[]
  readonly lines: readonly Course[]
}

const isWhole = ({ look, open = [] }: Mark): boolean => look === 'hole' && open.length === 0

const read = (marks: readonly Mark[]): Known => {
  let count = 0
  const courses = new Map(
    marks.map((mark) => {
      const start = count
      count += mark.points.length
      return [mark, mark.points.map((_, n) => start + n)] as const
    }),
  )
  const loopsOf = (found: readonly Mark[]): Course[] => found.map((mark) => courses.get(mark)!)
  const parts = marks.filter((mark) => mark.look === 'hole' && !isWhole(mark))
  const holes: readonly (readonly [MarkLook, readonly Course[]])[] = [
    ...(['opening', 'torn', 'blocked'] as const).map(
      (kind) => [kind, loopsOf(marks.filter(({ look }) => look === kind))] as const,
    ),
    ['rim', loopsOf(marks.filter(isWhole))],
    ['hole', loopsOf(parts)],
  ]
  const lines = [...parts, ...marks.filter(({ look }) => look === 'line')].flatMap((mark) => {
    const loop = courses.get(mark)!
    return loop.flatMap((from, k): Course => {
      const to = loop[k + 1] ?? (mark.look === 'hole' ? loop[0] : undefined)
      return to !== undefined && !mark.open?.includes(k) ? [from, to] : []
    })
  })
  return {
    points: flat(marks.flatMap(({ points }) => points)),
    places: new Float64Array(2 * count),
    holes: holes.filter(([, loops]) => loops.length > 0),
    lines: joinedCourses(lines),
  }
}

const known = new WeakMap<readonly Mark[], Known>()

/** Draws what is on a face: holes, openings and lines. */
export const drawMarks = (camera: Camera, marks: readonly Mark[], pen: Pen): void => {
  const found = known.get(marks) ?? read(marks)
  known.set(marks, found)
  const { points, places, holes, lines } = found
  projectAll(camera, points, places)
  for (const [look, loops] of holes) pen.mark(look, places, loops)
  if (lines.length > 0) pen.lines('mark', places, lines)
}
