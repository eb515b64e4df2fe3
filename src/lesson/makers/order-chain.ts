import { needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Maker } from '../question.ts'
import { broken, fromPassStart } from '../setup.ts'
import { oneHole } from './order-setups.ts'
import { orderQuestion, stepsOf } from './order-question.ts'

/** From a hole to a needle. */
export const chainOrder: Maker = (kit) => {
  const { column, setup, needle } = oneHole(kit)
  const strip = stripOfNeedle(toNeedle(needle), kit)
  return orderQuestion(kit, {
    prompt: `The card has a hole in column ${column}. Put in order what happens between the hole and needle ${needleName(toNeedle(needle))}.`,
    setup: fromPassStart(setup),
    steps: stepsOf(kit, setup, [
      [
        'card',
        `A hole comes over pin ${column}`,
        'every push begins at a hole',
        broken('card.blocked', [1, column]),
      ],
      [
        'pin',
        `Pin ${column} stands high`,
        'the sweep only meets a pin that stands high',
        broken('pin.low', [column]),
      ],
      [
        'sweep',
        'The sweep pushes the pin to the left',
        'a high pin moves nothing by itself',
        broken('belt.timing'),
      ],
      [
        'rocker',
        `Rocker ${column} hands the push down`,
        'only the rocker joins a pin to its strip',
        broken('rocker.dead', [column]),
      ],
      [
        'strip',
        `Strip ${strip} shifts with all its catches`,
        'a catch moves only with its strip',
        broken('strip.seized', [strip]),
      ],
      [
        'hold',
        'A catch keeps the dipped butt down',
        'the gates tell held butts from free ones',
        broken('catch.broken', [needle]),
      ],
      ['gate', `The second gate leads ${needleName(toNeedle(needle))} forward`, ''],
    ]),
    because:
      'Each part only hands on what the one before it gives: hole, pin, sweep, rocker, strip, catch, gate.',
    show: setup,
  })
}
