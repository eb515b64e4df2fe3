import { dimensions } from '../../mechanism/dimensions.ts'
import { millimetres } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { allHoles, broken, underPresser } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { presserRight: presser, catchDepth } = dimensions

/** How far does a worn presser still dip past the catches? */
export const dipAsked: Maker = (kit) => {
  const worn = kit.random.whole(10, 55) / 100
  const setup = { card: allHoles, faults: [broken('presser.right.worn', [], worn)] }
  return numberQuestion(kit, {
    prompt: `New, the presser dips a butt by ${millimetres(presser)}. It has worn by ${millimetres(worn)}. A catch holds a butt at ${millimetres(catchDepth)}. By how much does the presser still dip further than the catch needs?`,
    setup,
    value: presser - worn - catchDepth,
    unit: 'mm',
    slips: [
      [presser - worn, 'That is the whole dip; the catch needs its part of it.'],
      [presser - catchDepth, 'That was so when the presser was new.'],
      [presser - catchDepth + worn, 'A worn presser dips less, not more.'],
    ],
    how: 'find the dip as it is now, and take away what the catch needs.',
    because: `it dips ${millimetres(presser - worn)}, and the catch needs ${millimetres(catchDepth)}.`,
    show: underPresser(setup, kit.columnOne),
  })
}
