import { type Composed, composed } from '../composed.ts'
import { drawMachine, type MachineShown } from '../machine-drawing.ts'
import { lettering } from '../picture.ts'
import { emptySheet, paint, type Sheet } from '../raster.ts'
import { createWriter } from '../resolved.ts'
import type { Scheme } from '../scheme.ts'
import { staged } from '../staging.ts'
import { frameCount, framesOf, type Stretch } from './stretch.ts'

/** A film before it is drawn: which figure, what it shows, and what is written on it. */
export interface Film {
  readonly shown: MachineShown
  readonly stretch: Stretch
  readonly scheme: Scheme
  readonly title: string
  /** What it shows, for who does not see it. */
  readonly description: string
  /** Written under it: what it is of, and the link; none where it is empty. */
  readonly sentence: string
  readonly address: string
}

/** How a film is drawn. */
interface Playing {
  /** Pictures a second. */
  readonly rate: number
  /** Which of its pictures are wanted, by their number from 0; all unless it is said. */
  readonly isWanted?: (n: number) => boolean
  readonly signal?: AbortSignal
}

/** Draws a film's pictures one after the other, each as SVG. Throws an AbortError where it is given up. */
const playFilm = async (
  { shown, stretch, scheme, ...words }: Film,
  { rate, isWanted = () => true, signal }: Playing,
  each: (picture: Composed, n: number) => Promise<void>,
): Promise<void> => {
  const [letters, { svg, width, height, draw }] = await Promise.all([lettering(), drawMachine(shown)])
  const { styleOf, inks, remove } = staged(svg, width, scheme)
  try {
    const write = createWriter(styleOf)
    let n = 0
    for (const { run, frame, over } of framesOf(stretch, rate)) {
      signal?.throwIfAborted()
      if (isWanted(n)) {
        draw(run, frame)
        const drawing = { markup: write(svg), width, height }
        await each(composed(drawing, { ...words, over }, { ...letters, inks }), n)
      }
      n += 1
    }
  } finally {
    remove()
  }
}

/** Draws a film's pictures on a canvas of this width, its height after it, both even, as video needs them. */
export const paintFilm = async (
  film: Film,
  width: number,
  playing: Playing,
  each: (sheet: Sheet, n: number) => Promise<void> | void,
): Promise<void> => {
  let sheet: Sheet | null = null
  await playFilm(film, playing, async (picture, n) => {
    sheet ??= emptySheet(width, 2 * Math.round((width * picture.height) / picture.width / 2))
    await paint(sheet, picture)
    await each(sheet, n)
  })
}

/** The number of the picture in the middle of a film's last part, which represents it. */
const middleOf = ({ stretch }: Film, rate: number): number => {
  const count = frameCount(stretch, rate)
  return count - Math.round(count / stretch.parts.length / 2)
}

/** The picture that represents a film. */
export const stillOf = async (film: Film): Promise<Composed> => {
  const rate = 2
  const stills: Composed[] = []
  const isWanted = (n: number): boolean => n === middleOf(film, rate)
  await playFilm(film, { rate, isWanted }, async (picture) => {
    stills.push(picture)
    return Promise.resolve()
  })
  const [still] = stills
  if (!still) throw new Error('the film has no picture')
  return still
}
