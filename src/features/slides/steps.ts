import type { SceneAttributes } from '../../words/figures/scene-step.ts'

/** A step of a chapter as a slide shows it, with what its teacher says. */
export interface SlideStep {
  readonly title: string
  readonly figure: string
  /** The state that it shows, as a link's text. */
  readonly state: string
  readonly scene: SceneAttributes
  /** What the chapter says there, paragraph by paragraph. */
  readonly text: readonly string[]
  /** What its notes for teachers say; none where the page has none. */
  readonly notes: readonly string[]
}

/** What elements say, but for explanations that open when a word is pressed. */
const wordsOf = (elements: Iterable<Element>): string[] =>
  [...elements]
    .map((one) => {
      const read = one.cloneNode(true) as Element
      for (const folded of read.querySelectorAll('[popover]')) folded.remove()
      return read.textContent.replace(/\s+/g, ' ').trim()
    })
    .filter((words) => words !== '')

/** The steps of a page that has a chapter's, the speaker's or the chapter's own. */
export const stepsIn = (page: ParentNode): SlideStep[] =>
  [...page.querySelectorAll<HTMLElement>('.step')].map((step) => {
    const { figure = '', state = '', view, layers, subject, also } = step.dataset
    const paragraphs = [...step.querySelectorAll('p')].filter(
      (one) => !one.closest('noscript, form, .speaker-notes'),
    )
    return {
      title: wordsOf(step.querySelectorAll('h2')).join(' '),
      figure,
      state,
      scene: { view, layers, subject, also },
      text: wordsOf(paragraphs),
      notes: wordsOf(step.querySelectorAll('.speaker-notes p')),
    }
  })

/** A slide's number in two figures, so that names come in the slides' order. */
export const slideNumber = (n: number): string => String(n + 1).padStart(2, '0')

/** All that is said with the slides, as a plain text: of each what the chapter says, and what its notes say. */
export const notesText = (title: string, steps: readonly SlideStep[]): string =>
  [
    title,
    ...steps.map(({ title: name, text, notes }, n) =>
      [
        `${slideNumber(n)}  ${name}`,
        ...text,
        ...(notes.length > 0 ? ['For the teacher:', ...notes] : []),
      ].join('\n\n'),
    ),
    '',
  ].join('\n\n\n')
