import { element, required } from '../../browser/dom.ts'
import type { NeedleMark } from '../../link/bed-marks.ts'
import { readSession } from '../../link/session-link.ts'
import type { SeenPass } from '../../link/session.ts'
import { passPhrase } from '../../words/finding.ts'
import { seenWords } from '../find/index.ts'
import type { Section } from './section.ts'

const svgNamespace = 'http://www.w3.org/2000/svg'

const indexesOf = (marks: readonly NeedleMark[], ...wanted: NeedleMark[]): number[] =>
  marks.flatMap((mark, needle) => (wanted.includes(mark) ? [needle] : []))

/** The whole bed in a narrow strip, a needle a unit wide, with a bar at each of some needles. */
const bedStrip = ({ marks }: SeenPass): SVGSVGElement => {
  const svg = document.createElementNS(svgNamespace, 'svg')
  svg.setAttribute('viewBox', `0 0 ${marks.length} 10`)
  svg.setAttribute('preserveAspectRatio', 'none')
  svg.setAttribute('aria-hidden', 'true')
  const drawBars = (name: string, needles: readonly number[]): void => {
    const path = document.createElementNS(svgNamespace, 'path')
    path.setAttribute('class', name)
    path.setAttribute('d', needles.map((needle) => `M${needle} 0h1v10h-1z`).join(''))
    svg.append(path)
  }
  drawBars('bed-unseen', indexesOf(marks, 'n'))
  drawBars('bed-wrong', indexesOf(marks, 'w', 'u'))
  return svg
}

const lineOf = (pass: SeenPass): HTMLElement => {
  const { row, way, speed, marks } = pass
  return element('li', {}, [
    passPhrase(row, way, speed),
    bedStrip(pass),
    element('span', { class: 'small' }, [seenWords(marks)]),
  ])
}

/** What was seen before the work and after it, beside each other. Returns what shows it again. */
export const createBeforeAndAfter = ({ root, job, library }: Section): (() => void) => {
  const place = required(root, '.prove-beside', HTMLElement)
  const listOf = (part: 'before' | 'after'): HTMLElement =>
    required(place, `[data-part='${part}']`, HTMLElement)
  let shown = ''
  return () => {
    const { before, after } = job.now()
    const key = JSON.stringify([before, after])
    if (key === shown) return
    shown = key
    for (const [part, text] of [
      ['before', before],
      ['after', after],
    ] as const) {
      const passes = text === '' ? [] : readSession(text, library).session.passes
      listOf(part).replaceChildren(
        ...(passes.length === 0
          ? [element('li', { class: 'small' }, ['Nothing was looked at.'])]
          : passes.map(lineOf)),
      )
    }
  }
}
