/** Adds up numbers given by their logarithms, without losing small ones or running over. */
export const logSum = (logs: ArrayLike<number>): number => {
  let most = -Infinity
  for (let n = 0; n < logs.length; n++) if (logs[n]! > most) most = logs[n]!
  if (most === -Infinity) return most
  let sum = 0
  for (let n = 0; n < logs.length; n++) sum += Math.exp(logs[n]! - most)
  return most + Math.log(sum)
}
