import { required, setText } from '../../browser/dom.ts'
import { inPieces } from '../../browser/yield-to-browser.ts'
import { moveTo, prefersReducedMotion, stopMoving } from '../../browser/tween.ts'
import { layouts, reachOf, shownRows } from '../../drawings/mend/layout.ts'
import { drawMend } from '../../drawings/mend/mend.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { frameAt } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeMend, fabricSentence, mendedSentence } from '../../words/figures/mend.ts'

/** Where the machine is: whose passes it makes, in which it is, and where its carriage is. */
interface Place {
  readonly run: Run
  readonly pass: number
  readonly x: number
}

/** Knits rows in the home page's picture, in a calm motion, or at once for who wants no motion. */
export interface Knitter {
  /** Knits from the beginning of pass `from` to the end of pass `to`. */
  readonly knit: (run: Run, from: number, to: number) => void
  /** Shows the end of a pass at once. */
  readonly show: (run: Run, pass: number) => void
}

/** How many needles a second the carriage passes: in the first row, which can be watched, and in those after it. */
const paces = { first: 13, next: 60 } as const

/** How long the fabric takes to go down a row, in s. */
const turnTime = 0.25

/** No strip shifted. */
const atRest = new Float64Array(dimensions.strips)

/** Computes the passes that set out the fabric in sight in a pass, and pauses after each: they are kept. */
function* fabricOf(run: Run, shape: Shape, pass: number): Generator<undefined, undefined> {
  for (let setting = Math.max(1, pass - layouts[shape].rows - 1); setting <= pass; setting++) {
    run.passOf(setting)
    yield
  }
}

/**
 * Makes the knitter of the picture in `root`, which begins at a place; it says what the fabric shows once it rests. Comes
 * once all is computed that the row after that place is drawn from.
 */
export const createKnitter = async (root: HTMLElement, first: Place): Promise<Knitter> => {
  const narrow = matchMedia('(max-width: 44.99rem)')
  const said = required(root, '.home-said', HTMLElement)
  const words = required(root, '#home-figure-words', HTMLElement)
  let place = first
  /** What is moved in time: the carriage, and how far the fabric has still to go down. */
  let moving = { x: first.x, slide: 0 }
  let isFast = false
  const shape = (): Shape => (narrow.matches ? 'narrow' : 'wide')
  await inPieces(fabricOf(first.run, shape(), first.pass + 1))

  const draw = (): void => {
    const svg = required(root, `svg[data-layout="${shape()}"]`, SVGSVGElement)
    const frame = frameAt(place.run, place.pass, place.x)
    // Strips that come and go dozens of times a second would only flicker.
    drawMend(svg, place.run, isFast ? { ...frame, stripShifts: atRest } : frame, {
      shape: shape(),
      prefix: `mend-${shape()}`,
      slide: moving.slide,
    })
  }
  const show = (run: Run, pass: number): void => {
    stopMoving(moving)
    isFast = false
    moving = { x: reachOf('wide', wayOfPass(pass)).end, slide: 0 }
    place = { run, pass, x: moving.x }
    draw()
    setText(said, fabricSentence(run, pass, shownRows))
    setText(words, describeMend(run, frameAt(run, pass, moving.x), shownRows))
  }
  const knit = (run: Run, from: number, to: number): void => {
    if (prefersReducedMotion()) {
      show(run, to)
      return
    }
    stopMoving(moving)
    if (run.scenario.faults.length === 0) setText(said, mendedSentence(run, layouts.wide.subject))
    const row = (pass: number): void => {
      isFast = pass > from
      const { start, end } = reachOf(shape(), wayOfPass(pass))
      const now = { x: start, slide: 1 }
      moving = now
      const onUpdate = (): void => {
        place = { run, pass, x: now.x }
        draw()
      }
      const onComplete = (): void => {
        if (pass < to) row(pass + 1)
        else show(run, to)
      }
      const duration = Math.abs(end - start) / (isFast ? paces.next : paces.first)
      const cross = (): void => {
        moveTo(now, { x: end, duration, ease: 'none', onUpdate, onComplete })
      }
      moveTo(now, { slide: 0, duration: turnTime, ease: 'power1.inOut', onUpdate, onComplete: cross })
    }
    row(from)
  }
  narrow.addEventListener('change', draw)
  return { knit, show }
}
