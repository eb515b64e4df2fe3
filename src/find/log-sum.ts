/** Adds up numbers given by their logarithms, without losing small ones or running over. */
export const logSum = (logs: readonly number[]): number => {
  let most = -Infinity
  for (const log of logs) if (log > most) most = log
  if (most === -Infinity) return most
  let sum = 0
  for (const log of logs) sum += Math.exp(log - most)
  return most + Math.log(sum)
}
