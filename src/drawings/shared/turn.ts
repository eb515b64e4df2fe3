/** Where the tips of pins are that the draw bar has pulled down at a turn, in mm: below any card. */
export const drawnDown = 0.6
