import { dimensions } from '../../mechanism/dimensions.ts'
import { facts } from '../../words/facts.ts'
import { millimetres } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { allHoles, broken, underPresser } from '../scene.ts'
import { number } from './number.ts'

const middle = dimensions.needles / 2

/** By how much does the sweep overlap a pin? */
export const biteAsked: Maker = (kit) => {
  const worn = kit.draw.whole(1, 8) / 10
  const { pinHigh, pinLow, sweepEdge } = dimensions
  const edge = sweepEdge + worn
  const high = kit.draw.whole(0, 1) === 0
  const scene = { faults: [broken('sweep.worn', [], worn)] }
  return number(kit, {
    prompt: `A pin through a hole stands ${facts.pinHigh} high, one stopped by card ${facts.pinLow}. New, the sweep’s edge is ${facts.sweepEdge} up; it has worn ${millimetres(worn)} higher. By how much does it now ${high ? 'overlap a high pin' : 'clear a low pin'}?`,
    scene,
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
    because: `the edge is ${millimetres(edge)} up, and the tip ${high ? facts.pinHigh : facts.pinLow}.`,
    show: scene,
  })
}

/** How far does a worn presser still dip past the catches? */
export const dipAsked: Maker = (kit) => {
  const worn = kit.draw.whole(10, 55) / 100
  const { presser, catchDepth } = dimensions
  const scene = { card: allHoles, faults: [broken('presser.right.worn', [], worn)] }
  return number(kit, {
    prompt: `New, the presser dips a butt by ${facts.presser}. It has worn by ${millimetres(worn)}. A catch holds a butt at ${facts.catchDepth}. By how much does the presser still dip further than the catch needs?`,
    scene,
    value: presser - worn - catchDepth,
    unit: 'mm',
    slips: [
      [presser - worn, 'That is the whole dip; the catch needs its part of it.'],
      [presser - catchDepth, 'That was so when the presser was new.'],
      [presser - catchDepth + worn, 'A worn presser dips less, not more.'],
    ],
    how: 'find the dip as it is now, and take away what the catch needs.',
    because: `it dips ${millimetres(presser - worn)}, and the catch needs ${facts.catchDepth}.`,
    show: underPresser(scene, middle),
  })
}

/** How much is left between a held butt and the first gate? */
export const gateAsked: Maker = (kit) => {
  const low = kit.draw.whole(5, 40) / 100
  const { gate1, gate2, catchDepth } = dimensions
  const scene = { card: allHoles, faults: [broken('gate.1.low', [], low)] }
  return number(kit, {
    prompt: `The first gate’s edge belongs ${facts.gate1} below the rest line, but it hangs ${millimetres(low)} too low. A held butt stands ${facts.catchDepth} below rest. By how much does it still pass under the edge?`,
    scene,
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
    because: `the edge hangs ${millimetres(gate1 + low)} below rest, and the butt ${facts.catchDepth}.`,
    show: underPresser(scene, middle),
  })
}
