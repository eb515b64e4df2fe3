import { element, required, setText } from '../../browser/dom.ts'

/** Asks with a few buttons; gives the value of the one pressed, or null where the question is closed. */
export const ask = async <Value extends string>(
  root: HTMLElement,
  words: string,
  choices: Readonly<Record<Value, string>>,
): Promise<Value | null> => {
  const dialog = required(root, '.job-ask', HTMLDialogElement)
  setText(required(dialog, 'p', HTMLElement), words)
  let chosen: Value | null = null
  const buttons = (Object.entries(choices) as [Value, string][]).map(([value, label]) => {
    const button = element('button', { type: 'button' }, [label])
    button.addEventListener('click', () => {
      chosen = value
      dialog.close()
    })
    return button
  })
  required(dialog, '.job-buttons', HTMLElement).replaceChildren(...buttons)
  dialog.showModal()
  await new Promise((done) => {
    dialog.addEventListener('close', done, { once: true })
  })
  return chosen
}
