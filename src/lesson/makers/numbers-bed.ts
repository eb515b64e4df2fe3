import { columnOfNeedle, needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { inWords } from '../../words/facts.ts'
import { listed, sharedStep } from '../../words/lists.ts'
import type { Kit, Maker } from '../question.ts'
import { allHoles, broken, everyColumn, passOf, underPresser } from '../scene.ts'
import { number } from './number.ts'

const { columns, strips, needles } = dimensions
const middle = needles / 2
const wholeBed = Array.from({ length: needles }, (_, index) => index)

/** A needle well away from the first of its side. */
const someNeedle = ({ draw }: Kit): number => middle + draw.pick([1, -1]) * draw.whole(10, middle - 20)

/** How far a needle is from the middle of the bed, as its name counts. */
const countOf = (index: number): number => (index < middle ? middle - index : index - middle + 1)

/** Which column of the card works a needle? */
export const columnAsked: Maker = (kit) => {
  const needle = someNeedle(kit)
  const column = columnOfNeedle(needle)
  const name = needleName(needle)
  return number(kit, {
    prompt: `R1 is column 1 and L1 is column ${columns}. Which column of the card works needle ${name}?`,
    scene: { card: allHoles },
    value: column,
    slips: [
      [
        stripOfNeedle(needle),
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
  const strip = stripOfNeedle(needle)
  const name = needleName(needle)
  return number(kit, {
    prompt: `R1 is on strip 1 and L1 is on strip ${strips}. Which strip serves needle ${name}?`,
    scene: { card: allHoles },
    value: strip,
    slips: [
      [
        columnOfNeedle(needle),
        `That is the column of ${name}; ${columns} columns share ${strips} strips, three to each.`,
      ],
      [
        strips + 1 - strip,
        'That counts the strips from the wrong end: they follow each other from left to right everywhere.',
      ],
      [countOf(needle), `That is the number in its name; after strip ${strips} comes strip 1 again.`],
    ],
    how: `the strips repeat every ${strips} needles, so take away ${strips} until a strip is left.`,
    because: `${name} is column ${columnOfNeedle(needle)}, and that column works strip ${strip}.`,
    show: underPresser({ card: allHoles }, needle),
  })
}

/** How many needles does one pin decide? */
export const decidedAsked: Maker = (kit) => {
  const column = kit.draw.whole(1, columns)
  const mine = wholeBed.filter((index) => columnOfNeedle(index) === column)
  const share = needles / strips
  return number(kit, {
    prompt: `A pass goes over all ${needles} needles, ${needleName(0)} to ${needleName(needles - 1)}. How many of them does pin ${column} decide?`,
    scene: { card: allHoles },
    value: mine.length,
    slips: [
      [share, `${share} is how many needles its strip serves; a strip belongs to three pins.`],
      [1, `The sweep comes round again and again: once for every ${columns} needles of travel.`],
      [columns, `${columns} is how many pins there are; each of them is met once in ${columns} needles.`],
      [needles, 'At each needle the sweep is at one pin only.'],
    ],
    how: `the sweep comes to each pin once in ${columns} needles; count from its first needle, ${needleName(mine[0]!)}.`,
    because: `its needles are ${columns} apart, from ${needleName(mine[0]!)} to ${needleName(mine.at(-1)!)}.`,
    show: underPresser({ card: allHoles }, mine[0]!),
  })
}

/** How many needles can seized strips never select? */
export const lostAsked: Maker = (kit) => {
  const count = kit.draw.whole(1, 4)
  const seized = kit.draw.some(everyColumn.slice(0, strips), count)
  const scene = { card: allHoles, faults: seized.map((strip) => broken('strip.seized', [strip])) }
  const share = needles / strips
  const missed = passOf(kit.library, scene).departures.length
  return number(kit, {
    prompt: `${count === 1 ? 'Strip' : 'Strips'} ${listed(seized.map(String))} ${count === 1 ? 'is' : 'are'} seized. How many of the ${needles} needles can never be selected?`,
    scene,
    value: missed,
    slips: [
      [
        strips * count,
        `${strips} is how many strips there are; each of them serves every ${strips}th needle of ${needles}.`,
      ],
      [3 * count, 'Three columns work each strip, but each column has needles all along the bed.'],
      [needles - missed, 'That is how many can still be selected.'],
      [share, `That is one strip’s share, and more than one is seized.`],
      [count, 'A strip serves more than one needle: it runs the whole bed.'],
    ],
    how: `each strip serves every ${strips}th needle of ${needles}.`,
    because: `${count === 1 ? 'it serves' : `each of the ${inWords(count)} serves`} ${share} needles.`,
    show: scene,
  })
}

/** How many needles apart are the needles that fail? */
export const apartAsked: Maker = (kit) => {
  const { draw } = kit
  const column = draw.whole(1, columns)
  const strip = ((column - 1) % strips) + 1
  const [fault, what, isStrip] = draw.pick([
    [broken('strip.seized', [strip]), `Strip ${strip} is seized`, true],
    [broken('rocker.dead', [column]), `Rocker ${column} is broken`, false],
    [broken('pin.low', [column]), `Pin ${column} is stuck down`, false],
  ] as const)
  const scene = { card: allHoles, faults: [fault] }
  const apart = sharedStep(passOf(kit.library, scene).departures.map(({ needle }) => needle)) ?? 0
  return number(kit, {
    prompt: `${what}, and the row has every hole. How many needles is it from one missed needle to the next?`,
    scene,
    value: apart,
    slips: [
      isStrip
        ? [
            columns,
            `${columns} apart is what one column does: its pin or its rocker; a strip has three columns.`,
          ]
        : [
            strips,
            `${strips} apart is what a strip does; a pin and its rocker serve one column of ${columns}.`,
          ],
      [apart - 1, 'That counts the good needles between; count on to the missed needle itself.'],
      [needles / strips, 'That is how many needles a strip serves, not how far they are apart.'],
    ],
    how: 'ask how often along the bed this very part is used again.',
    because: isStrip
      ? 'a strip has a catch at every eighth needle.'
      : `the card’s ${columns} columns repeat along the bed, and with them this one.`,
    show: scene,
  })
}
