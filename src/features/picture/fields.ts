import { element } from '../../browser/dom.ts'

/** One of a few values, of which a person chooses one. */
export interface Choice<Value extends string> {
  readonly root: HTMLFieldSetElement
  readonly now: () => Value
  /** Offers a value or not; where one was chosen that is offered no more, the first is. */
  readonly offer: (value: Value, isOffered: boolean) => void
}

/** A field with a button for each value, one of them chosen; each value with its words. */
export const choice = <Value extends string>(
  name: string,
  legend: string,
  values: Readonly<Record<Value, string>>,
  first: NoInfer<Value>,
): Choice<Value> => {
  const inputs = (Object.entries<string>(values) as [Value, string][]).map(([value, words]) => {
    const input = element('input', { type: 'radio', name, value })
    input.checked = value === first
    return { value, input, label: element('label', {}, [input, ` ${words}`]) }
  })
  const root = element('fieldset', {}, [element('legend', {}, [legend]), ...inputs.map(({ label }) => label)])
  return {
    root,
    now: () => {
      const chosen = inputs.find(({ input }) => input.checked)
      if (!chosen) throw new Error(`nothing is chosen of ${name}`)
      return chosen.value
    },
    offer: (value, isOffered) => {
      const found = inputs.find((each) => each.value === value)
      if (!found) return
      found.label.hidden = !isOffered
      const [other] = inputs
      if (!isOffered && found.input.checked && other) other.input.checked = true
    },
  }
}

/** Something that is chosen or not, and is at first. */
export const option = (
  words: string,
): { readonly root: HTMLLabelElement; readonly input: HTMLInputElement } => {
  const input = element('input', { type: 'checkbox' })
  input.checked = true
  return { input, root: element('label', {}, [input, ` ${words}`]) }
}

/** A button with these words. */
export const button = (words: string, name: string, does: () => void): HTMLButtonElement => {
  const made = element('button', { type: 'button', class: name }, [words])
  made.addEventListener('click', does)
  return made
}
