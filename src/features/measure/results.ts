import { element, required, setText } from '../../browser/dom.ts'
import { bestSettings } from '../../mechanism/best-setting.ts'
import {
  type MeasuredMargin,
  measuredMargins,
  measuredRun,
  selectionBounds,
} from '../../mechanism/measured-machine.ts'
import { marginSlopes } from '../../mechanism/margin-slopes.ts'
import { measuredSlopes, measurementNames, measurements, stackUp } from '../../mechanism/measurement.ts'
import { marginWords, percent } from '../../words/figures/margins.ts'
import { listed, withUnit } from '../../words/lists.ts'
import { capital } from '../../words/parts.ts'
import {
  isAsked,
  lengthWithError,
  marginsSentence,
  marginState,
  measuredText,
  measurementWords,
  notMeasured,
  settingSentence,
} from '../../words/measure.ts'
import { exactOf, type Values } from '../../browser/measured-values.ts'

const cell = (margin: MeasuredMargin): HTMLTableCellElement => {
  const state = margin.isMeasured ? marginState(margin) : 'usual'
  const words = lengthWithError(margin.mm, margin.isMeasured ? margin.likely : 0)
  const worst = margin.worst - margin.likely >= 0.005 ? `, at worst ± ${margin.worst.toFixed(2)}` : ''
  const usual = element('span', { class: 'visually-hidden' }, [', not measured'])
  return element('td', { 'data-state': state }, [words + worst, ...(margin.isMeasured ? [] : [usual])])
}

/** What makes most of what a margin may be out by. */
const mostWords = (right: MeasuredMargin, left: MeasuredMargin): string =>
  listed([...new Set([right.most, left.most])].flatMap((name) => (name ? [measurementWords[name]] : [])))

const marginsTable = (right: readonly MeasuredMargin[], left: readonly MeasuredMargin[]): HTMLTableElement =>
  element('table', {}, [
    element('thead', {}, [
      element('tr', {}, [
        element('th', { scope: 'col' }, ['Stage']),
        element('th', { scope: 'col' }, ['Moving right']),
        element('th', { scope: 'col' }, ['Moving left']),
        element('th', { scope: 'col' }, ['Matters most']),
      ]),
    ]),
    element(
      'tbody',
      {},
      right.map((margin, n) =>
        element('tr', {}, [
          element('th', { scope: 'row' }, [
            `${marginWords[margin.id].stage}: ${marginWords[margin.id].name}`,
          ]),
          cell(margin),
          cell(left[n]!),
          element('td', {}, [mostWords(margin, left[n]!)]),
        ]),
      ),
    ),
  ])

const between = (margins: readonly MeasuredMargin[]): string => {
  const { least, most } = selectionBounds(margins)
  return most - least < 0.0005 ? percent(most) : `${percent(least)} to ${percent(most)}`
}

const showSettings = (list: HTMLElement, values: Values): void => {
  const { measured, speed } = values
  const settings = bestSettings(measuredRun({ measured, speed })).filter((setting) =>
    isAsked(setting, measured),
  )
  list.replaceChildren(
    ...(settings.length === 0
      ? [element('li', {}, ['Measure the presser, a gate, the sweep or the belt: then it is shown here.'])]
      : settings
          .toSorted((one, other) => other.roomBest - other.roomNow - (one.roomBest - one.roomNow))
          .map((setting) => {
            const { name, said } = settingSentence(setting)
            const missing = notMeasured(setting, measured)
            const aside =
              missing.length === 0
                ? ''
                : ` Not measured, so taken from the training machine: ${listed(missing.map((each) => measurementWords[each]))}.`
            return element('li', {}, [element('strong', {}, [`${name}: `]), `${said}${aside}`])
          })),
  )
}

const showComparison = (place: HTMLElement, values: Values): void => {
  const { measured, good, speed } = values
  const exact = exactOf(values)
  const slopes = ([1, -1] as const).map((way) => marginSlopes(measuredRun({ measured, speed }), way))
  const items = measurementNames.flatMap((name) => {
    const [mine, theirs] = [measured[name], good[name]]
    if (mine === undefined || theirs === undefined) return []
    const { likely } = stackUp([exact[name] ?? 0, exact[name] ?? measurements[name].exact])
    const more = mine - theirs
    if (Math.abs(more) <= likely) return []
    const eaten = Object.keys(marginWords).filter((id) =>
      slopes.some((each) => {
        const slope = measuredSlopes(each[id as keyof typeof marginWords], measured)[name] ?? 0
        return slope * more < -0.005
      }),
    ) as (keyof typeof marginWords)[]
    const where =
      eaten.length === 0
        ? 'It takes nothing from any stage.'
        : `It takes room from ${listed(eaten.map((id) => `${marginWords[id].stage.toLowerCase()}, ${marginWords[id].name}`))}.`
    const difference = measuredText(name, Math.abs(more))
    return [
      element('li', {}, [
        `${capital(measurementWords[name])} is ${difference} ${more > 0 ? 'more' : 'less'} than the good one’s. ${where}`,
      ]),
    ]
  })
  const both = measurementNames.filter((name) => measured[name] !== undefined && good[name] !== undefined)
  place.hidden = both.length === 0
  required(place, 'ul', HTMLUListElement).replaceChildren(
    ...(items.length > 0
      ? items
      : [element('li', {}, ['No difference is larger than what the measurements may be out by.'])]),
  )
}

/** Shows what the values come to: margins both ways, the chance, what to set, and what differs from a good machine. */
export const showResults = (root: HTMLElement, values: Values): void => {
  const machine = { measured: values.measured, exact: exactOf(values), speed: values.speed }
  const [right, left] = [measuredMargins(machine, 1), measuredMargins(machine, -1)]
  setText(required(root, '.measure-verdict', HTMLElement), marginsSentence(right, left))
  required(root, '.measure-margins', HTMLElement).replaceChildren(
    marginsTable(right, left),
    element('p', { class: 'small' }, [
      'What is left before a stage fails, and what that may be out by: likely, and at worst. In grey: nothing of it is measured, and it is the training machine’s. ✕ fails; ? is too near to tell.',
    ]),
    element('p', { class: 'measure-chance' }, [
      `A needle under a hole is selected with a chance of ${between(right)} moving right, and ${between(left)} moving left. Wear and scatter of single parts are left aside.`,
    ]),
  )
  setText(required(root, '.measure-speed output', HTMLOutputElement), withUnit(values.speed, 'mm/s'))
  showSettings(required(root, '.measure-settings', HTMLElement), values)
  showComparison(required(root, '.measure-compare', HTMLElement), values)
}
