/** How long a picture may take to draw, in ms: from there on one in two frames of 60 a second is missed. */
const most = 9

/** Of how many pictures in a row each must take longer. */
const row = 3

/** Whether there is haste: the last pictures each took too long. It stays until the machine comes to rest. */
export interface Haste {
  readonly isOn: () => boolean
  /** Draws a picture, and takes its time. */
  readonly time: (draw: () => void) => void
  /** The machine has come to rest. */
  readonly rest: () => void
}

/** Follows how long pictures take to draw. */
export const createHaste = (now: () => number = () => performance.now()): Haste => {
  let late = 0
  return {
    isOn: () => late >= row,
    time: (draw) => {
      const start = now()
      draw()
      if (late < row) late = now() - start > most ? late + 1 : 0
    },
    rest: () => {
      late = 0
    },
  }
}
