import type { Marking } from '../../lesson/marking.ts'
import type { Answers, Kind } from '../../lesson/question.ts'

/** Where a question is answered: an element that knows what was answered in it. */
export interface Control<K extends Kind = Kind> {
  readonly element: HTMLElement
  /** Null where nothing, or nothing sensible, has been answered yet. */
  readonly answer: () => Answers[K] | null
  /** What to do where there is no answer yet. */
  readonly missing: string
  /** Puts an answer in. */
  readonly fill: (answer: Answers[K]) => void
  /** Shows on the control itself what an answer came to. */
  readonly marked?: (marking: Marking) => void
}
