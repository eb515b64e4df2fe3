import { drawSwatch } from '../../drawings/cloth/swatch.ts'
import type { Run } from '../../mechanism/pass.ts'
import { type Sample, sampleOf } from '../../mechanism/sample.ts'
import { emptySvg } from '../drawn-markup.ts'
import { minified, withStyles } from '../minify-svg.ts'
import { stillStyles } from '../still-styles.ts'
import { flattened } from './flat-styles.ts'

/** How many rows there is room for. */
const mostRows = 12

/** The rows of a sample that show most of what is wrong, the first of them where nothing is. */
const shownRows = (sample: Sample): Sample => {
  const wrongFrom = (n: number): number =>
    sample.rows.slice(n, n + mostRows).reduce((sum, { wrong }) => sum + wrong.length, 0)
  const starts = Array.from({ length: Math.max(1, sample.rows.length - mostRows + 1) }, (_, n) => n)
  const first = starts.reduce((best, n) => (wrongFrom(n) > wrongFrom(best) ? n : best), 0)
  return { ...sample, rows: sample.rows.slice(first, first + mostRows) }
}

/** A picture as a file, with its size in pixels. */
interface PictureFile {
  readonly svg: string
  readonly width: number
  readonly height: number
}

/** The cloth that a machine has knitted around a pass, as an SVG file; what is wrong in it is outlined, not hatched. */
export const clothFile = (run: Run, pass: number): PictureFile => {
  const drawn = emptySvg()
  const sample = shownRows(sampleOf(run, pass))
  drawSwatch(drawn, run, sample, { cloth: 'knitted', shape: 'wide', prefix: 'cloth' })
  const [, , width = 0, height = 0] = (drawn.getAttribute('viewBox') ?? '').split(' ').map(Number)
  // A stitch is whole pixels wide and high, so with hard edges each looks the same, and the file is small.
  const attributes = `viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" shape-rendering="crispEdges"`
  const styles = `${stillStyles('fabric')} .hatch-wrong { display: none; }`
  return { svg: flattened(withStyles(attributes, styles, minified(drawn.innerHTML))), width, height }
}
