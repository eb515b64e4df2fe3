/** Lets the browser draw, and hear a reader, between two pieces of work that would take long together. */
export const yieldToBrowser = (): Promise<void> => new Promise((done) => setTimeout(done))

/** The longest piece of work on a quick device, in ms: four times as long is no long task yet. */
const piece = 8

/** Does work that pauses in pieces, and lets the browser draw between them. */
export const inPieces = async <Made>(work: Iterator<undefined, Made>): Promise<Made> => {
  let start = performance.now()
  for (;;) {
    const step = work.next()
    if (step.done === true) return step.value
    if (performance.now() - start < piece) continue
    await yieldToBrowser()
    start = performance.now()
  }
}

/** Leaves the device to its reader for a moment, in ms, before work that nobody waits for. */
const moment = 200
export const pauseBriefly = (): Promise<void> => new Promise((done) => setTimeout(done, moment))
