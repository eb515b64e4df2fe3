/** What other features use of reading without a network. */
export { keepThisPage } from './register.ts'
