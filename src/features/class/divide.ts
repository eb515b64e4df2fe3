/**
 * Divides things that follow one another into as few parts as fit on a screen each; `fits` tells of a stretch, its first
 * and its last. Gives the first of each part. A thing that does not even fit alone has a part of its own.
 */
export const divide = (count: number, fits: (first: number, last: number) => boolean): number[] => {
  const starts = [0]
  for (let n = 1; n < count; n++) if (!fits(starts.at(-1) ?? 0, n)) starts.push(n)
  return starts
}

/** The stretch of a part that begins at one of `starts`: its first and its last of `count`. */
export const stretchOf = (starts: readonly number[], part: number, count: number): [number, number] => {
  const n = Math.min(part, starts.length - 1)
  return [starts[n] ?? 0, (starts[n + 1] ?? count) - 1]
}
