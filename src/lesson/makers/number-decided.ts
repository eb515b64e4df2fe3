import { columnOfNeedle, needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { at, lastOf } from '../../mechanism/lookup.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Maker } from '../question.ts'
import { allHoles, underPresser } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { columns, strips, needles } = dimensions

/** How many needles does one pin decide? */
export const decidedAsked: Maker = (kit) => {
  const column = kit.random.whole(1, columns)
  const mine = Array.from({ length: needles }, (_, index) => index).filter(
    (index) => columnOfNeedle(toNeedle(index), kit) === column,
  )
  const [first, last] = [at(mine, 0), lastOf(mine)]
  const share = needles / strips
  return numberQuestion(kit, {
    prompt: `A pass goes over all ${needles} needles, ${needleName(toNeedle(0))} to ${needleName(toNeedle(needles - 1))}. How many of them does pin ${column} decide?`,
    setup: { card: allHoles },
    value: mine.length,
    slips: [
      [share, `${share} is how many needles its strip serves; a strip belongs to three pins.`],
      [1, `The sweep comes round again and again: once for every ${columns} needles of travel.`],
      [columns, `${columns} is how many pins there are; each of them is met once in ${columns} needles.`],
      [needles, 'At each needle the push of one pin only is of use: that of its own column.'],
    ],
    how: `the sweep comes to each pin once in ${columns} needles; count from its first needle, ${needleName(toNeedle(first))}.`,
    because: `its needles are ${columns} apart, from ${needleName(toNeedle(first))} to ${needleName(toNeedle(last))}.`,
    show: underPresser({ card: allHoles }, first),
  })
}
