/** Above so many looks, few of all the choices of looks are ever asked for. */
const mostListed = 12

/** A function of a choice of looks (a bit a look, whose values are positive) that computes each value once. */
export const valueMemo = (
  looks: number,
  valueOf: (offered: number) => number,
): ((offered: number) => number) => {
  const every = looks > 30 ? -1 : (1 << looks) - 1
  if (looks > mostListed) {
    const known = new Map<number, number>()
    return (offered) => {
      let value = known.get(offered & every)
      if (value === undefined) known.set(offered & every, (value = valueOf(offered)))
      return value
    }
  }
  const known = new Float64Array(1 << looks).fill(-1)
  return (offered) => {
    const value = known[offered & every]!
    return value >= 0 ? value : (known[offered & every] = valueOf(offered))
  }
}
