/** How many bits of a number are set. */
export const bitCount = (bits: number): number => {
  let count = 0
  for (let left = bits; left !== 0; left &= left - 1) count++
  return count
}

/** Which bits of a number are set, the lowest first. */
export const indicesOf = (bits: number): number[] => {
  const list: number[] = []
  for (let left = bits; left !== 0; left &= left - 1) list.push(31 - Math.clz32(left & -left))
  return list
}
