import { allStrips } from '../../mechanism/indices.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { listed } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { allHoles, broken, passOf } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { strips, needles } = dimensions

/** How many needles can seized strips never select? */
export const lostAsked: Maker = (kit) => {
  const count = kit.random.whole(1, 4)
  const seized = kit.random.some(allStrips, count)
  const setup = { card: allHoles, faults: seized.map((strip) => broken('strip.seized', [strip])) }
  const share = needles / strips
  const missed = passOf(kit, setup).departures.length
  return numberQuestion(kit, {
    prompt: `${count === 1 ? 'Strip' : 'Strips'} ${listed(seized.map(String))} ${count === 1 ? 'is' : 'are'} seized. How many of the ${needles} needles can never be selected?`,
    setup,
    value: missed,
    slips: [
      [
        strips * count,
        `${strips} is how many strips there are; each of them serves every ${strips}th needle of ${needles}.`,
      ],
      [3 * count, 'Three columns work each strip, but each column has needles all along the bed.'],
      [needles - missed, 'That is how many can still be selected.'],
      [share, `That is one strip’s share, and more than one is seized.`],
      [count, 'A strip serves more than one needle: it runs the whole bed.'],
    ],
    how: `each strip serves every ${strips}th needle of ${needles}.`,
    because: `${count === 1 ? 'it serves' : `each of the ${count} serves`} ${share} needles.`,
    show: setup,
  })
}
