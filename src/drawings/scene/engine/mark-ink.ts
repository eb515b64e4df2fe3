import type { PicturePoint } from '../../shared/paths.ts'
import { type Camera, project } from './camera.ts'
import type { MarkLook, Pen } from './pen.ts'
import type { Mark } from './piece.ts'

const isWhole = ({ look, open = [] }: Mark): boolean => look === 'hole' && open.length === 0

/** Draws what is on a face: holes, openings and lines. */
export const drawMarks = (camera: Camera, marks: readonly Mark[], pen: Pen): void => {
  const loopOf = ({ points }: Mark): PicturePoint[] => points.map((point) => project(camera, point))
  const draw = (look: MarkLook, found: readonly Mark[]): void => {
    if (found.length > 0) pen.mark(look, found.map(loopOf))
  }
  const parts = marks.filter((mark) => mark.look === 'hole' && !isWhole(mark))
  for (const kind of ['opening', 'torn', 'blocked'] as const)
    draw(
      kind,
      marks.filter(({ look }) => look === kind),
    )
  draw('rim', marks.filter(isWhole))
  draw('hole', parts)
  const lines = [...parts, ...marks.filter(({ look }) => look === 'line')].flatMap((mark) => {
    const loop = loopOf(mark)
    return loop.flatMap((from, k): PicturePoint[] => {
      const to = loop[k + 1] ?? (mark.look === 'hole' ? loop[0] : undefined)
      return to && !mark.open?.includes(k) ? [from, to] : []
    })
  })
  if (lines.length > 0) pen.lines('mark', lines)
}
