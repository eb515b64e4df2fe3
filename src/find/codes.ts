/** n over k, exact while it fits a number. */
export const choose = (n: number, k: number): number => {
  let ways = 1
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i
  return Math.round(ways)
}

const least = (isEnough: (rows: number) => boolean): number => {
  let rows = 0
  while (!isEnough(rows)) rows++
  return rows
}

/** Fewest card rows in which `columns` columns have a code of holes and blanks each. */
export const rowsForCodes = (columns: number): number => least((rows) => 2 ** rows >= columns)

/** The same where no column may be all holes or all blank. */
export const rowsForMixedCodes = (columns: number): number => least((rows) => 2 ** rows - 2 >= columns)

/**
 * Fewest rows in which for every two columns there is a row with a hole in the first and none in the second, and one
 * the other way about: no code lies within another, and of those there are at most n over half n (Sperner 1928;
 * J. Spencer 1970).
 */
export const rowsToSeparate = (columns: number): number =>
  least((rows) => choose(rows, Math.floor(rows / 2)) >= columns)

/**
 * Fewest rows of a card that, with one pass without it, parts the machine's faults from the card's own. A column with a
 * single blank can't tell a pin stuck up from that blank torn, so each needs two, and a hole besides to show anything
 * else: that makes three. (Whether a pin is stuck down or a single hole blocked, the pass without a card shows.) The
 * `sharing` columns of a strip must be separated, since a pin that stays pushed over is known by the row in which it
 * alone is pushed. Needles are seen one by one, so columns of different strips need no codes to be known apart.
 */
export const rowsForFaults = (sharing: number): number => Math.max(3, rowsToSeparate(sharing))
