/** Pixels of the window, from its upper left corner. */
export interface Point {
  readonly x: number
  readonly y: number
}

export type Key =
  | 'ArrowLeft'
  | 'ArrowRight'
  | 'ArrowUp'
  | 'ArrowDown'
  | 'Home'
  | 'End'
  | 'PageUp'
  | 'PageDown'
  | 'Tab'
  | '1'
  | '.'

/** The size that windows are opened in, as far as the browser lets it be set. */
export const size = { width: 1280, height: 800 } as const

/** What a person has of a browser: an address bar, a pointer, keys, and eyes on the page. */
export interface Browser {
  /** Opens an address in a window that knows nothing of the one before, and closes that. */
  readonly open: (address: string) => Promise<void>
  /** Presses the pointer at the first place, moves it through the others, and lets go at the last. */
  readonly press: (...through: readonly [Point, ...Point[]]) => Promise<void>
  /** Presses a key, with Alt held where it says so. */
  readonly key: (key: Key, held?: 'Alt') => Promise<void>
  /** What a function says of the page, run there with these texts: it sees nothing from outside itself, and is waited for. */
  readonly look: <Given extends string[], Seen>(
    question: (...given: Given) => Seen,
    ...given: Given
  ) => Promise<Awaited<Seen>>
  readonly end: () => Promise<void>
}

/** A question to the page as an expression in text, as every driver takes it. */
export const asText = <Given extends string[]>(
  question: (...given: Given) => unknown,
  given: Given,
): string => `(${question.toString()})(...${JSON.stringify(given)})`
