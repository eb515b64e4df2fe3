import { columnOfNeedle, needleName } from '../../mechanism/bed.ts'
import type { Maker } from '../question.ts'
import { textOf, underPresser, namesOf, wayWord } from '../scene.ts'
import { shuffledOrder } from './sequence.ts'
import { travelOver } from './travel-over.ts'

const most = 5

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
