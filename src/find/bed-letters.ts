import type { Pass } from '../mechanism/pass.ts'

/** A bed as it was noted: a letter a needle from the left, s selected, p plain, u unmoved, ? not looked at. */
export type Letters = string

/** The letters that a bed is noted in. */
export const letters = 'spu?'

/** The letters of a pass as it came out. */
export const lettersOf = ({ came }: Pick<Pass, 'came'>): Letters =>
  came.map((outcome) => outcome.charAt(0)).join('')

/** What a note says of a needle; `none` where nobody looked. */
export const notes = { s: 0, p: 1, u: 2, none: 3 } as const

/** The note of a letter; of any other text, that nobody looked. */
export const noteOf = (letter: string): number =>
  letter === 's' ? notes.s : letter === 'p' ? notes.p : letter === 'u' ? notes.u : notes.none
