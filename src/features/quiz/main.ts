import { makeQuestion, chapterOfMaker } from '../../lesson/make-question.ts'
import { due, timesAnswered, withAnswer } from '../../lesson/progress.ts'
import type { Makers } from '../../lesson/question.ts'
import { decodeCard } from '../../link/card-text.ts'
import { type CardLibrary, mainCard } from '../../link/state.ts'
import { startCourse } from './course.ts'
import { loadChapter } from './load-chapter.ts'
import { paperOf } from '../../drawings/shared/elements.ts'
import { changeProgress, loadProgress, notKept, progressTrouble, today } from './progress-storage.ts'

/** How many questions of earlier chapters come back at once. */
const mostBack = 3

/** The whole chain shows every needle and every part, so it is the figure for answers. */
const figure = 'chain'

/** A maker's id, with the chapter's makers that it is one of. */
interface Asked {
  readonly maker: string
  readonly makers: Makers
}

/** Questions of earlier chapters that are due today. */
const questionsBack = async (chapter: number): Promise<Asked[]> => {
  const ids = due(loadProgress(), today()).filter((maker) => chapterOfMaker(maker) < chapter)
  const asked: Asked[] = []
  for (const maker of ids) {
    const makers = await loadChapter(chapterOfMaker(maker))
    // A question that a later version of the site has dropped stays unasked.
    if (Object.hasOwn(makers, maker.split('.')[1] ?? '')) asked.push({ maker, makers })
    if (asked.length === mostBack) break
  }
  return asked
}

/** Brings a chapter's questions to life: its own, and those of earlier chapters that are due. */
export const startQuiz = async (root: HTMLElement): Promise<void> => {
  const chapter = Number(root.dataset.chapter)
  const card = decodeCard(root.dataset.card ?? '').rows ?? [0]
  const library: CardLibrary = { main: mainCard, cards: new Map([[mainCard, card]]) }
  const paper = paperOf(document)
  const machine = root.closest('.machine')
  const note = paper.html('p', { class: 'note', role: 'status' })

  const course = (all: readonly Asked[]): HTMLElement => {
    const place = paper.html('div', { class: 'course' })
    startCourse(place, paper, {
      length: all.length,
      firstSeed: (n) => timesAnswered(loadProgress(), all[n]!.maker) + 1,
      question: (n, seed) => makeQuestion(all[n]!.makers, all[n]!.maker, seed, library),
      show: machine
        ? (state) => machine.dispatchEvent(new CustomEvent('show', { detail: { state, figure } }))
        : undefined,
      answered: (n, right) => {
        const isKept = changeProgress((progress) => withAnswer(progress, all[n]!.maker, right, today()))
        note.textContent = isKept ? '' : notKept
      },
    })
    return place
  }
  const makers = await loadChapter(chapter)
  const own = Object.keys(makers).map((name) => ({ maker: `${chapter}.${name}`, makers }))
  const live = paper.html('div', { class: 'quiz-live' }, [course(own), note])
  const wasHeld = root.contains(document.activeElement)
  root.append(live)
  root.setAttribute('data-live', '')
  // What the keyboard was on is hidden now.
  if (wasHeld) live.querySelector<HTMLElement>('h3')?.focus()
  // What was read so far may not have been kept either; the contents page tells of what can't be read.
  if (progressTrouble() === notKept) note.textContent = notKept
  const back = await questionsBack(chapter)
  if (back.length === 0) return
  live.append(
    paper.html('section', { class: 'quiz-earlier', 'aria-label': 'From earlier chapters' }, [
      paper.html('h2', {}, ['From earlier chapters']),
      course(back),
    ]),
  )
}
