/** Runs before the page is drawn: who was sent a state of the machine sees that machine first, and all its controls. */
import { showLinkedState } from './show-linked-state.ts'

showLinkedState()
