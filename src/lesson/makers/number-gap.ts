import { dimensions } from '../../mechanism/dimensions.ts'
import { millimetres } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { allHoles, broken, underPresser } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { gate1, gate2, catchDepth } = dimensions

/** How much is left between a held butt and the first gate? */
export const gateAsked: Maker = (kit) => {
  const low = kit.random.whole(5, 40) / 100
  const setup = { card: allHoles, faults: [broken('gate.1.low', [], low)] }
  return numberQuestion(kit, {
    prompt: `The first gate’s edge belongs ${millimetres(gate1)} below the rest line, but it hangs ${millimetres(low)} too low. A held butt stands ${millimetres(catchDepth)} below rest. By how much does it still pass under the edge?`,
    setup,
    value: catchDepth - gate1 - low,
    unit: 'mm',
    slips: [
      [catchDepth - gate1, 'That is so with the gate where it belongs.'],
      [
        catchDepth - gate1 + low,
        'A gate that hangs low comes nearer to the held butt, so less is left and not more.',
      ],
      [gate1 + low, 'That is where the edge is; the butt passes below it.'],
      [gate2 - catchDepth, 'That is what is left above the second gate’s edge.'],
    ],
    how: 'find the edge as it hangs now, then the distance from it to the butt.',
    because: `the edge hangs ${millimetres(gate1 + low)} below rest, and the butt ${millimetres(catchDepth)}.`,
    show: underPresser(setup, kit.columnOne),
  })
}
