import { dimensions } from '../../mechanism/dimensions.ts'
import { millimetres } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { broken } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { pinHigh, pinLow, sweepEdge } = dimensions

/** By how much does the sweep overlap a pin? */
export const biteAsked: Maker = (kit) => {
  const worn = kit.random.whole(1, 8) / 10
  const edge = sweepEdge + worn
  const high = kit.random.whole(0, 1) === 0
  const setup = { faults: [broken('sweep.worn', [], worn)] }
  return numberQuestion(kit, {
    prompt: `A pin through a hole stands ${millimetres(pinHigh)} high, one stopped by card ${millimetres(pinLow)}. New, the sweep’s edge is ${millimetres(sweepEdge)} up; it has worn ${millimetres(worn)} higher. By how much does it now ${high ? 'overlap a high pin' : 'clear a low pin'}?`,
    setup,
    value: high ? pinHigh - edge : edge - pinLow,
    unit: 'mm',
    slips: [
      [
        high ? edge - pinLow : pinHigh - edge,
        `That is how far it ${high ? 'clears a low' : 'overlaps a high'} pin.`,
      ],
      [high ? pinHigh - sweepEdge : sweepEdge - pinLow, 'That was so when the sweep was new.'],
      [
        high ? pinHigh - sweepEdge + worn : sweepEdge - worn - pinLow,
        'A worn edge is higher up, further from the high tips and not nearer.',
      ],
    ],
    how: 'find the edge as it is now, then the distance from it to the tip.',
    because: `the edge is ${millimetres(edge)} up, and the tip ${high ? millimetres(pinHigh) : millimetres(pinLow)}.`,
    show: setup,
  })
}
