import { allColumns } from '../../mechanism/indices.ts'
import { needleName, wayOfPass, sideOfWay } from '../../mechanism/bed.ts'
import { ghostSpeed, releaseTime } from '../../mechanism/closed-forms.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Maker } from '../question.ts'
import { needlesIn, rangeNames, someRange } from '../needle-range.ts'
import { columnsOf, broken, ownRow, passOf, rowPicture, rowWith } from '../setup.ts'
import { goalOf, needlesQuestion } from './needles-question.ts'
import { withUnit } from '../../words/lists.ts'

const { columns, strips, pitch, stripReturnThick } = dimensions

/** Which needles come out wrong with thick oil on a strip? */
export const thickOil: Maker = (kit) => {
  const { random } = kit
  const threshold = ghostSpeed(stripReturnThick)
  const strip = random.whole(1, strips)
  const column = random.pick(columnsOf(strip))
  const isFast = random.whole(0, 2) > 0
  // Well clear of the threshold on either side.
  const speed = 10 * Math.round((isFast ? random.whole(130, 180) : random.whole(40, 75)) * threshold * 0.001)
  const fast = 15 * Math.round(threshold / 10)
  const pass = random.whole(1, 2)
  const way = wayOfPass(pass)
  const others = allColumns.filter((one) => !columnsOf(strip).includes(one))
  const row = rowWith([column, ...random.some(others, 5)])
  const range = someRange(kit, columns)
  const setup = { card: ownRow(row), pass, speed, faults: [broken('strip.slow', [strip])] }
  const ghosts = goalOf(passOf(kit, { ...setup, speed: fast }), range, 'wrong')
  const behind = needlesIn(range).filter((index) =>
    ghosts.some((ghost) => Math.abs(ghost - 2 * strips * way - index) % columns === 0),
  )
  const falls = releaseTime(stripReturnThick).toFixed(0)
  const takes = ((1000 * strips * pitch) / speed).toFixed(0)
  return needlesQuestion(kit, {
    prompt: `Oil has thickened on strip ${strip}: let go, it takes ${withUnit(falls, 'ms')} to fall back below its catches’ reach. The carriage moves ${sideOfWay(way)} at ${withUnit(speed, 'mm/s')}, so eight needles take ${withUnit(takes, 'ms')}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} come out wrong? Choose none if none do.`,
    setup,
    range,
    goal: 'wrong',
    pictures: [rowPicture([row], 1)],
    slips: [
      {
        chosen: behind,
        reason: `The strip is late, so its ghost comes after its own needle in the carriage’s direction: to the ${sideOfWay(way)}.`,
      },
      {
        chosen: goalOf(passOf(kit, { ...setup, faults: [broken('strip.seized', [strip])] }), range, 'wrong'),
        reason: `A slow strip still shifts in time for its own needle; what is late is its way back.`,
      },
      isFast
        ? {
            chosen: [],
            reason: `Eight needles take ${withUnit(takes, 'ms')}, and the strip needs ${withUnit(falls, 'ms')} to fall back: it still holds the next butt that it meets.`,
          }
        : {
            chosen: ghosts,
            reason: `Eight needles take ${withUnit(takes, 'ms')}, and after ${withUnit(falls, 'ms')} the strip has fallen back: it holds no butt too many.`,
          },
    ],
    because: isFast
      ? `eight needles on, strip ${strip} has not yet fallen back, and it holds a butt that nobody asked for.`
      : `at this speed strip ${strip} has fallen back before the next of its needles comes.`,
  })
}
