import { needleName, needlesIn, stripOfNeedle } from '../../mechanism/bed.ts'
import { askedRow, knittedRow } from '../../mechanism/fabric.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { type Needle, needleAtSlot, ofNeedle } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import type { Run } from '../../mechanism/pass.ts'
import { faultPhrase } from '../faults.ts'
import { counted, needlesListed } from '../lists.ts'

/** The way up from the fault in the fabric to the strip that made it, by way of one of its needles. */
export const trailSentence = (run: Run, needle: Needle): string =>
  `The pattern has a line in it. Follow it up: needle ${needleName(needle)} was missed, because its catch did not move, because strip ${stripOfNeedle(needle, run.condition)} was seized.`

/** What the mended strip does for that needle. */
export const mendedSentence = (run: Run, needle: Needle): string =>
  `Strip ${stripOfNeedle(needle, run.condition)} moves again and takes all its catches along: watch ${needleName(needle)} come forward.`

/** Needles whose stitch is not the one asked for, in the rows of the newest `rows` passes, the newest first. */
const wrongOf = (run: Run, newest: number, rows: number): readonly (readonly number[])[] =>
  Array.from({ length: rows }, (_, n) => {
    const asked = askedRow(run, newest - n)
    return knittedRow(run, newest - n).flatMap((stitch, slot) =>
      stitch === at(asked, slot) ? [] : [needleAtSlot(slot, asked.length)],
    )
  })

/** What the newest `rows` rows of the fabric show: how many stitches are wrong, at which needles, and what came whole. */
export const fabricSentence = (run: Run, newest: number, rows: number): string => {
  const wrong = wrongOf(run, newest, rows)
  const stitches = wrong.flat()
  const whole = wrong.findIndex((row) => row.length > 0)
  if (whole === -1) return `The last ${counted(rows, 'row')} came as the card asks.`
  if (whole > 0)
    return `The last ${counted(whole, 'row')} came whole; in the ${counted(rows - whole, 'row')} below them the line stays.`
  const needles = [...new Set(stitches)].sort((a, b) => a - b)
  const many = stitches.length === 1 ? 'one stitch is' : `${stitches.length} stitches are`
  return `In the last ${counted(rows, 'row')} ${many} wrong, at ${needlesListed(needles)}.`
}

/** The picture of a fault and its mending, in words: what is broken, which needles it leaves out, and what the fabric shows. */
export const describeMend = (run: Run, frame: Frame, rows: number): string => {
  const { pass, came, asked } = frame.pass
  const missed = needlesIn(frame.condition.bed).filter(
    (needle) => ofNeedle(asked, needle) === 'selected' && ofNeedle(came, needle) !== 'selected',
  )
  const faults = run.scenario.faults.map(faultPhrase).join(', ')
  return [
    'The eight strips from above, each with a catch at every eighth needle; the needles; and the fabric that they knit.',
    faults === '' ? 'Nothing is broken.' : `Broken: ${faults}.`,
    missed.length === 0
      ? 'Every needle that was asked for has come forward.'
      : `Asked for and missed: ${needlesListed(missed)}.`,
    fabricSentence(run, pass, rows),
  ].join(' ')
}
