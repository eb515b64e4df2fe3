import { type Command, commandOf } from './keys.ts'

/** Where the browser keeps that letters and signs are no keys. */
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

/** What a press asks for. Who speaks to the computer, or slips on the keys, can turn letters and signs off. */
export const askedBy = (event: KeyboardEvent): Command | undefined => {
  const isCharacter = event.key.length === 1 && event.key !== ' '
  return isCharacter && areOff() ? undefined : commandOf(event)
}

/** Ties the box that says whether letters work to what is kept, for all windows of the site. */
export const tieLetters = (root: ParentNode): void => {
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
