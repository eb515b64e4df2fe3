import type { Maker } from '../question.ts'
import { broken, mainRows } from '../scene.ts'
import { shuffledOrder, stepsOf } from './sequence.ts'

/** What happens at a turn. */
export const turnOrder: Maker = (kit) => {
  const pass = kit.draw.whole(1, mainRows(kit.library).length - 1)
  const next = { pass: pass + 1 }
  const short = broken('turn.short', [pass + 1])
  return shuffledOrder(kit, {
    prompt: `Pass ${pass} has read card row ${pass}. Put in order what happens until row ${pass + 1} is read.`,
    scene: { pass },
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
      ['sweep', 'The sweep brushes past the pins', ''],
    ]),
    because:
      'Past the mark the pins drop, the card steps, the pins rise and feel it, and the coming pass reads them.',
    show: next,
  })
}

/** From a card row to a row of fabric. */
export const fabricOrder: Maker = (kit) => {
  const row = kit.draw.whole(1, mainRows(kit.library).length - 2)
  const next = { pass: row + 1 }
  return shuffledOrder(kit, {
    prompt: `Put in order how card row ${row} becomes a row of fabric.`,
    scene: { pass: row },
    steps: stepsOf(kit, next, [
      ['feel', `The pins feel card row ${row}`, 'a pass only sets out what the pins have felt'],
      ['set', `Pass ${row} sets out the needles`, 'needles are knitted as they were set out before'],
      ['step', `The card steps on to row ${row + 1}`, 'it steps at the turn, between the two passes'],
      ['knit', `Pass ${row + 1} knits row ${row}`, 'a row is in the fabric only when it has been knitted'],
      ['seen', `Row ${row} is seen below the needles`, ''],
    ]),
    because: `Pass ${row} sets row ${row} out and pass ${row + 1} knits it, so the needles are always one row ahead of the fabric.`,
    show: next,
  })
}
