import { columnOfNeedle, needleName } from '../../mechanism/bed.ts'
import type { Maker } from '../question.ts'
import { rangeNames } from '../needle-range.ts'
import { linkText, underPresser, wayWord } from '../setup.ts'
import { shuffledOrder } from './order-question.ts'
import { passOverRange } from './order-setups.ts'

const most = 5

/** The order in which the sweep meets columns. */
export const sweepOrder: Maker = (kit) => {
  const { range, pass, way, along } = passOverRange(kit)
  const setup = { pass }
  return shuffledOrder(kit, {
    prompt: `The carriage moves ${wayWord(way)} over the needles ${rangeNames(range)}. R1 is column 1. In which order does the sweep meet these columns?`,
    setup,
    steps: kit.random.some(along, most).map((index) => ({
      id: String(columnOfNeedle(index)),
      label: `Column ${columnOfNeedle(index)}`,
      why: `moving ${wayWord(way)} the carriage comes to its needle ${needleName(index)} sooner`,
      show: linkText(kit.library, underPresser(setup, index)),
    })),
    because: `Moving ${wayWord(way)}, the sweep is at a column just when the presser is at its needle.`,
    show: underPresser(setup, along[0]!),
  })
}
