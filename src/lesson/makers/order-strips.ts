import { columnOfNeedle, sideOfWay, stripOfNeedle } from '../../mechanism/bed.ts'
import { at } from '../../mechanism/lookup.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Maker } from '../question.ts'
import { columnOneWords, rangeNames } from '../needle-range.ts'
import { ownRow, rowPicture, linkText, underPresser, rowWith } from '../setup.ts'
import { orderQuestion } from './order-question.ts'
import { passOverRange } from './order-setups.ts'

const most = 5

/** The order in which strips shift. */
export const stripOrder: Maker = (kit) => {
  const { range, pass, way, along } = passOverRange(kit)
  const first = kit.random.shuffled(along)
  const holes = along.filter(
    (index) =>
      first.find((one) => stripOfNeedle(toNeedle(one), kit) === stripOfNeedle(toNeedle(index), kit)) ===
      index,
  )
  const some = kit.random.some(holes, most)
  const row = rowWith(some.map((needle) => columnOfNeedle(toNeedle(needle), kit)))
  const setup = { card: ownRow(row), pass }
  return orderQuestion(kit, {
    prompt: `The carriage moves ${sideOfWay(way)} over the needles ${rangeNames(range)}. ${columnOneWords(kit)}. In which order do these strips shift?`,
    setup,
    pictures: [rowPicture([row], 1)],
    steps: some.map((index) => ({
      id: String(stripOfNeedle(toNeedle(index), kit)),
      label: `Strip ${stripOfNeedle(toNeedle(index), kit)}`,
      why: `moving ${sideOfWay(way)} the sweep comes to column ${columnOfNeedle(toNeedle(index), kit)}, its only hole, sooner`,
      show: linkText(kit, underPresser(setup, index)),
    })),
    because: `The strips shift in the order in which the sweep meets their holes, and moving ${sideOfWay(way)} that is the needles’ own order.`,
    show: underPresser(setup, at(some, 0)),
  })
}
