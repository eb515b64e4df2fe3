import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { firstGood } from '../draw.ts'
import type { Maker } from '../question.ts'
import { broken, everyColumn, mainRows, rowPicture, namesOf, someStretch } from '../scene.ts'
import { columnsOf } from './columns.ts'
import { predict } from './predict.ts'

const { columns, strips } = dimensions

/** Which needles come out wrong with two faults at once? */
export const twoFaults: Maker = (kit) =>
  firstGood(() => {
    const { draw } = kit
    const rows = mainRows(kit.library)
    const pass = draw.whole(1, rows.length)
    const [strip, other] = draw.shuffled(everyColumn.slice(0, strips))
    const column = draw.pick(columnsOf(other!))
    const stretch = someStretch(draw, columns + strips)
    const seized = broken('strip.seized', [strip!])
    const dead = broken('rocker.dead', [column])
    const question = predict(kit, {
      prompt: `Strip ${strip!} is seized and rocker ${column} is broken. Pass ${pass} reads card row ${pass}. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} are missed?`,
      scene: { pass, faults: [seized, dead] },
      stretch,
      goal: 'wrong',
      pictures: [rowPicture(rows, pass)],
      slips: [
        {
          scene: { pass, faults: [seized] },
          reason: `These are the needles of strip ${strip!}; rocker ${column} misses its own as well.`,
        },
        {
          scene: { pass, faults: [dead] },
          reason: `These are the needles of rocker ${column}; strip ${strip!} misses its own as well.`,
        },
        {
          scene: { pass, faults: [seized, broken('strip.seized', [other!])] },
          reason: `Rocker ${column} is only one of three that work strip ${other!}; the other two still push it.`,
        },
      ],
      because: `strip ${strip!} misses every ${strips}th needle that is asked for, and rocker ${column} every ${columns}th.`,
    })
    return question.slips.length === 3 ? question : null
  })
