import type { Run } from './pass.ts'

/**
 * A machine that is mended between two passes: up to and with pass `last` it is the `broken` one, from then on the
 * `sound` one. What the broken one set out last is knitted by the sound one, as on a machine. Both have the same card.
 *
 * @example
 * // Strip 3 seized for 10 passes: the needles that pass 10 left out are missing in the row of pass 11, the last to show it.
 * const run = mendedAfter(seized, sound, 10)
 * run.passOf(10).departures.length > 0 && run.passOf(11).departures.length === 0 // true
 */
export const mendedAfter = (broken: Run, sound: Run, last: number): Run => ({
  ...sound,
  passOf: (pass) => (pass <= last ? broken : sound).passOf(pass),
})
