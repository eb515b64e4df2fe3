import { dimensions } from '../../mechanism/dimensions.ts'
import { sharedStep } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { allHoles, broken, passOf } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { columns, strips, needles } = dimensions

/** How many needles apart are the needles that fail? */
export const apartAsked: Maker = (kit) => {
  const { random } = kit
  const column = random.whole(1, columns)
  const strip = ((column - 1) % strips) + 1
  const [fault, what, isStrip] = random.pick([
    [broken('strip.seized', [strip]), `Strip ${strip} is seized`, true],
    [broken('rocker.dead', [column]), `Rocker ${column} is broken`, false],
    [broken('pin.low', [column]), `Pin ${column} is stuck down`, false],
  ] as const)
  const setup = { card: allHoles, faults: [fault] }
  const apart = sharedStep(passOf(kit, setup).departures.map(({ needle }) => needle))
  if (apart === null) throw new Error('the missed needles have no common step')
  return numberQuestion(kit, {
    prompt: `${what}, and the row has every hole. How many needles is it from one missed needle to the next?`,
    setup,
    value: apart,
    slips: [
      isStrip
        ? [
            columns,
            `${columns} apart is what one column does: its pin or its rocker; a strip has three columns.`,
          ]
        : [
            strips,
            `${strips} apart is what a strip does; a pin and its rocker serve one column of ${columns}.`,
          ],
      [apart - 1, 'That counts the good needles between; count on to the missed needle itself.'],
      [needles / strips, 'That is how many needles a strip serves, not how far they are apart.'],
    ],
    how: 'ask how often along the bed this very part is used again.',
    because: isStrip
      ? 'a strip has a catch at every eighth needle.'
      : `the card’s ${columns} columns repeat along the bed, and with them this one.`,
    show: setup,
  })
}
