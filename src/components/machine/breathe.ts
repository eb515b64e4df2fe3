/** Lets the browser draw, and hear a reader, between two pieces of work that would take long together. */
export const breathe = (): Promise<void> => new Promise((done) => setTimeout(done))
