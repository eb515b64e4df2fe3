/** Chance that a needle is marked wrongly by somebody who looks at each one. Common practice from memory. */
export const sureSlip = 0.0002
