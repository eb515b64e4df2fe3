const commands = [
  'forward',
  'back',
  'first',
  'last',
  'quiz',
  'reveal',
  'blank',
  'code',
  'pointer',
  'machine',
  'speaker',
  'full',
  'help',
] as const

/** A command of a class's window, given by a key of a clicker or a keyboard, or by a button. */
export type Command = (typeof commands)[number]

/** Whether a text names a command. */
export const isCommand = (text: string): text is Command => commands.some((name) => name === text)

/**
 * Commands by the browsers' names of keys. Clickers are keyboards to a computer: they send the page keys or arrows, a full
 * stop or, some of them, B to darken the screen, and F5 to begin. The other letters are the site's own.
 */
const commandOfKey: Readonly<Record<string, Command>> = {
  PageDown: 'forward',
  ArrowRight: 'forward',
  ArrowDown: 'forward',
  ' ': 'forward',
  PageUp: 'back',
  ArrowLeft: 'back',
  ArrowUp: 'back',
  Home: 'first',
  End: 'last',
  '.': 'blank',
  b: 'blank',
  F5: 'full',
  w: 'full',
  r: 'reveal',
  q: 'code',
  p: 'pointer',
  m: 'machine',
  n: 'speaker',
  k: 'help',
}

/** What of a key press decides its command. */
type Press = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>

/** The command of a key press; undefined for other keys. Shift works with the space bar and F5 only. */
export const commandOf = ({ key, shiftKey, altKey, ctrlKey, metaKey }: Press): Command | undefined => {
  if (altKey || ctrlKey || metaKey) return undefined
  if (shiftKey && key === ' ') return 'back'
  if (shiftKey && key !== 'F5') return undefined
  const name = key.length === 1 ? key.toLowerCase() : key
  return Object.hasOwn(commandOfKey, name) ? commandOfKey[name] : undefined
}
