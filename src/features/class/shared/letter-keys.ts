import { change, load, type Section } from '../../../browser/storage.ts'
import { type Command, commandOf } from './keys.ts'

/** Whether letters and signs work as keys: on unless turned off. */
const letterKeys: Section<boolean> = {
  read: ({ letterKeys }) => letterKeys !== false,
  write: (letterKeys) => ({ letterKeys }),
}

/** The command of a key press. A teacher who uses voice control, or hits keys by mistake, can turn letters and signs off. */
export const commandOfEvent = (event: KeyboardEvent): Command | undefined => {
  const isCharacter = event.key.length === 1 && event.key !== ' '
  return isCharacter && !load(letterKeys) ? undefined : commandOf(event)
}

/** Binds the box that turns letter keys on and off to what the browser keeps, for all windows of the site. */
export const bindLetterKeys = (root: ParentNode): void => {
  const box = root.querySelector<HTMLInputElement>('.class-letters input')
  if (!box) return
  const show = (): void => {
    box.checked = load(letterKeys)
  }
  show()
  box.addEventListener('change', () => {
    change(letterKeys, () => box.checked)
  })
  addEventListener('storage', show)
}
