import { needleName, stripOfNeedle, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Kit, Maker } from '../question.ts'
import { type Scene, broken, ownRow, rowWith } from '../scene.ts'
import { shuffledOrder, stepsOf } from './sequence.ts'

const { columns, needles } = dimensions

/** One hole, and the carriage where its needle is let go. */
const oneHole = ({ draw }: Kit): { column: number; scene: Scene; needle: number } => {
  const column = draw.whole(1, columns)
  const needle = needles / 2 + column - 1
  return { column, needle, scene: { card: ownRow(rowWith([column])), pass: draw.whole(1, 2), at: needle } }
}

/** From a hole to a needle. */
export const chainOrder: Maker = (kit) => {
  const { column, scene, needle } = oneHole(kit)
  const strip = stripOfNeedle(needle)
  return shuffledOrder(kit, {
    prompt: `The card has a hole in column ${column}. Put in order what happens between the hole and needle ${needleName(needle)}.`,
    scene: { ...scene, at: undefined },
    steps: stepsOf(kit, scene, [
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
        'The sweep pushes the pin aside',
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
      ['gate', `The second gate leads ${needleName(needle)} forward`, ''],
    ]),
    because:
      'Each part only hands on what the one before it gives: hole, pin, sweep, rocker, strip, catch, gate.',
    show: scene,
  })
}

/** How a butt is caught. */
export const holdOrder: Maker = (kit) => {
  const { scene, needle } = oneHole(kit)
  const presser = broken(wayOfPass(scene.pass ?? 1) === 1 ? 'presser.right.worn' : 'presser.left.worn')
  return shuffledOrder(kit, {
    prompt: `Needle ${needleName(needle)} is to be selected. Put in order what happens to its butt.`,
    scene: { ...scene, at: undefined },
    steps: stepsOf(kit, scene, [
      ['dip', 'The presser dips the butt', 'a catch only goes over a butt that has been dipped', presser],
      [
        'cover',
        'The strip shifts and its catch covers the butt',
        'the catch must be there before the presser lets go',
        broken('strip.seized', [stripOfNeedle(needle)]),
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
    show: scene,
  })
}

/** How a free butt goes through the gates, or a held one. */
export const gateOrder: Maker = (kit) => {
  const { scene, needle } = oneHole(kit)
  if (kit.draw.whole(0, 1) === 1) return holdOrder(kit)
  const free = { ...scene, at: needle + 1 }
  return shuffledOrder(kit, {
    prompt: `Needle ${needleName(needle + 1)} is to stay plain. Put in order what happens to its butt.`,
    scene: { ...scene, at: undefined },
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
