/** What other features use of the card editor; it is fetched when it is first opened. */
export { startCardEditor } from './main.ts'
