/**
 * The bed's numbering, counted out needle by needle rather than computed, so that the tests have their own.
 * Places beyond the bed's ends count on, as the carriage runs on there.
 */
const farthest = 400

const counted = (most: number): ReadonlyMap<number, number> => {
  const numbers = new Map<number, number>()
  let number = 0
  for (let place = 100; place <= farthest; place++) {
    number = number === most ? 1 : number + 1
    numbers.set(place, number)
  }
  number = 1
  for (let place = 99; place >= -farthest; place--) {
    number = number === 1 ? most : number - 1
    numbers.set(place, number)
  }
  return numbers
}

const columns = counted(24)
const strips = counted(8)

/** Column of the needle at a whole place, with column 1 at `one`: at R1, which is 100, L1 at 99 is column 24. */
export const columnAt = (place: number, one = 100): number => columns.get(place - one + 100) ?? Number.NaN

/** Strip of the needle at a whole place, with column 1 at `one`: at R1, R1 is strip 1 and L1 strip 8. */
export const stripAt = (place: number, one = 100): number => strips.get(place - one + 100) ?? Number.NaN

/** Whether a row of a card, column 1 its highest bit of 24, has a hole in a column. */
export const holeIn = (row: number, column: number): boolean => Math.floor(row / 2 ** (24 - column)) % 2 === 1

/** A row with holes in these columns only. */
export const rowWith = (...holes: readonly number[]): number =>
  holes.reduce((row, column) => row + 2 ** (24 - column), 0)
