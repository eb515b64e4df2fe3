import { columnOfNeedle, stripOfNeedle } from '../../mechanism/bed.ts'
import type { Maker } from '../question.ts'
import { ownRow, rowPicture, textOf, underPresser, namesOf, rowWith, wayWord } from '../scene.ts'
import { shuffledOrder } from './sequence.ts'
import { travelOver } from './travel-over.ts'

const most = 5

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
