import { needleName } from '../mechanism/bed.ts'
import { type Float, floatLength } from '../mechanism/fabric.ts'
import { counted, needlesListed } from './lists.ts'

/** A row of fabric: the pass that knits it, its wrong needles and its long floats. */
export interface KnittedRow {
  readonly pass: number
  readonly wrong: readonly number[]
  readonly floats: readonly Float[]
}

/** How the knitted rows differ from what the card asks, in a sentence or two. */
export const knittedWords = (rows: readonly KnittedRow[]): string => {
  if (rows.length === 0)
    return 'Nothing is knitted yet. The first pass sets the needles out, and the next one knits them.'
  const broken = rows.filter(({ wrong }) => wrong.length > 0)
  const knitted = `${counted(rows.length, 'row')} ${rows.length === 1 ? 'is' : 'are'} knitted.`
  if (broken.length === 0) return `${knitted} Every stitch is as the card asks.`
  const stitches = broken.reduce((sum, { wrong }) => sum + wrong.length, 0)
  const needles = [...new Set(broken.flatMap(({ wrong }) => wrong))].sort((a, b) => a - b)
  const differ = `${stitches} ${stitches === 1 ? 'stitch differs' : 'stitches differ'}`
  return `${knitted} ${differ}, in ${counted(broken.length, 'row')}, on ${needles.length === 1 ? 'needle ' : ''}${needlesListed(needles)}.`
}

/** A long float as a line of a list. */
export const floatWords = (pass: number, float: Float): string => {
  const where =
    float.first === float.last
      ? needleName(float.first)
      : `${needleName(float.first)} to ${needleName(float.last)}`
  return `Row of pass ${pass}: the ${float.yarn} yarn floats behind ${floatLength(float)} stitches, ${where}`
}

/** How many floats are over the limit, in a sentence. */
export const floatsCounted = (count: number, limit: number): string =>
  count === 0
    ? `No float passes behind more than ${limit} stitches.`
    : `${counted(count, 'float')} ${count === 1 ? 'passes' : 'pass'} behind more than ${limit} stitches.`
