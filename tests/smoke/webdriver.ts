import type { Key, Point } from './browser.ts'

/** Source: WebDriver (W3C), 17.4.2, keyboard actions. */
const keys: Readonly<Record<Key | 'Alt', string>> = {
  Alt: '\uE00A',
  ArrowDown: '\uE015',
  ArrowLeft: '\uE012',
  ArrowRight: '\uE014',
  ArrowUp: '\uE013',
  End: '\uE010',
  Home: '\uE011',
  PageDown: '\uE00F',
  PageUp: '\uE00E',
  Tab: '\uE004',
  '1': '1',
  '.': '.',
}

/** One command of WebDriver: what it answers, or an error with the driver’s own words. */
export type Command = (method: 'GET' | 'POST' | 'DELETE', path: string, body?: object) => Promise<unknown>

/** Asks a WebDriver server for something, as the standard has it. */
export const commandsTo =
  (server: string): Command =>
  async (method, path, body) => {
    const response = await fetch(`${server}${path}`, {
      method,
      body: method === 'POST' ? JSON.stringify(body ?? {}) : null,
      signal: AbortSignal.timeout(30_000),
    })
    const { value } = (await response.json()) as { value: unknown }
    if (!response.ok) throw new Error(`${path} was refused: ${JSON.stringify(value)}`)
    return value
  }

const moveTo = ({ x, y }: Point, duration: number): object => ({
  type: 'pointerMove',
  x: Math.round(x),
  y: Math.round(y),
  duration,
})

const between = (from: Point, to: Point): Point[] =>
  Array.from({ length: 6 }, (_, n) => ({
    x: from.x + ((to.x - from.x) * (n + 1)) / 6,
    y: from.y + ((to.y - from.y) * (n + 1)) / 6,
  }))

/** Presses at the first place, moves through the others, lets go at the last. */
export const pointerActions = (points: readonly Point[]): object => {
  const path = points.slice(1).flatMap((point, n) => between(points[n]!, point))
  return {
    type: 'pointer',
    id: 'pointer',
    parameters: { pointerType: 'mouse' },
    actions: [
      moveTo(points[0]!, 0),
      { type: 'pointerDown', button: 0 },
      ...path.map((point) => moveTo(point, 20)),
      { type: 'pointerUp', button: 0 },
    ],
  }
}

/** Presses a key, with Alt held where it says so. */
export const keyActions = (key: Key, held?: 'Alt'): object => {
  const press = (type: 'keyDown' | 'keyUp', name: Key | 'Alt'): object => ({ type, value: keys[name] })
  return {
    type: 'key',
    id: 'keys',
    actions: [
      ...(held ? [press('keyDown', held)] : []),
      press('keyDown', key),
      press('keyUp', key),
      ...(held ? [press('keyUp', held)] : []),
    ],
  }
}
