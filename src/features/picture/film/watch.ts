/** Who waits for a film: gives it up, and hears how much of it is done, 0 to 1. */
export interface Watch {
  readonly signal: AbortSignal
  readonly progress: (share: number) => void
}

/** The most bytes that a message takes. */
export const mostBytes = 8_000_000
