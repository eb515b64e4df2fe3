/** What other features use of the customer's sheet. */
export { drawCode } from './qr-code.ts'
