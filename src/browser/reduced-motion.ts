/** Whether the reader wants as little motion as possible. */
export const prefersReducedMotion = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches
