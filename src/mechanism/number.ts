/** Numbers are read to four decimals, finer than anyone measures here. */
const decimals = 4

/** Rounds to the four decimals that links and ids keep. */
export const roundNumber = (value: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals + 0

/** A plain decimal number, rounded to four decimals; null where the text is none. */
export const readNumber = (text: string): number | null =>
  /^[+-]?(\d{1,40}(\.\d{0,40})?|\.\d{1,40})$/.test(text) ? roundNumber(Number(text)) : null
