import type { Experience } from '../../find/experience.ts'
import type { CardLibrary } from '../../link/state.ts'
import type { CurrentJob } from './current-job.ts'
import type { Shelf } from './shelf.ts'

/** What the sections of a job are made with. */
export interface Section {
  readonly root: HTMLElement
  readonly job: CurrentJob
  readonly shelf: Shelf
  readonly library: CardLibrary
  /** What she found at other machines, where that is to count; empty where it is not. */
  readonly experience: () => Experience
}
