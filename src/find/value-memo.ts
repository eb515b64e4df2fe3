/** Above so many looks, few of all the choices of looks are ever asked for. */
const mostListed = 12
/** So often a value is computed again before room is made to keep values: most are asked for a few times only. */
const fewAsked = 24

/** A function of a choice of looks (a bit a look, whose values are positive) that keeps values that are asked for often. */
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
  let known: Float64Array | null = null
  let asked = 0
  return (offered) => {
    if (known === null) {
      if (asked++ < fewAsked) return valueOf(offered & every)
      known = new Float64Array(1 << looks).fill(-1)
    }
    const value = known[offered & every]!
    return value >= 0 ? value : (known[offered & every] = valueOf(offered))
  }
}
