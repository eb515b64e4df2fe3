const names = [
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

/** What a key of a clicker or a keyboard, or a button, asks of the class view. */
export type Command = (typeof names)[number]

/** Whether a text names a command. */
export const isCommand = (text: string): text is Command => names.some((name) => name === text)

/** The keys, by the names that browsers give them. */
const commands: Readonly<Record<string, Command>> = {
  PageDown: 'forward',
  ArrowRight: 'forward',
  ArrowDown: 'forward',
  ' ': 'forward',
  PageUp: 'back',
  ArrowLeft: 'back',
  ArrowUp: 'back',
  Home: 'first',
  End: 'last',
  r: 'reveal',
  b: 'blank',
  '.': 'blank',
  q: 'code',
  p: 'pointer',
  m: 'machine',
  s: 'speaker',
  f: 'full',
  '?': 'help',
}

/** The part of a key press that counts here. */
type Press = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>

/** What a press asks for; undefined where it is no key of ours. Shift goes with the space bar and the question mark only. */
export const commandOf = ({ key, shiftKey, altKey, ctrlKey, metaKey }: Press): Command | undefined => {
  if (altKey || ctrlKey || metaKey) return undefined
  if (shiftKey && key === ' ') return 'back'
  if (shiftKey && key !== '?') return undefined
  const name = key.length === 1 ? key.toLowerCase() : key
  return Object.hasOwn(commands, name) ? commands[name] : undefined
}

const controls =
  'button, a[href], input, select, textarea, summary, dialog, [popover], [role="application"], [contenteditable]'

/** Whether an element has keys of its own: a control, a dialog, or the figure's parts. */
export const hasOwnKeys = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest(controls) !== null
