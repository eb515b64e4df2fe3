/** Lets the browser draw, and hear a reader, between two pieces of work that would take long together. */
export const yieldToBrowser = (): Promise<void> => new Promise((done) => setTimeout(done))

/** Leaves the device to its reader for a moment, in ms, before work that nobody waits for. */
const moment = 200
export const pauseBriefly = (): Promise<void> => new Promise((done) => setTimeout(done, moment))
