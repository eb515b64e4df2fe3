import { type Command, commandOf } from './keys.ts'

/** Where the browser keeps that letters and signs are off as keys. */
const storageKey = 'every-eighth-needle-letters-off'

/** What was chosen where the browser keeps nothing: it lasts as long as the page. */
let unkept: boolean | undefined

const areOff = (): boolean => {
  if (unkept !== undefined) return unkept
  try {
    return localStorage.getItem(storageKey) !== null
  } catch {
    return false
  }
}

const turn = (isOff: boolean): void => {
  try {
    if (isOff) localStorage.setItem(storageKey, '')
    else localStorage.removeItem(storageKey)
    unkept = undefined
  } catch {
    unkept = isOff
  }
}

/** The command of a key press. A teacher who uses voice control, or hits keys by mistake, can turn letters and signs off. */
export const commandOfEvent = (event: KeyboardEvent): Command | undefined => {
  const isCharacter = event.key.length === 1 && event.key !== ' '
  return isCharacter && areOff() ? undefined : commandOf(event)
}

/** Binds the box that turns letter keys on and off to what the browser keeps, for all windows of the site. */
export const bindLetterKeys = (root: ParentNode): void => {
  const box = root.querySelector<HTMLInputElement>('.class-letters input')
  if (!box) return
  const show = (): void => {
    box.checked = !areOff()
  }
  show()
  box.addEventListener('change', () => {
    turn(!box.checked)
  })
  addEventListener('storage', show)
}
