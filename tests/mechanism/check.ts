import fc from 'fast-check'

/** One seed for all, so that every run of the tests is the same; another may be tried from outside. */
const seed = Number(process.env['PROPERTY_SEED'] ?? 24)

/** A part of the cases only, where the same tests run thousands of times. */
const share = Number(process.env['PROPERTY_SHARE'] ?? 1)

/** Holds a property to `runs` made-up cases, and to no fewer than `least` where only a part of them is tried. */
export const check = <T>(property: fc.IProperty<T>, runs = 100, least = 1): void =>
  fc.assert(property, { seed, numRuns: Math.max(least, Math.ceil(runs * share)) })
