import { allColumns, toNeedle } from '../../mechanism/indices.ts'
import { columnOfNeedle, needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { misplacement } from '../../mechanism/pin.ts'
import { conditionOf } from '../../mechanism/condition.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import { millimetres } from '../../words/lists.ts'
import { holeClearance } from '../../mechanism/pin.ts'
import { needlesIn, rangeNames, someRange } from '../needle-range.ts'
import { allHoles, broken, ownRow, rowPicture, rowWith } from '../setup.ts'
import { firstValid } from '../seeded-random.ts'
import type { Maker } from '../question.ts'
import { needlesQuestion } from './needles-question.ts'

const { columns, strips } = dimensions
const clearance = holeClearance(dimensions)

/** Which needles come out wrong with a pin stuck down or up? */
export const stuckPin: Maker = (kit) => {
  const { random } = kit
  const column = random.whole(1, strips)
  const low = random.whole(0, 1) === 0
  const others = random.some(
    allColumns.filter((other) => other !== column && stripOfColumn(other) !== column),
    6,
  )
  // The two other columns of the strip are asked for where this pin is stuck down, and left where it is up.
  const row = rowWith(low ? [...others, column, column + strips, column + 2 * strips] : others)
  const range = someRange(kit, columns + strips)
  const setup = { card: ownRow(row), faults: [broken(low ? 'pin.low' : 'pin.high', [column])] }
  const stuck = `Pin ${column} is stuck ${low ? 'down' : 'up'}`
  return needlesQuestion(kit, {
    prompt: `${stuck}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} come out wrong?`,
    setup,
    range,
    goal: 'wrong',
    pictures: [rowPicture([row], 1)],
    slips: [
      {
        setup: { ...setup, faults: [broken(low ? 'strip.seized' : 'strip.over', [column])] },
        reason: `Every ${strips}th needle is what a strip would do: a pin serves one column, which comes round every ${columns} needles.`,
      },
      {
        chosen: needlesIn(range)
          .filter((index) => columnOfNeedle(toNeedle(index), kit) === column)
          .slice(0, 1),
        reason: `The card’s ${columns} columns repeat along the bed, so the same pin decides the needle ${columns} further on as well.`,
      },
      {
        chosen: [],
        reason: `${stuck}, whatever the card says, so its needles do not follow the card.`,
      },
    ],
    because: `pin ${column} decides every ${columns}th needle, and the card asks column ${column} for ${low ? 'a needle that it' : 'no needle, but the pin'} ${low ? 'can’t give' : 'gives one'}.`,
  })
}

/** Which needles are missed when the card lies askew? */
export const askewCard: Maker = (kit) =>
  firstValid(() => {
    const { random } = kit
    const skew = random.whole(9, 30) / 100
    const range = someRange(kit, columns)
    const setup = { card: allHoles, faults: [broken('card.skew', [], skew)] }
    const condition = conditionOf({ ...soundScenario(null), faults: setup.faults })
    const nearest = allColumns.map((column) => Math.abs(misplacement(condition, column) - clearance))
    // Too near to call by hand.
    if (Math.min(...nearest) < 0.03) return null
    const middle = range.first + columns / 2
    const missed = needlesIn(range).filter(
      (index) => misplacement(condition, columnOfNeedle(toNeedle(index), kit)) > clearance,
    )
    return needlesQuestion(kit, {
      prompt: `The card lies askew: from the middle of the card outwards each column is ${millimetres(skew)} further out of place than the one before, starting with half of that. A pin has ${millimetres(clearance)} to spare in its hole. The row has every hole. Which of the needles ${rangeNames(range)}, columns 1 to ${columns}, are missed?`,
      setup,
      range,
      goal: 'wrong',
      pictures: [],
      slips: [
        {
          chosen: missed.filter((index) => index >= middle),
          reason: 'The card turns about its middle, so its left end is as far out of place as its right end.',
        },
        {
          chosen: missed.filter((index) => index < middle),
          reason: 'The card turns about its middle, so its right end is as far out of place as its left end.',
        },
        {
          chosen: needlesIn(range).filter((index) => !missed.includes(index)),
          reason:
            'These are the middle columns, where the card has hardly moved; it is the ends that leave their pins.',
        },
        {
          chosen: needlesIn(range),
          reason:
            'Near the middle the holes are out of place by less than the pins have to spare, so there they still read.',
        },
      ],
      because: `there the holes are out of place by more than ${millimetres(clearance)}, so the card stops the pins.`,
    })
  })
