import { needleName, stripOfNeedle, wayOfPass } from '../../mechanism/bed.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Maker } from '../question.ts'
import { broken, fromPassStart } from '../setup.ts'
import { oneHole } from './order-setups.ts'
import { orderQuestion, stepsOf } from './order-question.ts'

/** How a butt is caught. */
export const holdOrder: Maker = (kit) => {
  const { setup, needle } = oneHole(kit)
  const presser = broken(wayOfPass(setup.pass ?? 1) === 1 ? 'presser.right.worn' : 'presser.left.worn')
  return orderQuestion(kit, {
    prompt: `Needle ${needleName(toNeedle(needle))} is to be selected. Put in order what happens to its butt.`,
    setup: fromPassStart(setup),
    steps: stepsOf(kit, setup, [
      ['dip', 'The presser dips the butt', 'a catch only goes over a butt that has been dipped', presser],
      [
        'cover',
        'The strip shifts and its catch comes over the needle’s spur',
        'the catch must be there before the presser lets go',
        broken('strip.seized', [stripOfNeedle(toNeedle(needle), kit)]),
      ],
      ['go', 'The presser lets go', 'until then it is the presser that keeps the butt down'],
      [
        'rest',
        'The butt comes to rest under the catch',
        'the gates find the butt where it has come to rest',
        broken('catch.broken', [needle]),
      ],
      [
        'under',
        'The butt passes under the first gate',
        'the second gate stands behind the first',
        broken('gate.1.low'),
      ],
      ['forward', 'The second gate leads the needle forward', ''],
    ]),
    because:
      'Dip, cover, let go: a butt that the catch then keeps down passes the first gate and meets the second.',
    show: setup,
  })
}

/** How a free butt goes through the gates, or a held one. */
export const gateOrder: Maker = (kit) => {
  const { setup, needle } = oneHole(kit)
  if (kit.random.whole(0, 1) === 1) return holdOrder(kit)
  const free = { ...setup, at: needle + 1 }
  return orderQuestion(kit, {
    prompt: `Needle ${needleName(toNeedle(needle + 1))} is to stay plain. Put in order what happens to its butt.`,
    setup: fromPassStart(setup),
    steps: stepsOf(kit, free, [
      ['dip', 'The presser dips the butt', 'every butt is dipped, wanted or not'],
      ['go', 'The presser lets go', 'until then no butt can spring up'],
      [
        'up',
        'The butt springs back up',
        'only a butt that has come up meets the first gate',
        broken('needle.stiff', [needle + 1]),
      ],
      [
        'stop',
        'The first gate turns the butt back',
        'without it the butt would go on to the second gate',
        broken('gate.1.high'),
      ],
      ['plain', 'The needle stands back, plain', ''],
    ]),
    because:
      'A butt that no catch keeps down is up again before the first gate, and the first gate turns it back.',
    show: free,
  })
}
