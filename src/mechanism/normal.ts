/**
 * The standard normal distribution's lower tail, P(Z <= z), with a relative error below 1e-9 in the tails too.
 * Near the middle a Taylor series (Abramowitz & Stegun 26.2.10), further out the continued fraction 26.2.14.
 */
export const normalCdf = (z: number): number => {
  if (z > 0) return 1 - normalCdf(-z)
  const size = -z
  const density = Math.exp((-size * size) / 2) / Math.sqrt(2 * Math.PI)
  if (size < 3) {
    let term = size
    let sum = size
    for (let n = 1; n < 100 && term > 1e-17; n++) sum += term *= (size * size) / (2 * n + 1)
    return 0.5 - density * sum
  }
  let fraction = size
  for (let n = 60; n >= 1; n--) fraction = size + n / fraction
  return density / fraction
}
