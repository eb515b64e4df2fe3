import { drawMarkedPlace } from '../../drawings/marked-place.ts'
import { drawSwatch, swatchNeedles } from '../../drawings/swatch.ts'
import type { Shape } from '../../drawings/figure.ts'
import type { Case } from '../../link/case.ts'
import type { CardLibrary } from '../../link/state.ts'
import { write } from '../../link/write.ts'
import { needleName } from '../../mechanism/bed.ts'
import { wrongNeedles } from '../../mechanism/sample.ts'
import { meanwhile, repairs, wearWords, wrongLead, wrongName, wrongParts } from '../../words/case.ts'
import { paceWords, sampleWords } from '../../words/case-fabric.ts'
import { counted, listed } from '../../words/lists.ts'
import { element, required } from '../machine/dom.ts'
import { type Look, lookOf } from './look.ts'

const small = matchMedia('screen and (max-width: 44.99rem)')
const shapeNow = (): Shape => (small.matches ? 'narrow' : 'wide')

const setText = (root: HTMLElement, selector: string, words: string): void => {
  const found = required(root, selector, HTMLElement)
  found.textContent = words
  found.hidden = words === ''
}

const showWords = (root: HTMLElement, { title, state }: Case, look: Look): void => {
  const { scenario } = look.run
  setText(root, '.case-title', title === '' ? 'About your knitting machine' : title)
  setText(root, '.case-note', state.note)
  required(root, '.case-message', HTMLElement).hidden = state.note.trim() === ''
  setText(root, '.case-lead', wrongLead(scenario))
  required(root, '.case-parts', HTMLElement).replaceChildren(
    ...wrongParts(scenario.faults).map(({ name, words }) =>
      element('li', {}, [element('strong', {}, [`${name}. `]), words]),
    ),
  )
  setText(root, '.case-wear', wearWords(scenario))
  setText(
    root,
    '.case-shows',
    [sampleWords(look.knitting, look.sample), paceWords[look.pace]].join(' ').trim(),
  )
  setText(root, '.case-meanwhile', meanwhile(scenario))
  setText(root, '.case-repairs', repairs(scenario).join(' '))
  required(root, '.case-caution', HTMLElement).hidden = scenario.faults.length === 0 && scenario.wear === 0
}

const showMachine = (root: HTMLElement, { run, frame }: Look, shape: Shape): void => {
  const svg = required(root, '.case-machine svg', SVGSVGElement)
  svg.replaceChildren()
  drawMarkedPlace(svg, run, frame, { shape, prefix: 'case-place' })
  const names = [...new Set(run.scenario.faults.map(wrongName))]
  svg.setAttribute(
    'aria-label',
    names.length === 0 ? 'The machine. Nothing is marked.' : `The machine. Marked: ${listed(names)}.`,
  )
  const found = names.length === 0 ? '' : ' What is wrong is ringed, and numbered as above.'
  setText(
    root,
    '.case-machine figcaption',
    `The whole machine, drawn open where the card is read and where the long bars lie.${found}`,
  )
}

const showFabrics = (root: HTMLElement, { knitting, sample }: Look, shape: Shape): void => {
  for (const cloth of ['knitted', 'asked'] as const) {
    const svg = required(root, `.case-fabric-${cloth} svg`, SVGSVGElement)
    svg.replaceChildren()
    svg.setAttribute('data-shape', shape)
    drawSwatch(svg, knitting, sample, { cloth, shape, prefix: `case-${cloth}` })
  }
  const { first, last } = swatchNeedles(sample, shape)
  const which =
    last - first + 1 < sample.bed.last - sample.bed.first + 1 ? 'A part of the fabric' : 'The fabric'
  setText(
    root,
    '.case-piece',
    `${which}: needles ${needleName(first)} to ${needleName(last)}, ${counted(sample.rows.length, 'row')}, the first at the bottom.`,
  )
  required(root, '.case-legend-wrong', HTMLElement).hidden = wrongNeedles(sample).length === 0
}

/** Shows a case on the page, and draws it anew when the page changes between phone and desk. */
export const createSheet = (root: HTMLElement, library: CardLibrary): ((shown: Case) => void) => {
  let last: Look | null = null
  let lastText: string | null = null
  const draw = (): void => {
    if (!last) return
    showMachine(root, last, shapeNow())
    showFabrics(root, last, shapeNow())
  }
  small.addEventListener('change', draw)
  return (shown) => {
    // While a title or a note is typed the machine stays as it is.
    const text = write({ ...shown.state, note: '' }, library)
    const isNew = text !== lastText || !last
    if (isNew) last = lookOf(shown.state, library)
    lastText = text
    if (last) showWords(root, shown, last)
    if (isNew) draw()
  }
}
