import { element, required, setText } from '../../browser/dom.ts'
import { libraryOf } from '../../browser/library.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { readMeasured } from '../../link/measured-value.ts'
import {
  type Measured,
  type MeasurementName,
  measurementNames,
  measurements,
  ownOf,
  wrongOrders,
} from '../../mechanism/measurement.ts'
import { canonicalPlace, needleName } from '../../mechanism/bed.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { roundNumber } from '../../mechanism/number.ts'
import { cardPlaceWords } from '../../words/card-place.ts'
import { measurementWords } from '../../words/measure.ts'
import { linkText, measuredIn } from '../../link/measured-link.ts'
import { showResults } from './results.ts'
import {
  type Column,
  columns,
  keepValues,
  loadValues,
  noValues,
  type Values,
} from '../../browser/measured-values.ts'

/** The columns of fields of a measurement: a count has none for how exact it is. */
const columnsOf = (name: MeasurementName): readonly Column[] =>
  columns.filter((column) => column !== 'exact' || measurements[name].exact > 0)

const fieldOf = (root: HTMLElement, name: MeasurementName, column: Column): HTMLInputElement =>
  required(root, `.measure-item[data-name="${name}"] input[data-of="${column}"]`, HTMLInputElement)

const without = (values: Measured, name: MeasurementName): Measured =>
  Object.fromEntries(Object.entries(values).filter(([key]) => key !== name))

const sayAt = (root: HTMLElement, name: MeasurementName, input: HTMLInputElement, trouble: string): void => {
  setText(required(root, `#${name}-trouble`, HTMLElement), trouble)
  if (trouble === '') input.removeAttribute('aria-invalid')
  else input.setAttribute('aria-invalid', 'true')
}

/** Why a value can't stand beside the others of its column; empty where it can. */
const orderTrouble = (values: Measured, name: MeasurementName): string => {
  const wrong = wrongOrders(values).find((pair) => (pair as readonly string[]).includes(name))
  if (!wrong) return ''
  const [less, more] = wrong
  return `That can’t be: ${measurementWords[less]} would be as large as ${measurementWords[more]}, or larger.`
}

/** Values with what was measured of another machine: a good machine's values, and how exact each is, stay as they were. */
const withMachineOf = (
  values: Values,
  { measured, speed, columnOne }: Omit<Values, 'good' | 'exact'>,
): Values => ({
  ...values,
  measured,
  speed,
  columnOne,
})

/** Brings the page on measuring one's own machine to life. */
export const startMeasure = (root: HTMLElement): void => {
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const came = required(root, '.measure-came', HTMLElement)
  const speed = required(root, '.measure-speed input', HTMLInputElement)
  const turn = required(root, '.measure-turn', HTMLAnchorElement)
  const workbench = turn.href
  const first = required(root, '.measure-first input', HTMLInputElement)
  const firstSaid = required(root, '#measure-first-said', HTMLElement)
  let values: Values = loadValues()
  /** What was cleared or given up last, as long as nothing was entered since. */
  let cleared: Values | null = null
  /** Whether the values are a link's, which do not take the place of one's own. */
  let isGiven = false
  const clear = required(root, '.measure-clear', HTMLButtonElement)
  const offerBack = (gone: Values | null): void => {
    cleared = gone
    setText(clear, gone ? 'Bring back what was there' : 'Clear all values')
  }

  const showFields = (): void => {
    for (const name of measurementNames)
      for (const column of columnsOf(name)) {
        const input = fieldOf(root, name, column)
        const value = values[column][name]
        input.value = value === undefined ? '' : String(roundNumber(value))
        sayAt(root, name, input, '')
      }
    speed.value = String(values.speed)
    first.value = needleName(values.columnOne)
  }
  const show = (): void => {
    const text = linkText(values, library)
    turn.href = text === '' ? workbench : `${workbench}#${text}`
    showResults(root, values)
  }
  const set = (next: Values): void => {
    values = next
    offerBack(null)
    const text = linkText(values, library)
    history.replaceState(null, '', text === '' ? location.pathname : `#${text}`)
    if (!keepValues(isGiven ? withMachineOf(values, loadValues()) : values))
      setText(
        required(root, '.measure-verdict', HTMLElement),
        'This browser keeps nothing: print the sheet, or copy the address.',
      )
    show()
  }
  const enter = (name: MeasurementName, column: Column, input: HTMLInputElement): void => {
    const reading = readMeasured(name, input.value)
    if (reading.kind === 'refused') {
      sayAt(root, name, input, reading.reason)
      return
    }
    const left = without(values[column], name)
    const next = reading.kind === 'empty' ? left : { ...left, [name]: reading.value }
    const trouble = column === 'exact' ? '' : orderTrouble(next, name)
    sayAt(root, name, input, trouble)
    if (trouble === '') set({ ...values, [column]: next })
  }
  const readLink = (): void => {
    const fragment = location.hash.slice(1)
    // A part of the page by its name is no link of a machine.
    const found = document.getElementById(fragment) ? null : measuredIn(fragment, library)
    if (found) {
      const own = loadValues()
      values = withMachineOf(own, found)
      isGiven = Object.keys(own.measured).length > 0 && linkText(own, library) !== linkText(values, library)
      came.hidden = !isGiven
    }
    showFields()
    show()
    for (const sentence of found?.troubles ?? []) root.prepend(element('p', { role: 'alert' }, [sentence]))
  }

  for (const name of measurementNames)
    for (const column of columnsOf(name)) {
      const input = fieldOf(root, name, column)
      input.addEventListener('change', () => {
        enter(name, column, input)
      })
    }
  first.addEventListener('change', () => {
    const needle = readNeedle(first.value, dimensionsOf(ownOf(values.measured)).needles)
    setText(firstSaid, typeof needle === 'string' ? needle : cardPlaceWords(needle))
    if (typeof needle === 'string') return
    set({ ...values, ...canonicalPlace({ columnOne: needle }) })
    first.value = needleName(values.columnOne)
  })
  speed.addEventListener('input', () => {
    set({ ...values, speed: Number(speed.value) })
  })
  const keepAsOwn = (next: Values): void => {
    isGiven = false
    came.hidden = true
    set(next)
    showFields()
  }
  required(root, '.measure-mine', HTMLButtonElement).addEventListener('click', () => {
    keepAsOwn(loadValues())
  })
  required(root, '.measure-keep', HTMLButtonElement).addEventListener('click', () => {
    const own = loadValues()
    keepAsOwn(values)
    offerBack(own)
  })
  clear.addEventListener('click', () => {
    const gone = cleared ? null : values
    set(cleared ?? (isGiven ? withMachineOf(values, noValues) : noValues))
    offerBack(gone)
    showFields()
  })
  required(root, '.measure-jump', HTMLButtonElement).addEventListener('click', () => {
    required(root, '#measure-found-title', HTMLElement).focus()
  })
  addEventListener('hashchange', readLink)
  readLink()
  root.setAttribute('data-live', '')
}
