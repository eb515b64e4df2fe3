import { dimensions } from '../../mechanism/dimensions.ts'
import type { Kit } from '../question.ts'
import { ownRow, rowWith, type Scene } from '../scene.ts'

const { columns, needles } = dimensions

/** One hole, and the carriage where its needle is let go. */
export const oneHole = ({ draw }: Kit): { column: number; scene: Scene; needle: number } => {
  const column = draw.whole(1, columns)
  const needle = needles / 2 + column - 1
  return { column, needle, scene: { card: ownRow(rowWith([column])), pass: draw.whole(1, 2), at: needle } }
}
