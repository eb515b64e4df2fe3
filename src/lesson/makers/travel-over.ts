import { wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Kit } from '../question.ts'
import { indexesOf, someStretch } from '../scene.ts'

const { columns } = dimensions

/** A stretch of 24 needles anywhere, and the way that the carriage goes over it. */
export const travelOver = ({ draw }: Kit) => {
  const stretch = someStretch(draw, columns, 4)
  const pass = draw.whole(1, 2)
  const way = wayOfPass(pass)
  return { stretch, pass, way, along: way === 1 ? indexesOf(stretch) : indexesOf(stretch).reverse() }
}
