import { columnOfNeedle, needleName, sideOfWay, usualPlace } from '../../mechanism/bed.ts'
import { at } from '../../mechanism/lookup.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Maker } from '../question.ts'
import { rangeNames } from '../needle-range.ts'
import { linkText, underPresser } from '../setup.ts'
import { orderQuestion } from './order-question.ts'
import { passOverRange } from './order-setups.ts'

const most = 5

/** The order in which the sweep meets columns. */
export const sweepOrder: Maker = (kit) => {
  const { range, pass, way, along } = passOverRange(kit)
  const setup = { pass }
  return orderQuestion(kit, {
    prompt: `The carriage moves ${sideOfWay(way)} over the needles ${rangeNames(range)}. R1 is column 1. In which order does the sweep meet these columns?`,
    setup,
    steps: kit.random.some(along, most).map((index) => ({
      id: String(columnOfNeedle(toNeedle(index), usualPlace)),
      label: `Column ${columnOfNeedle(toNeedle(index), usualPlace)}`,
      why: `moving ${sideOfWay(way)} the carriage comes to its needle ${needleName(toNeedle(index))} sooner`,
      show: linkText(kit.library, underPresser(setup, index)),
    })),
    because: `Moving ${sideOfWay(way)}, the sweep comes to the columns in the order in which the presser comes to their needles.`,
    show: underPresser(setup, at(along, 0)),
  })
}
