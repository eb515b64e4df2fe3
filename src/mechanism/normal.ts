/**
 * The standard normal distribution's lower tail, P(Z <= z), with a relative error below 1e-9 in the tails too.
 * Near the middle a Taylor series (Abramowitz & Stegun 26.2.10), further out the continued fraction 26.2.14.
 */
export const normalCdf = (z: number): number => {
  // Above it less than half of what a number can differ from 1 by is missing.
  if (z > 8.3) return 1
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

/** Points of Gauss and Legendre's rule of 20 points on (0, 1), and their weights. */
const gauss = ((points: number) => {
  // Newton's method on the Legendre polynomial; Abramowitz & Stegun 25.4.29.
  return Array.from({ length: points }, (_, n) => {
    let x = Math.cos((Math.PI * (n + 0.75)) / (points + 0.5))
    let slope = 1
    for (let step = 0; step < 50; step++) {
      let [last, value] = [1, x]
      for (let k = 2; k <= points; k++)
        [last, value] = [value, ((2 * k - 1) * x * value - (k - 1) * last) / k]
      slope = (points * (x * value - last)) / (x * x - 1)
      x -= value / slope
    }
    return { at: (1 + x) / 2, weight: 1 / ((1 - x * x) * slope * slope) }
  })
})(20)

/**
 * Owen's T function, T(h, a) = 1/2π ∫ from 0 to a of exp(−h²(1+x²)/2)/(1+x²) dx, for a >= 0: D. B. Owen, Tables for
 * computing bivariate normal probabilities (1956). For a above 1 by his identity with T(ah, 1/a).
 */
export const owenT = (h: number, a: number): number => {
  const size = Math.abs(h)
  if (a > 1) {
    const other = normalCdf(-a * size)
    const own = normalCdf(-size)
    return (own + other) / 2 - own * other - owenT(a * size, 1 / a)
  }
  let sum = 0
  for (const { at, weight } of gauss) {
    const square = 1 + (a * at) ** 2
    sum += (weight * Math.exp((-size * size * square) / 2)) / square
  }
  return (a * sum) / (2 * Math.PI)
}
