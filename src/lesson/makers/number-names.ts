import { columnOfNeedle, needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Kit, Maker } from '../question.ts'
import { allHoles, underPresser } from '../setup.ts'
import { columnOneWords } from '../needle-range.ts'
import { numberQuestion } from './number-question.ts'

const { columns, strips, needles } = dimensions
const middle = needles / 2

/** A needle well away from the first of its side. */
const someNeedle = ({ random }: Kit): number => middle + random.pick([1, -1]) * random.whole(10, middle - 20)

/** How far a needle is from the middle of the bed, as its name counts. */
const countOf = (index: number): number => (index < middle ? middle - index : index - middle + 1)

/** The needle to the left of column 1’s. */
const before = ({ columnOne }: Kit): string => needleName(toNeedle(columnOne - 1))

/** Which column of the card works a needle? */
export const columnAsked: Maker = (kit) => {
  const needle = someNeedle(kit)
  const column = columnOfNeedle(toNeedle(needle), kit)
  const name = needleName(toNeedle(needle))
  return numberQuestion(kit, {
    prompt: `${columnOneWords(kit)} and ${before(kit)} is column ${columns}. Which column of the card works needle ${name}?`,
    setup: { card: allHoles },
    value: column,
    slips: [
      [
        stripOfNeedle(toNeedle(needle), kit),
        `That is the strip of ${name}, of which there are ${strips}; columns run from 1 to ${columns}.`,
      ],
      [
        columns + 1 - column,
        'That counts the columns from the wrong end: they run from left to right everywhere on the bed.',
      ],
      [
        countOf(needle),
        `That is the number in its name; after column ${columns} the card begins again at column 1.`,
      ],
    ],
    how: `the card’s ${columns} columns repeat along the bed, so take away ${columns} until a column is left.`,
    because: `${name} is ${column === columns ? `the last of` : `number ${column} in`} its run of ${columns} needles, counted from the left.`,
    show: underPresser({ card: allHoles }, needle),
  })
}

/** Which strip serves a needle? */
export const stripAsked: Maker = (kit) => {
  const needle = someNeedle(kit)
  const strip = stripOfNeedle(toNeedle(needle), kit)
  const name = needleName(toNeedle(needle))
  return numberQuestion(kit, {
    prompt: `${needleName(kit.columnOne)} is on strip 1 and ${before(kit)} is on strip ${strips}. Which strip serves needle ${name}?`,
    setup: { card: allHoles },
    value: strip,
    slips: [
      [
        columnOfNeedle(toNeedle(needle), kit),
        `That is the column of ${name}; ${columns} columns share ${strips} strips, three to each.`,
      ],
      [
        strips + 1 - strip,
        'That counts the strips from the wrong end: they follow each other from left to right everywhere.',
      ],
      [countOf(needle), `That is the number in its name; after strip ${strips} comes strip 1 again.`],
    ],
    how: `the strips repeat every ${strips} needles, so take away ${strips} until a strip is left.`,
    because: `${name} is column ${columnOfNeedle(toNeedle(needle), kit)}, and that column works strip ${strip}.`,
    show: underPresser({ card: allHoles }, needle),
  })
}
