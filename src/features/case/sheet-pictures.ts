import { drawMarkedMachine } from '../../drawings/marked-machine/marked-machine.ts'
import { figure as place } from '../../drawings/place/figure.ts'
import { drawSwatch, swatchNeedles } from '../../drawings/cloth/swatch.ts'
import { type Shape, shapes } from '../../drawings/shared/figure-contract.ts'
import { type Sample, wrongNeedles } from '../../mechanism/sample.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { wrongName } from '../../words/case.ts'
import { counted, listed, rangeWords } from '../../words/lists.ts'
import { required } from '../../browser/dom.ts'
import { setTextAt } from './write-text.ts'
import type { CasePictures } from './pictures.ts'

const cloths = ['knitted', 'asked'] as const

/** A picture in one of its shapes: the styles choose which is seen. */
const picture = (root: HTMLElement, within: string, shape: Shape): SVGSVGElement =>
  required(root, `${within} svg[data-layout="${shape}"]`, SVGSVGElement)

const drawPlain = (root: HTMLElement, { run, frame }: CasePictures, shape: Shape): void => {
  place.draw(picture(root, '.case-machine', shape), run, frame, { shape, prefix: `case-place-${shape}` })
}

const drawMachine = (root: HTMLElement, { run, frame }: CasePictures, shape: Shape): void => {
  const svg = picture(root, '.case-machine', shape)
  const names = [...new Set(run.scenario.faults.map(wrongName))]
  drawMarkedMachine(svg, run, frame, { shape, prefix: `case-place-${shape}` })
  svg.setAttribute(
    'aria-label',
    names.length === 0 ? 'The machine. Nothing is marked.' : `The machine. Marked: ${listed(names)}.`,
  )
}

/** Says what the picture of the machine shows. */
export const showMachineWords = (root: HTMLElement, { run }: CasePictures): void => {
  const found = run.scenario.faults.length === 0 ? '' : ' What is wrong is ringed and numbered.'
  setTextAt(
    root,
    '.case-machine figcaption',
    `The whole machine, drawn open where the card is read and where the long bars lie.${found}`,
  )
}

const pieceWords = (sample: Sample, shape: Shape): string => {
  const { first, last } = swatchNeedles(sample, shape)
  const isWhole = last - first === sample.bed.last - sample.bed.first
  const which = isWhole ? 'The fabric' : 'A part of the fabric'
  return `${which}: ${rangeWords(toNeedle(first), toNeedle(last))}, ${counted(sample.rows.length, 'row')}, the first at the bottom.`
}

const drawFabric = (
  root: HTMLElement,
  { knitting, sample, after }: CasePictures,
  cloth: (typeof cloths)[number],
  shape: Shape,
): void => {
  const svg = picture(root, `.case-fabric-${cloth}`, shape)
  const prefix = `case-${cloth}-${shape}`
  // After the work its fabric takes the place of the one that the card asks for.
  if (after && cloth === 'asked')
    drawSwatch(svg, after.knitting, after.sample, { cloth: 'knitted', shape, prefix })
  else drawSwatch(svg, knitting, sample, { cloth, shape, prefix })
}

/** What each of the two fabrics is, before the work and after it. */
const clothNames = {
  before: { knitted: 'As it comes out', asked: 'As it should be' },
  after: { knitted: 'Before', asked: 'After' },
} as const

/** Says which needles and rows the fabric's pictures show. */
export const showFabricWords = (root: HTMLElement, { sample, after }: CasePictures): void => {
  for (const shape of shapes)
    setTextAt(root, `.case-piece[data-layout="${shape}"]`, pieceWords(sample, shape))
  required(root, '.case-legend-wrong', HTMLElement).hidden = wrongNeedles(sample).length === 0
  const names = clothNames[after ? 'after' : 'before']
  for (const cloth of cloths) {
    setTextAt(root, `.case-fabric-${cloth} figcaption`, names[cloth])
    for (const shape of shapes)
      picture(root, `.case-fabric-${cloth}`, shape).setAttribute(
        'aria-label',
        `The fabric ${names[cloth].toLowerCase()}.`,
      )
  }
}

/** A picture in one of its shapes, and what draws it. */
export interface Piece {
  readonly svg: SVGSVGElement
  readonly draw: () => void
}

/** All pictures of a case, in the order in which they are drawn. */
export const piecesOf = (root: HTMLElement, look: CasePictures): Piece[] =>
  shapes.flatMap((shape) => [
    // First without its marks: all at once would take long.
    { svg: picture(root, '.case-machine', shape), draw: () => drawPlain(root, look, shape) },
    { svg: picture(root, '.case-machine', shape), draw: () => drawMachine(root, look, shape) },
    ...cloths.map((cloth) => ({
      svg: picture(root, `.case-fabric-${cloth}`, shape),
      draw: () => drawFabric(root, look, cloth, shape),
    })),
  ])

/** Whether a picture is seen on a screen of this width once the page is drawn. */
export const isSeen = ({ svg }: Piece): boolean =>
  getComputedStyle(svg).display !== 'none' && svg.parentElement?.dataset['on'] !== 'paper'
