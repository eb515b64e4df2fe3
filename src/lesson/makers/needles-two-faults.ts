import { allStrips } from '../../mechanism/indices.ts'
import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { firstValid } from '../seeded-random.ts'
import type { Maker } from '../question.ts'
import { rangeNames, someRange } from '../needle-range.ts'
import { columnsOf, broken, mainCardRows, rowPicture } from '../setup.ts'
import { needlesQuestion } from './needles-question.ts'

const { columns, strips } = dimensions

/** Which needles come out wrong with two faults at once? */
export const twoFaults: Maker = (kit) =>
  firstValid(() => {
    const { random } = kit
    const rows = mainCardRows(kit.library)
    const pass = random.whole(1, rows.length)
    const [strip, other] = random.shuffled(allStrips)
    const column = random.pick(columnsOf(other!))
    const range = someRange(kit, columns + strips)
    const seized = broken('strip.seized', [strip!])
    const dead = broken('rocker.dead', [column])
    const question = needlesQuestion(kit, {
      prompt: `Strip ${strip!} is seized and rocker ${column} is broken. Pass ${pass} reads card row ${pass}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} are missed?`,
      setup: { pass, faults: [seized, dead] },
      range,
      goal: 'wrong',
      pictures: [rowPicture(rows, pass)],
      slips: [
        {
          setup: { pass, faults: [seized] },
          reason: `These are the needles of strip ${strip!}; rocker ${column} misses its own as well.`,
        },
        {
          setup: { pass, faults: [dead] },
          reason: `These are the needles of rocker ${column}; strip ${strip!} misses its own as well.`,
        },
        {
          setup: { pass, faults: [seized, broken('strip.seized', [other!])] },
          reason: `Rocker ${column} is only one of three that work strip ${other!}; the other two still push it.`,
        },
      ],
      because: `strip ${strip!} misses every ${strips}th needle that is asked for, and rocker ${column} every ${columns}th.`,
    })
    return question.slips.length === 3 ? question : null
  })
