/**
 * Scatter without hidden state: each draw is a pure function of what it is for, so that the order of asking changes
 * nothing and the same seed is the same worn machine for everyone.
 */

/** The quantities that scatter; each has its own stream. */
export type Stream = 'pin' | 'lost' | 'catch' | 'butt' | 'retainer' | 'sticky' | 'pivots'

const streamNumber: Record<Stream, number> = {
  pin: 1,
  lost: 2,
  catch: 3,
  butt: 4,
  retainer: 5,
  sticky: 6,
  pivots: 7,
}

/** Mixes one more word into a 32-bit hash (the finaliser of MurmurHash3, public domain, by A. Appleby). */
const mix = (hash: number, word: number): number => {
  let h = Math.imul(hash ^ word, 0x9e3779b1)
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}

const hashOf = (seed: number, stream: Stream, index: number, pass: number): number =>
  mix(mix(mix(mix(0x5bd1e995, seed), streamNumber[stream]), index + 1), pass)

/** A uniform draw between 0 and 1, neither of them included; the arguments are those of `normalDraw`. */
export const uniformDraw = (seed: number, stream: Stream, index: number, pass = 0): number =>
  (hashOf(seed, stream, index, pass) + 0.5) / 0x100000000

/**
 * A standard normal draw for part `index` of a stream, in pass `pass` where it differs from pass to pass; `seed` is a
 * whole number below 2^32.
 * Box and Muller's transform (1958) of two uniform draws.
 */
export const normalDraw = (seed: number, stream: Stream, index: number, pass = 0): number => {
  const hash = hashOf(seed, stream, index, pass)
  const first = (hash + 0.5) / 0x100000000
  const second = (mix(hash, 0x27d4eb2f) + 0.5) / 0x100000000
  return Math.sqrt(-2 * Math.log(first)) * Math.cos(2 * Math.PI * second)
}
