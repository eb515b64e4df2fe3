import {
  type CardPlace,
  columnOfNeedle,
  modulo,
  needleName,
  needlesIn,
  stripOfNeedle,
} from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { askedRow, type Stitch } from '../mechanism/fabric.ts'
import { type Needle, needlesBetween, ofNeedle, toNeedle } from '../mechanism/indices.ts'
import { at, lastOf } from '../mechanism/lookup.ts'
import type { Run } from '../mechanism/pass.ts'
import { type Sample, type SampleRow, wrongNeedles } from '../mechanism/sample.ts'
import { counted, needlesListed } from './lists.ts'
import { patterns } from './patterns.ts'

/** How a fabric's pattern differs from what the card asks: as a whole, in rows, or (`needles`) on single needles. */
type PatternChange =
  | { readonly kind: 'gone' | 'everywhere' | 'rows gone' | 'one row' | 'rows' | 'mirrored' | 'needles' }
  | { readonly kind: 'moved'; readonly by: number }

const isRowOf = (row: readonly Stitch[], stitch: Stitch, { first, last }: Sample['bed']): boolean =>
  needlesBetween(first, last).every((needle) => ofNeedle(row, needle) === stitch)

const inUse = ({ bed }: Sample): readonly Needle[] => needlesIn(bed)

/**
 * On how many strips needles must be wrong before the pattern as a whole is said to be another: a pin, a rocker or a
 * strip reaches one strip, so fewer strips are as well explained by a part or two of the machine.
 */
const leastStrips = 3

/**
 * Whether a sample can prove anything about the pattern as a whole: every column of the card is in the bed, so that no
 * stitch stays unexplained, and what is wrong is not as well said of single needles.
 */
const showsWhole = (sample: Sample, place: CardPlace): boolean =>
  inUse(sample).length >= dimensions.columns &&
  new Set(wrongNeedles(sample).map((needle) => stripOfNeedle(needle, place))).size >= leastStrips

/**
 * Whether every stitch is the one that the card asks for on another needle. Where that needle is out of use, the same
 * column's in another repeat of the card takes its place.
 */
const isTakenFrom = (sample: Sample, other: (needle: Needle) => number): boolean => {
  const { first } = sample.bed
  const pairs = inUse(sample).map((needle) => ({
    needle,
    from: toNeedle(first + modulo(other(needle) - first, dimensions.columns)),
  }))
  return sample.rows.every(({ knitted, asked }) =>
    pairs.every(({ needle, from }) => ofNeedle(knitted, needle) === ofNeedle(asked, from)),
  )
}

/** The needle whose column is read in the mirror, in the same repeat of the card. */
const mirrored = (needle: Needle, place: CardPlace): number =>
  needle + dimensions.columns + 1 - 2 * columnOfNeedle(needle, place)

const movedBy = (sample: Sample): number | null => {
  const steps = Array.from({ length: dimensions.columns / dimensions.strips - 1 }, (_, n) => n + 1)
  const moves = steps.flatMap((step) => [step * dimensions.strips, -step * dimensions.strips])
  return moves.find((by) => isTakenFrom(sample, (needle) => needle - by)) ?? null
}

const text = (row: readonly Stitch[]): string => row.map((stitch) => stitch.charAt(0)).join('')

/** Whether all that is wrong are rows of the card in the wrong places. */
const areOtherRows = (run: Run, wrong: readonly SampleRow[]): boolean => {
  const repeat = run.condition.card?.length ?? 1
  const rows = new Set(Array.from({ length: repeat }, (_, n) => text(askedRow(run, n + 2))))
  return repeat > 1 && wrong.every(({ knitted }) => rows.has(text(knitted)))
}

const wholeChangeOf = (run: Run, sample: Sample): PatternChange | null => {
  const { rows } = sample
  const areOthers = areOtherRows(
    run,
    rows.filter((row) => row.wrong.length > 0),
  )
  if (areOthers && rows.length > 1 && new Set(rows.map(({ knitted }) => text(knitted))).size === 1)
    return { kind: 'one row' }
  const by = movedBy(sample)
  if (by !== null) return { kind: 'moved', by }
  if (isTakenFrom(sample, (needle) => mirrored(needle, run.condition))) return { kind: 'mirrored' }
  return areOthers ? { kind: 'rows' } : null
}

const changeOf = (run: Run, sample: Sample): PatternChange => {
  const { rows, bed } = sample
  const wrong = rows.filter((row) => row.wrong.length > 0)
  if (wrong.every(({ knitted }) => isRowOf(knitted, 'first', bed))) {
    const inPattern = rows.filter(({ asked }) => !isRowOf(asked, 'first', bed))
    return { kind: wrong.length === inPattern.length ? 'gone' : 'rows gone' }
  }
  if (rows.every(({ knitted }) => isRowOf(knitted, 'second', bed))) return { kind: 'everywhere' }
  return (showsWhole(sample, run.condition) ? wholeChangeOf(run, sample) : null) ?? { kind: 'needles' }
}

/** Whether some needles are every `step`th from the first to the last; one between that `isOpen` may be left out. */
const isEvery = (
  needles: readonly Needle[],
  step: number,
  isOpen: (needle: Needle) => boolean = () => false,
): boolean => {
  const [first, last] = [at(needles, 0), lastOf(needles)]
  const due = needlesBetween(first, last).filter((needle) => (needle - first) % step === 0)
  return (
    needles.every((needle) => due.includes(needle)) &&
    due.every((needle) => needles.includes(needle) || isOpen(needle))
  )
}

/** Which needles, as a customer can see it in the fabric; `isOpen` are those on which nothing could be wrong. */
const needleWords = (needles: readonly Needle[], isOpen: (needle: Needle) => boolean): string => {
  const [first, last] = [at(needles, 0), lastOf(needles)]
  if (needles.length <= 4) return `${needles.length === 1 ? 'needle' : 'needles'} ${needlesListed(needles)}`
  const { strips, columns } = dimensions
  const span = `from ${needleName(first)} to ${needleName(last)}`
  if (isEvery(needles, 1)) return `every needle ${span}`
  if (isEvery(needles, columns)) return `${patterns.twentyFourth}, ${span}`
  if (isEvery(needles, strips, isOpen)) return `${patterns.eighth}, ${span}`
  return `needles here and there, ${span}`
}

/** Wrong stitches by what comes in their place: instead of which stitch, and how it is said if always or in part. */
const groups: readonly {
  readonly stitch: Stitch
  readonly insteadOf: readonly Stitch[]
  readonly always: string
  readonly sometimes: string
}[] = [
  {
    stitch: 'first',
    insteadOf: ['second'],
    always: 'the pattern colour is missing where it should be',
    sometimes: 'the pattern colour is sometimes missing where it should be',
  },
  {
    stitch: 'second',
    insteadOf: ['first'],
    always: 'the pattern colour comes where it should not be',
    sometimes: 'the pattern colour sometimes comes where it should not be',
  },
  {
    stitch: 'none',
    insteadOf: ['first', 'second'],
    always: 'no stitch is knitted and a ladder runs up the fabric',
    sometimes: 'no stitch is knitted in some of the rows',
  },
]

const groupWords = ({ rows }: Sample): string =>
  groups
    .flatMap(({ stitch, insteadOf, always, sometimes }) => {
      const found = rows.flatMap(({ wrong, knitted }) =>
        wrong.filter((needle) => ofNeedle(knitted, needle) === stitch),
      )
      const needles = [...new Set(found)].sort((a, b) => a - b)
      if (needles.length === 0) return []
      const due = (needle: Needle): SampleRow[] =>
        rows.filter(({ asked }) => insteadOf.includes(ofNeedle(asked, needle)))
      const isAlways = needles.every((needle) =>
        due(needle).every(({ knitted }) => ofNeedle(knitted, needle) === stitch),
      )
      const which = needleWords(needles, (needle) => due(needle).length === 0)
      return [`On ${which}, ${isAlways ? always : sometimes}.`]
    })
    .join(' ')

/** Whether the wrong rows are every other one of a sample, from its first row or its second to its end. */
const isEveryOther = (rows: readonly SampleRow[]): boolean => {
  const start = rows.findIndex(({ wrong }) => wrong.length > 0)
  return start < 2 && rows.every(({ wrong }, n) => wrong.length > 0 === ((n - start) % 2 === 0))
}

const changeWords = (change: PatternChange, sample: Sample): string => {
  const wrong = sample.rows.filter((row) => row.wrong.length > 0)
  const inRows = `in ${wrong.length} of the ${counted(sample.rows.length, 'row')} shown`
  switch (change.kind) {
    case 'gone':
      return 'The pattern is missing altogether: every stitch comes out in the main colour.'
    case 'everywhere':
      return 'Every stitch comes out in the pattern colour, whether or not the card asks for it.'
    case 'rows gone':
      return `The pattern is missing altogether ${inRows}${isEveryOther(sample.rows) ? ', every other one' : ''}, and right in the others.`
    case 'one row':
      return 'The same row of the pattern comes again and again.'
    case 'rows':
      return `Every row is a row of the pattern, but ${inRows} another one comes than the one that should.`
    case 'mirrored':
      return 'The pattern comes out the other way round, as in a mirror.'
    case 'moved':
      return `The pattern is whole, but it is ${Math.abs(change.by)} stitches further to the ${change.by > 0 ? 'right' : 'left'}.`
    case 'needles':
      return groupWords(sample)
  }
}

/** A whole number with its thousands apart. The browser’s own words for numbers take long the first time. */
const british = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',')

/** How many stitches and needles are wrong in a sample, in a sentence. */
export const countWords = (sample: Sample): string => {
  const { rows, bed } = sample
  const needles = bed.last - bed.first + 1
  const wrong = rows.reduce((sum, row) => sum + row.wrong.length, 0)
  return `In the ${counted(rows.length, 'row')} shown, ${british(wrong)} of ${british(rows.length * needles)} stitches ${wrong === 1 ? 'is' : 'are'} wrong, on ${wrongNeedles(sample).length} of ${counted(needles, 'needle')}.`
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
