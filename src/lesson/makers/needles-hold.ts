import { allColumns, toNeedle } from '../../mechanism/indices.ts'
import { columnOfNeedle, needleName, sideOfWay, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { millimetres } from '../../words/lists.ts'
import type { Kit, Maker } from '../question.ts'
import { needlesIn, rangeNames, someRange } from '../needle-range.ts'
import { broken, ownRow, rowPicture, rowWith, type Setup } from '../setup.ts'
import { needlesQuestion, type Slip } from './needles-question.ts'

const { columns, strips, presserRight: presser, catchDepth } = dimensions

/** One needle's catch or butt. */
const oneNeedle = (kit: Kit, row: number, asked: readonly number[]) => {
  const { random } = kit
  const needle = random.pick(asked)
  const name = needleName(toNeedle(needle))
  const isCatch = random.whole(0, 1) === 0
  const setup: Setup = {
    card: ownRow(row),
    pass: random.whole(1, 2),
    faults: [broken(isCatch ? 'catch.broken' : 'needle.bent', [needle])],
  }
  const column = columnOfNeedle(toNeedle(needle), kit)
  const slips: Slip[] = [
    {
      chosen: asked,
      reason: `Only ${name} is without a sound ${isCatch ? 'catch' : 'butt'}; the others are held as before.`,
    },
    {
      chosen: [],
      reason: `Strip ${((column - 1) % strips) + 1} shifts, but at ${name} nothing holds the butt.`,
    },
  ]
  return {
    what: isCatch
      ? `The catch of ${name} is broken`
      : `Needle ${name} is bent: its butt is out of the catch’s reach`,
    setup,
    slips,
    because: 'one catch holds one butt, so nothing else can notice.',
  }
}

/** The presser, for one way or the other. */
const shallowDip = (kit: Kit, row: number, asked: readonly number[]) => {
  const { random } = kit
  const way = random.pick(['right', 'left'] as const)
  const worn = random.pick([0.3, 0.4, 0.75, 0.85])
  const pass = random.whole(1, 2)
  const moves = sideOfWay(wayOfPass(pass))
  const setup: Setup = {
    card: ownRow(row),
    pass,
    faults: [broken(`presser.${way}.worn`, [], worn)],
  }
  const dips = millimetres(presser - worn)
  const isEnough = presser - worn >= catchDepth
  const because =
    moves !== way
      ? `the presser is worn for passes to the ${way}, and this one goes ${moves}.`
      : isEnough
        ? `a dip of ${dips} is still more than the catches’ ${millimetres(catchDepth)}.`
        : `a dip of ${dips} does not reach the catches at ${millimetres(catchDepth)}, so no butt is held.`
  return {
    what: `The presser dips a butt by ${millimetres(presser)} when new. For passes to the ${way} it has worn by ${millimetres(worn)}; a catch holds a butt at ${millimetres(catchDepth)}`,
    setup,
    slips: [
      {
        chosen: asked,
        reason:
          moves === way
            ? `Worn as it is, the presser still dips ${dips}, and a catch needs ${millimetres(catchDepth)}.`
            : `The carriage goes ${moves}, and that way the presser is as new.`,
      },
      {
        chosen: [],
        reason: `This way the presser dips only ${dips}, and a catch needs ${millimetres(catchDepth)}.`,
      },
    ],
    because,
  }
}

/** Which needles are missed with a fault in the hold? */
export const badHold: Maker = (kit) => {
  const row = rowWith(kit.random.some(allColumns, 7))
  const range = someRange(kit, columns)
  const asked = needlesIn(range).filter(
    (index) => (row >> (columns - columnOfNeedle(toNeedle(index), kit))) & 1,
  )
  const { what, setup, slips, because } =
    kit.random.whole(0, 2) === 0 ? oneNeedle(kit, row, asked) : shallowDip(kit, row, asked)
  return needlesQuestion(kit, {
    prompt: `${what}. The carriage moves ${sideOfWay(wayOfPass(setup.pass ?? 1))}. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} are missed? Choose none if none are.`,
    setup,
    range,
    goal: 'wrong',
    pictures: [rowPicture([row], 1)],
    slips,
    because,
  })
}
