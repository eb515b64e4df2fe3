import { element, required, setText } from '../../browser/dom.ts'
import { loadValues } from '../../browser/measured-values.ts'
import { base } from '../../link/site-path.ts'
import { linkText, measuredIn } from '../../link/measured-link.ts'
import { type Margin, type MarginId, margins } from '../../mechanism/margins.ts'
import { measuredRun } from '../../mechanism/measured-machine.ts'
import { measurementNames } from '../../mechanism/measurement.ts'
import { marginWords } from '../../words/figures/margins.ts'
import { listed, millimetres } from '../../words/lists.ts'
import { measuredText, measurementWords } from '../../words/measure.ts'
import type { Section } from './section.ts'

/** When a machine was measured, and where a job keeps it. */
const times = { before: 'measuredBefore', after: 'measuredAfter' } as const
type Time = keyof typeof times
const timeNames = Object.keys(times) as Time[]

/** What is left of each stage in the worse of the two ways, in mm; null where nothing was measured. */
const worstMargins = (text: string, { library }: Section): ReadonlyMap<MarginId, Margin> | null => {
  const found = text === '' ? null : measuredIn(text, library)
  if (!found) return null
  const run = measuredRun(found)
  const left = margins(run, -1)
  return new Map(
    margins(run, 1).map((right, n) => {
      const other = left[n]
      return [right.id, other && other.mm < right.mm ? other : right] as const
    }),
  )
}

const measuredWords = (text: string, { library }: Section): string => {
  const measured = text === '' ? undefined : measuredIn(text, library)?.measured
  if (!measured) return 'nothing is measured yet.'
  return `${listed(
    measurementNames.flatMap((name) => {
      const value = measured[name]
      return value === undefined ? [] : [`${measurementWords[name]} ${measuredText(name, value)}`]
    }),
  )}.`
}

const marginsTable = (section: Section): HTMLTableElement | null => {
  const { measuredBefore, measuredAfter } = section.job.now()
  const [before, after] = [worstMargins(measuredBefore, section), worstMargins(measuredAfter, section)]
  const ids = [...(before ?? after ?? new Map<MarginId, Margin>()).keys()]
  if (ids.length === 0) return null
  const cell = (all: ReadonlyMap<MarginId, Margin> | null, id: MarginId): HTMLTableCellElement => {
    const margin = all?.get(id)
    if (!margin) return element('td', {}, ['–'])
    return element('td', { 'data-state': margin.mm > 0 ? 'holds' : 'fails' }, [millimetres(margin.mm)])
  }
  return element('table', {}, [
    element('caption', {}, [
      'What is left before each stage fails, in the worse of the two ways. What was not measured is the training machine’s.',
    ]),
    element('thead', {}, [
      element('tr', {}, [
        element('th', { scope: 'col' }, ['Stage']),
        element('th', { scope: 'col' }, ['Before']),
        element('th', { scope: 'col' }, ['After']),
      ]),
    ]),
    element(
      'tbody',
      {},
      ids.map((id) =>
        element('tr', {}, [
          element('th', { scope: 'row' }, [`${marginWords[id].stage}: ${marginWords[id].name}`]),
          cell(before, id),
          cell(after, id),
        ]),
      ),
    ),
  ])
}

/** Makes the section in which a machine is measured before and after the work; gives what shows it as the job is now. */
export const createMeasure = (section: Section): (() => void) => {
  const { job, library } = section
  const root = required(section.root, "[data-moment='measure'].job-moment", HTMLElement)
  const said = required(root, '.measured-said', HTMLElement)
  const partOf = (time: Time): HTMLElement =>
    required(root, `.measured-time[data-part='${time}']`, HTMLElement)
  for (const time of timeNames) {
    const part = partOf(time)
    required(part, '.measured-take', HTMLButtonElement).addEventListener('click', () => {
      const text = linkText(loadValues(), library)
      setText(said, text === '' ? 'Nothing is on the measuring page: measure first, then take it.' : '')
      if (text !== '') job.set({ [times[time]]: text })
    })
    required(part, '.measured-drop', HTMLButtonElement).addEventListener('click', () => {
      setText(said, '')
      job.set({ [times[time]]: '' })
    })
  }
  return () => {
    for (const time of timeNames) {
      const part = partOf(time)
      const text = job.now()[times[time]]
      setText(required(part, '.measured-words', HTMLElement), measuredWords(text, section))
      const show = required(part, '.measured-show', HTMLAnchorElement)
      show.hidden = text === ''
      show.href = `${base}/measure/#${text}`
      required(part, '.measured-drop', HTMLButtonElement).hidden = text === ''
    }
    const table = marginsTable(section)
    required(root, '.measured-margins', HTMLElement).replaceChildren(...(table ? [table] : []))
  }
}
