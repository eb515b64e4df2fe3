import { dimensions } from '../../mechanism/dimensions.ts'
import { checks } from '../checks.ts'
import { minutesWords } from '../../words/pace.ts'
import type { Maker } from '../question.ts'
import { broken, mainCardRows, linkText } from '../setup.ts'
import { orderQuestion } from './order-question.ts'

const { strips } = dimensions

/** Checks from the first to the last; one of each line is asked. Those of one line cost the same. */
const bench = [
  ['settings', 'slower', 'row', 'no-card'],
  ['bar', 'pins'],
  ['cams'],
  ['push'],
  ['cover'],
  ['reader'],
]

/** The order of checks on the bench. */
export const benchOrder: Maker = (kit) => {
  const { random, library } = kit
  const ids = bench.map((line) => random.pick(line))
  const fault = broken('strip.seized', [random.whole(1, strips)])
  const setup = { pass: random.whole(1, mainCardRows(library).length), faults: [fault] }
  return orderQuestion(kit, {
    prompt:
      'A machine misses needles and you do not know why. Put these checks in the order in which to make them.',
    setup,
    steps: checks
      .filter(({ id }) => ids.includes(id))
      .map((check) => ({
        id: check.id,
        label: check.label,
        why: check.opens
          ? 'it leaves the card reader alone, which comes off last of all'
          : `it takes ${minutesWords(check)} and leaves the machine closed`,
        show: linkText(kit, check.setup(setup)),
      })),
    because: 'Look before you open, cheap before dear, and the card reader last.',
    show: setup,
  })
}
