import type { Maker } from '../question.ts'
import { broken, mainCardRows } from '../setup.ts'
import { orderQuestion, stepsOf } from './order-question.ts'

/** What happens at a turn. */
export const turnOrder: Maker = (kit) => {
  const pass = kit.random.whole(1, mainCardRows(kit.library).length - 1)
  const next = { pass: pass + 1 }
  const short = broken('turn.short', [pass + 1])
  return orderQuestion(kit, {
    prompt: `Pass ${pass} has read card row ${pass}. Put in order what happens until row ${pass + 1} is read.`,
    setup: { pass },
    steps: stepsOf(kit, next, [
      [
        'mark',
        'The carriage goes past the turn mark',
        'short of the mark nothing at all happens to the card',
        short,
      ],
      ['drop', 'The pins drop', 'the card can’t move while pins stand in its holes'],
      ['step', 'The card steps on one row', 'pins that rise sooner would feel the old row again', short],
      ['rise', 'The pins rise against the card', 'the sweep only finds what the pins have felt'],
      ['sweep', 'The sweep passes the pins', ''],
    ]),
    because:
      'Past the mark the pins drop, the card steps, the pins rise and feel it, and the coming pass reads them.',
    show: next,
  })
}
