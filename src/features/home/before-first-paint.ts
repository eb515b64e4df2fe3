/** Runs before the page is drawn: who was sent a state of the machine sees that machine first, and all its controls. */
import { showSent } from './sent.ts'

showSent()
