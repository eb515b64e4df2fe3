/** Entropy in bits of shares, which need not add up to 1. */
export const entropy = (shares: Iterable<number>): number => {
  const all = [...shares].filter((share) => share > 0)
  const whole = all.reduce((sum, share) => sum + share, 0)
  return all.reduce((bits, share) => bits - (share / whole) * Math.log2(share / whole), 0)
}

const countsOf = (things: ArrayLike<number>): Map<number, number> => {
  const counts = new Map<number, number>()
  for (let n = 0; n < things.length; n++) counts.set(things[n]!, (counts.get(things[n]!) ?? 0) + 1)
  return counts
}

/**
 * What answers say about labels, in bits, from one of each a drawn machine: the entropy of both apart less that of both
 * together. Few draws make it seem more than it is; the first term of that is taken off (Miller, G. A., Note on the bias
 * of information estimates, 1955). Both are whole numbers from 0, answers below `most`. Never below 0.
 */
export const sharedBits = (labels: ArrayLike<number>, answers: ArrayLike<number>, most: number): number => {
  const own = countsOf(answers)
  if (own.size === 1) return 0
  const both = Int32Array.from({ length: labels.length }, (_, n) => labels[n]! * most + answers[n]!)
  const [byLabel, byBoth] = [countsOf(labels), countsOf(both)]
  const seeming = entropy(byLabel.values()) + entropy(own.values()) - entropy(byBoth.values())
  const cells = byLabel.size + own.size - byBoth.size - 1
  return Math.max(0, seeming + cells / (2 * labels.length * Math.LN2))
}

/**
 * What somebody learns, in bits, who hears one of some things with these shares, where with the chance `error` it is
 * any other one.
 */
export const noisyBits = (shares: readonly number[], error: number): number => {
  const some = shares.filter((share) => share > 0)
  const whole = some.reduce((sum, share) => sum + share, 0)
  const others = some.length - 1
  if (others < 1) return 0
  const heard = some.map((share) => ((1 - error) * share + (error * (whole - share)) / others) / whole)
  return Math.max(0, entropy(heard) - entropy([1 - error, error]) - error * Math.log2(others))
}
