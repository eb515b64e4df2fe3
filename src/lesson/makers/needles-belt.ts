import { allColumns, toNeedle } from '../../mechanism/indices.ts'
import { needleName, wayOfPass, sideOfWay } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { modulo } from '../../mechanism/bed.ts'
import { rangeNames, someRange } from '../needle-range.ts'
import { broken, ownRow, passOf, rowPicture, rowWith } from '../setup.ts'
import type { Maker } from '../question.ts'
import { goalOf, needlesQuestion, type Slip } from './needles-question.ts'

const { columns, strips } = dimensions

/** Which needles come forward with the belt refitted out of step? */
export const beltOut: Maker = (kit) => {
  const { random } = kit
  const row = rowWith(random.some(allColumns, 6))
  const size = random.pick([3, 4, 5, strips, strips, 2 * strips, columns, 12])
  const timing = size * random.pick([1, -1])
  const pass = random.whole(1, 2)
  const range = someRange(kit, columns)
  const setup = { card: ownRow(row), pass, faults: [broken('belt.timing', [], timing)] }
  const inStep = { ...setup, faults: [] }
  const isWhole = modulo(size, columns) === 0
  const moves = modulo(size, strips) === 0 && !isWhole
  const to = timing > 0 ? 'left' : 'right'
  const opposite = sideOfWay(timing > 0 ? 1 : -1)
  const asked = goalOf(passOf(kit, inStep), { first: toNeedle(0), count: dimensions.needles }, 'selected')
  const inside = (index: number): boolean => index >= range.first && index < range.first + range.count
  const movedBy = (by: number): number[] => asked.map((index) => index + by).filter(inside)
  const slips: Slip[] = [
    {
      setup: inStep,
      reason: `That is the pattern with the belt in step; here the sweep reaches each pin ${size} needles away from its own needle.`,
    },
    {
      chosen: movedBy(timing),
      reason: moves
        ? `The pattern moves the other way: a sweep too far to the ${opposite} reaches each pin when the presser stands further to the ${to}.`
        : `The pattern does not move to the ${opposite}: ${isWhole ? `the row repeats every ${columns} needles` : 'the catch that shifts there belongs to another strip’s needle'}.`,
    },
    {
      chosen: movedBy(-timing),
      reason: `The sweep pushes the right pins there, but ${size} needles on, the needle under the presser is on another strip.`,
    },
    {
      chosen: [],
      reason: `${size} is a multiple of ${strips}, so the strip that shifts is the very one that serves the needle under the presser.`,
    },
  ]
  return needlesQuestion(kit, {
    prompt: `The belt was refitted out of step: the sweep runs ${size} needles too far to the ${opposite}. The carriage moves ${sideOfWay(wayOfPass(pass))}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} come forward? Choose none if none do.`,
    setup,
    range,
    goal: 'selected',
    pictures: [rowPicture([row], 1)],
    slips,
    because: isWhole
      ? `the sweep comes round every ${columns} needles, so ${size} out is in step again.`
      : moves
        ? `${size} is a multiple of ${strips}, so the right strip still shifts, but for the needle ${size} to the ${to}.`
        : `${size} needles out, the strip that shifts is never the one that serves the needle under the presser.`,
  })
}
