import { columnOfNeedle, needleName, stripOfNeedle, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Kit, Maker } from '../question.ts'
import {
  ownRow,
  rowPicture,
  textOf,
  underPresser,
  indexesOf,
  namesOf,
  rowWith,
  someStretch,
  wayWord,
} from '../scene.ts'
import { shuffledOrder } from './sequence.ts'

const { columns } = dimensions
const most = 5

/** A stretch of 24 needles anywhere, and the way that the carriage goes over it. */
const travelOver = ({ draw }: Kit) => {
  const stretch = someStretch(draw, columns, 4)
  const pass = draw.whole(1, 2)
  const way = wayOfPass(pass)
  return { stretch, pass, way, along: way === 1 ? indexesOf(stretch) : indexesOf(stretch).reverse() }
}

/** The order in which the sweep meets columns. */
export const sweepOrder: Maker = (kit) => {
  const { stretch, pass, way, along } = travelOver(kit)
  const scene = { pass }
  return shuffledOrder(kit, {
    prompt: `The carriage moves ${wayWord(way)} over the needles ${namesOf(stretch)}. R1 is column 1. In which order does the sweep meet these columns?`,
    scene,
    steps: kit.draw.some(along, most).map((index) => ({
      id: String(columnOfNeedle(index)),
      label: `Column ${columnOfNeedle(index)}`,
      why: `moving ${wayWord(way)} the carriage comes to its needle ${needleName(index)} sooner`,
      show: textOf(kit.library, underPresser(scene, index)),
    })),
    because: `Moving ${wayWord(way)}, the sweep is at a column just when the presser is at its needle.`,
    show: underPresser(scene, along[0]!),
  })
}

/** The order in which strips shift. */
export const stripOrder: Maker = (kit) => {
  const { stretch, pass, way, along } = travelOver(kit)
  const first = kit.draw.shuffled(along)
  const holes = along.filter(
    (index) => first.find((one) => stripOfNeedle(one) === stripOfNeedle(index)) === index,
  )
  const some = kit.draw.some(holes, most)
  const row = rowWith(some.map(columnOfNeedle))
  const scene = { card: ownRow(row), pass }
  return shuffledOrder(kit, {
    prompt: `The carriage moves ${wayWord(way)} over the needles ${namesOf(stretch)}. R1 is column 1. In which order do these strips shift?`,
    scene,
    pictures: [rowPicture([row], 1)],
    steps: some.map((index) => ({
      id: String(stripOfNeedle(index)),
      label: `Strip ${stripOfNeedle(index)}`,
      why: `moving ${wayWord(way)} the sweep comes to column ${columnOfNeedle(index)}, its only hole, sooner`,
      show: textOf(kit.library, underPresser(scene, index)),
    })),
    because: `The strips shift in the order in which the sweep meets their holes, and moving ${wayWord(way)} that is the needles’ own order.`,
    show: underPresser(scene, some[0]!),
  })
}
