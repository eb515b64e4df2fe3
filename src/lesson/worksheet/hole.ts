import { stripOfColumn } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toColumn, toNeedle } from '../../mechanism/indices.ts'
import { needlesQuestion } from '../makers/needles-question.ts'
import { columnOneWords } from '../needle-range.ts'
import type { Maker } from '../question.ts'
import { ownRow, rowPicture, rowWith } from '../setup.ts'

const { columns, strips, needles } = dimensions

/** Which strip does one hole work, and which needles does it bring forward on both sides of the middle? */
export const holeOnPaper: Maker = (kit) => {
  const column = kit.random.whole(1, columns)
  const strip = stripOfColumn(toColumn(column))
  const row = rowWith([column])
  return needlesQuestion(kit, {
    prompt: `The machine is sound, and the card’s row has a single hole, in column ${column}. Which strip does it work? ${columnOneWords(kit)}. Which of the needles L${columns} to R${columns} come forward?`,
    setup: { card: ownRow(row) },
    range: { first: toNeedle(needles / 2 - columns), count: 2 * columns },
    goal: 'selected',
    pictures: [rowPicture([row], 1)],
    slips: [],
    because: `column ${column} works strip ${strip}, which has a catch at every ${strips}th needle, but column ${column} itself comes round only every ${columns} needles.`,
  })
}
