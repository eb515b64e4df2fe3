import { columnOfNeedle, needleName, sideOfWay } from '../../mechanism/bed.ts'
import { at } from '../../mechanism/lookup.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Maker } from '../question.ts'
import { columnOneWords, rangeNames } from '../needle-range.ts'
import { linkText, underPresser } from '../setup.ts'
import { orderQuestion } from './order-question.ts'
import { passOverRange } from './order-setups.ts'

const most = 5

/** The order in which the sweep meets columns. */
export const sweepOrder: Maker = (kit) => {
  const { range, pass, way, along } = passOverRange(kit)
  const setup = { pass }
  return orderQuestion(kit, {
    prompt: `The carriage moves ${sideOfWay(way)} over the needles ${rangeNames(range)}. ${columnOneWords(kit)}. In which order does the sweep meet these columns?`,
    setup,
    steps: kit.random.some(along, most).map((index) => ({
      id: String(columnOfNeedle(toNeedle(index), kit)),
      label: `Column ${columnOfNeedle(toNeedle(index), kit)}`,
      why: `moving ${sideOfWay(way)} the carriage comes to its needle ${needleName(toNeedle(index))} sooner`,
      show: linkText(kit, underPresser(setup, index)),
    })),
    because: `Moving ${sideOfWay(way)}, the sweep comes to the columns in the order in which the presser comes to their needles.`,
    show: underPresser(setup, at(along, 0)),
  })
}
