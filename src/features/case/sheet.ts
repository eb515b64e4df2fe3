import { drawMarkedMachine } from '../../drawings/marked-machine/marked-machine.ts'
import { figure as place } from '../../drawings/place/figure.ts'
import { drawSwatch, swatchNeedles } from '../../drawings/cloth/swatch.ts'
import { type Shape, shapes } from '../../drawings/shared/figure-contract.ts'
import type { Case } from '../../link/case.ts'
import type { CardLibrary } from '../../link/state.ts'
import { write } from '../../link/write.ts'
import { needleName } from '../../mechanism/bed.ts'
import { type Sample, wrongNeedles } from '../../mechanism/sample.ts'
import { meanwhile, repairs, wrongName } from '../../words/case.ts'
import { paceWords, sampleWords } from '../../words/case-fabric.ts'
import { counted, listed } from '../../words/lists.ts'
import { breathe, rest } from '../../browser/yield-to-browser.ts'
import { required } from '../../browser/dom.ts'
import { setText, showWrong } from './write-text.ts'
import { type Look, lookOf } from './pictures.ts'

const cloths = ['knitted', 'asked'] as const

const showWords = (root: HTMLElement, shown: Case, look: Look): void => {
  const { scenario } = look.run
  showWrong(root, shown, scenario)
  setText(
    root,
    '.case-shows',
    [sampleWords(look.knitting, look.sample), paceWords[look.pace]].join(' ').trim(),
  )
  setText(root, '.case-meanwhile', meanwhile(scenario))
  setText(root, '.case-repairs', repairs(scenario).join(' '))
  required(root, '.case-caution', HTMLElement).hidden = scenario.faults.length === 0 && scenario.wear === 0
}

/** A picture in one of its shapes: the styles choose which is seen. */
const picture = (root: HTMLElement, within: string, shape: Shape): SVGSVGElement =>
  required(root, `${within} svg[data-layout="${shape}"]`, SVGSVGElement)

const drawPlain = (root: HTMLElement, { run, frame }: Look, shape: Shape): void => {
  place.draw(picture(root, '.case-machine', shape), run, frame, { shape, prefix: `case-place-${shape}` })
}

const drawMachine = (root: HTMLElement, { run, frame }: Look, shape: Shape): void => {
  const svg = picture(root, '.case-machine', shape)
  const names = [...new Set(run.scenario.faults.map(wrongName))]
  drawMarkedMachine(svg, run, frame, { shape, prefix: `case-place-${shape}` })
  svg.setAttribute(
    'aria-label',
    names.length === 0 ? 'The machine. Nothing is marked.' : `The machine. Marked: ${listed(names)}.`,
  )
}

const showMachineWords = (root: HTMLElement, { run }: Look): void => {
  const found = run.scenario.faults.length === 0 ? '' : ' What is wrong is ringed and numbered.'
  setText(
    root,
    '.case-machine figcaption',
    `The whole machine, drawn open where the card is read and where the long bars lie.${found}`,
  )
}

const pieceWords = (sample: Sample, shape: Shape): string => {
  const { first, last } = swatchNeedles(sample, shape)
  const isWhole = last - first === sample.bed.last - sample.bed.first
  const which = isWhole ? 'The fabric' : 'A part of the fabric'
  return `${which}: needles ${needleName(first)} to ${needleName(last)}, ${counted(sample.rows.length, 'row')}, the first at the bottom.`
}

const drawFabric = (
  root: HTMLElement,
  { knitting, sample }: Look,
  cloth: (typeof cloths)[number],
  shape: Shape,
): void => {
  const svg = picture(root, `.case-fabric-${cloth}`, shape)
  drawSwatch(svg, knitting, sample, { cloth, shape, prefix: `case-${cloth}-${shape}` })
}

const showFabricWords = (root: HTMLElement, { sample }: Look): void => {
  for (const shape of shapes) setText(root, `.case-piece[data-layout="${shape}"]`, pieceWords(sample, shape))
  required(root, '.case-legend-wrong', HTMLElement).hidden = wrongNeedles(sample).length === 0
}

/** A picture in one of its shapes, and what draws it. */
interface Piece {
  readonly svg: SVGSVGElement
  readonly draw: () => void
}

const piecesOf = (root: HTMLElement, look: Look): Piece[] =>
  shapes.flatMap((shape) => [
    // First without its marks: all at once would take long.
    { svg: picture(root, '.case-machine', shape), draw: () => drawPlain(root, look, shape) },
    { svg: picture(root, '.case-machine', shape), draw: () => drawMachine(root, look, shape) },
    ...cloths.map((cloth) => ({
      svg: picture(root, `.case-fabric-${cloth}`, shape),
      draw: () => drawFabric(root, look, cloth, shape),
    })),
  ])

const isSeen = ({ svg }: Piece): boolean => getComputedStyle(svg).display !== 'none'

/**
 * Makes what shows a case on the page, a piece at a time: what is seen, and then, by and by, the shapes for other widths
 * and for paper. While a title or a note is typed, the machine and the fabric stay as they are.
 */
export const createSheet = (root: HTMLElement, library: CardLibrary): ((shown: Case) => Promise<void>) => {
  let asked: string | undefined
  let latest: Case | null = null
  let look: Look | null = null
  let unseen: Piece[] = []
  const drawUnseen = async (drawn: Look): Promise<void> => {
    while (unseen.length > 0) {
      await rest()
      if (look !== drawn) return
      unseen.shift()?.draw()
    }
  }
  addEventListener('beforeprint', () => {
    for (const { draw } of unseen.splice(0)) draw()
  })
  return async (shown) => {
    const text = write({ ...shown.state, note: '' }, library)
    latest = shown
    if (text === asked) {
      if (look) showWords(root, shown, look)
      return
    }
    asked = text
    look = null
    const found = await lookOf(shown.state, library)
    if (text !== asked) return
    look = found
    showWords(root, latest, found)
    await breathe()
    showMachineWords(root, found)
    showFabricWords(root, found)
    const pieces = piecesOf(root, found)
    unseen = pieces.filter((piece) => !isSeen(piece))
    for (const { draw } of pieces.filter(isSeen)) {
      await breathe()
      if (look !== found) return
      draw()
    }
    void drawUnseen(found)
  }
}
