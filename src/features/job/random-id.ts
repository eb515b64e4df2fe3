/** A random whole number from 1: the number of a job or a photograph, which no other of this device is likely to have. */
export const randomId = (): number => {
  const [number = 0] = crypto.getRandomValues(new Uint32Array(1))
  return Math.max(1, number)
}
