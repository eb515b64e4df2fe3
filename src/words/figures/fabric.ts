import { needleName } from '../../mechanism/bed.ts'
import {
  askedRow,
  type Float,
  floatLength,
  floatLimit,
  hasKnitted,
  knittedRow,
  longestFloat,
  type Stitch,
} from '../../mechanism/fabric.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { type Needle, needlesOfBed, ofNeedle } from '../../mechanism/indices.ts'
import { counted, needlesListed } from '../lists.ts'

/** How many rows of fabric the description covers. */
const describedRows = 16

/** A row of fabric that is described. */
interface FabricRow {
  readonly stitches: readonly Stitch[]
  /** Needles whose stitch is knitted and is not the one asked for. */
  readonly wrong: readonly number[]
}

/** The newest rows of fabric that a card row set out, over all needles in use. */
const rowsOf = (run: Run, frame: Frame): FabricRow[] => {
  const { pass, way } = frame.pass
  const count = Math.min(describedRows, pass - 1)
  return Array.from({ length: count }, (_, n) => {
    const asked = askedRow(run, pass - n)
    const knitted = knittedRow(run, pass - n)
    const isKnitted = (needle: Needle): boolean => n > 0 || hasKnitted(frame.x, needle, way)
    const needles = needlesOfBed(knitted.length)
    const stitches = needles.map((needle) => (isKnitted(needle) ? ofNeedle(knitted, needle) : 'none'))
    const wrong = needles.filter(
      (needle) => isKnitted(needle) && ofNeedle(knitted, needle) !== ofNeedle(asked, needle),
    )
    return { stitches, wrong }
  })
}

const settingSentence = (frame: Frame): string => {
  const { pass, row, way } = frame.pass
  const read = row === null ? 'has no card to read' : `reads card row ${row}`
  return `Pass ${pass}, to the ${way === 1 ? 'right' : 'left'}, ${read} and sets out the needles for the next row of fabric.`
}

const knittingSentence = (run: Run, frame: Frame): string => {
  const { pass } = frame.pass
  if (pass === 1) return 'The row it knits is plain: nothing was set out before it.'
  const { row } = run.passOf(pass - 1)
  const what =
    row === null ? 'what the pass before set out' : `what card row ${row} set out in the pass before`
  return `The row it knits is ${what}: selected needles take the second yarn, drawn blue, and plain ones the first.`
}

const differenceSentence = (rows: readonly FabricRow[]): string => {
  if (rows.length === 0) return ''
  const broken = rows.filter(({ wrong }) => wrong.length > 0)
  if (broken.length === 0) return 'The fabric is as the card asks.'
  const stitches = broken.reduce((sum, { wrong }) => sum + wrong.length, 0)
  const needles = [...new Set(broken.flatMap(({ wrong }) => wrong))].sort((a, b) => a - b)
  return `The fabric differs from what the card asks in ${stitches === 1 ? 'one stitch' : `${stitches} stitches`} of ${counted(broken.length, 'row')}, on ${needles.length === 1 ? 'needle ' : ''}${needlesListed(needles)}; those are outlined and hatched.`
}

const floatSentence = (longest: Float | null): string => {
  if (!longest || floatLength(longest) <= floatLimit) return ''
  const yarn = longest.yarn === 'first' ? 'first' : 'second'
  return `The longest float, of the ${yarn} yarn, passes behind ${floatLength(longest)} stitches from ${needleName(longest.first)} on. A float over more than about ${floatLimit} catches fingers; a dashed line marks each.`
}

/** Figure 8 in words: what is set out, what is knitted, where the fabric is wrong and where a float is long. */
export const describeFabric = (run: Run, frame: Frame): string => {
  const rows = rowsOf(run, frame)
  return [
    settingSentence(frame),
    knittingSentence(run, frame),
    differenceSentence(rows),
    floatSentence(longestFloat(rows.map(({ stitches }) => stitches))),
    'The fabric is shown from its knit side, needle for needle. On the machine its other side faces you, so the knit side has the pattern mirrored.',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
