import { modulo, needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { askedRow, type Stitch } from '../mechanism/fabric.ts'
import { at, lastOf } from '../mechanism/lookup.ts'
import type { Run } from '../mechanism/pass.ts'
import { type Sample, type SampleRow, wrongNeedles } from '../mechanism/sample.ts'
import { toNeedle } from '../mechanism/indices.ts'
import { counted, needlesListed, sharedStep } from './lists.ts'
import { patterns } from './patterns.ts'

/** How a fabric's pattern differs from what the card asks: as a whole, in rows, or (`needles`) on single needles. */
type PatternChange =
  | { readonly kind: 'gone' | 'everywhere' | 'rows gone' | 'one row' | 'rows' | 'mirrored' | 'needles' }
  | { readonly kind: 'moved'; readonly by: number }

const isRowOf = (row: readonly Stitch[], stitch: Stitch, { first, last }: Sample['bed']): boolean =>
  row.every((other, index) => index < first || index > last || other === stitch)

/** Whether every row is the asked one with each needle's stitch taken from another; those beyond the bed are open. */
const isTakenFrom = ({ rows, bed }: Sample, other: (index: number) => number): boolean =>
  rows.every(({ knitted, asked }) =>
    knitted.every((stitch, index) => {
      const from = other(index)
      const isOpen = index < bed.first || index > bed.last || from < bed.first || from > bed.last
      return isOpen || stitch === asked[from]
    }),
  )

/** The needle whose column is read in the mirror, in the same repeat of the card. */
const mirrored = (index: number): number => {
  const place = modulo(index - dimensions.needles / 2, dimensions.columns)
  return index - place + (dimensions.columns - 1 - place)
}

const movedBy = (sample: Sample): number | null => {
  const steps = Array.from({ length: dimensions.columns / dimensions.strips - 1 }, (_, n) => n + 1)
  const moves = steps.flatMap((step) => [step * dimensions.strips, -step * dimensions.strips])
  return moves.find((by) => isTakenFrom(sample, (index) => index - by)) ?? null
}

const text = (row: readonly Stitch[]): string => row.map((stitch) => stitch.charAt(0)).join('')

/** Whether all that is wrong are rows of the card in the wrong places. */
const areOtherRows = (run: Run, wrong: readonly SampleRow[]): boolean => {
  const repeat = run.condition.card?.length ?? 1
  const rows = new Set(Array.from({ length: repeat }, (_, n) => text(askedRow(run, n + 2))))
  return repeat > 1 && wrong.every(({ knitted }) => rows.has(text(knitted)))
}

const changeOf = (run: Run, sample: Sample): PatternChange => {
  const { rows, bed } = sample
  const wrong = rows.filter((row) => row.wrong.length > 0)
  const inPattern = rows.filter(({ asked }) => !isRowOf(asked, 'first', bed))
  if (wrong.every(({ knitted }) => isRowOf(knitted, 'first', bed)))
    return { kind: wrong.length === inPattern.length ? 'gone' : 'rows gone' }
  if (rows.every(({ knitted }) => isRowOf(knitted, 'second', bed))) return { kind: 'everywhere' }
  const kinds = new Set(rows.map(({ knitted }) => text(knitted)))
  if (rows.length > 1 && kinds.size === 1 && inPattern.length > 0 && areOtherRows(run, wrong))
    return { kind: 'one row' }
  const by = movedBy(sample)
  if (by !== null) return { kind: 'moved', by }
  if (isTakenFrom(sample, mirrored)) return { kind: 'mirrored' }
  return { kind: areOtherRows(run, wrong) ? 'rows' : 'needles' }
}

/** Which needles, as a customer can see it in the fabric. */
const needleWords = (needles: readonly number[]): string => {
  const [first, last] = [at(needles, 0), lastOf(needles)]
  if (needles.length <= 4) return `${needles.length === 1 ? 'needle' : 'needles'} ${needlesListed(needles)}`
  const isStep = (step: number): boolean => needles.every((index) => modulo(index - first, step) === 0)
  const { strips, columns } = dimensions
  const span = `from ${needleName(toNeedle(first))} to ${needleName(toNeedle(last))}`
  if (sharedStep(needles) === 1) return `every needle ${span}`
  if (isStep(columns)) return `${patterns.twentyFourth}, ${span}`
  if (isStep(strips)) return `${patterns.eighth}, ${span}`
  return `needles here and there, ${span}`
}

/** Wrong stitches by what came in their place, each on its own needles. */
const groups: readonly { readonly stitch: Stitch; readonly words: string }[] = [
  { stitch: 'first', words: 'the pattern colour is missing where it should be' },
  { stitch: 'second', words: 'the pattern colour comes where it should not be' },
  { stitch: 'none', words: 'no stitch is knitted and a ladder runs up the fabric' },
]

const groupWords = ({ rows }: Sample): string =>
  groups
    .flatMap(({ stitch, words }) => {
      const found = rows.flatMap(({ wrong, knitted }) => wrong.filter((index) => knitted[index] === stitch))
      const needles = [...new Set(found)].sort((a, b) => a - b)
      return needles.length === 0 ? [] : [`On ${needleWords(needles)}, ${words}.`]
    })
    .join(' ')

const everyOther = (wrong: readonly SampleRow[]): string =>
  sharedStep(wrong.map(({ pass }) => pass)) === 2 ? ', every other one' : ''

const changeWords = (change: PatternChange, sample: Sample): string => {
  const wrong = sample.rows.filter((row) => row.wrong.length > 0)
  const inRows = `in ${wrong.length} of the ${counted(sample.rows.length, 'row')} shown`
  switch (change.kind) {
    case 'gone':
      return 'The pattern is missing altogether: every stitch comes out in the main colour.'
    case 'everywhere':
      return 'Every stitch comes out in the pattern colour, wherever the card asks for it or not.'
    case 'rows gone':
      return `The pattern is missing altogether ${inRows}${everyOther(wrong)}, and right in the others.`
    case 'one row':
      return 'The same row of the pattern comes again and again.'
    case 'rows':
      return `The needles all work, but ${inRows} another row of the pattern comes than the one that should.`
    case 'mirrored':
      return 'The pattern comes out the other way round, as in a mirror.'
    case 'moved':
      return `The pattern is whole, but it stands ${Math.abs(change.by)} stitches further to the ${change.by > 0 ? 'right' : 'left'}.`
    case 'needles':
      return groupWords(sample)
  }
}

const british = (value: number): string => value.toLocaleString('en-GB')

/** How many stitches and needles are wrong in a sample, in a sentence. */
export const countWords = (sample: Sample): string => {
  const { rows, bed } = sample
  const inUse = bed.last - bed.first + 1
  const wrong = rows.reduce((sum, row) => sum + row.wrong.length, 0)
  return `In the ${counted(rows.length, 'row')} shown, ${british(wrong)} of ${british(rows.length * inUse)} stitches are wrong, on ${wrongNeedles(sample).length} of ${counted(inUse, 'needle')}.`
}

/** What a customer sees in a sample of fabric, and how much of it. */
export const sampleWords = (run: Run, sample: Sample): string => {
  if (wrongNeedles(sample).length === 0)
    return `In the ${counted(sample.rows.length, 'row')} shown every stitch comes out as the card asks.`
  return `${changeWords(changeOf(run, sample), sample)} ${countWords(sample)}`
}

/** At which pace a fault shows: at any, only fast, only faster than in the state shown, or at none. */
export type Pace = 'any' | 'fast' | 'faster' | 'never' | 'sound'

/** What there is to say about the carriage's pace; empty where it makes no difference. */
export const paceWords: Readonly<Record<Pace, string>> = {
  any: '',
  sound: '',
  fast: 'It shows only when the carriage is moved fast: slowly, every stitch comes out right.',
  faster:
    'At the pace set here every stitch comes out right. The fabric shown is knitted with the carriage moved fast.',
  never: 'So far it does not show in the fabric, neither slowly nor fast.',
}
