/** What other features use of the reader's own card. */
export { sheetSvg } from './sheet-svg.ts'
