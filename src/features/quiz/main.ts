import { makeQuestion, chapterOfMaker } from '../../lesson/make-question.ts'
import { due, timesAnswered, withAnswer } from '../../lesson/progress.ts'
import type { Makers } from '../../lesson/question.ts'
import { decodeCard } from '../../link/card-text.ts'
import { type CardLibrary, mainCard } from '../../link/state.ts'
import { startSeries } from './question-series.ts'
import { loadMakers } from '../../browser/load-questions.ts'
import { dataOf } from '../../browser/dom.ts'
import { type CardPlace, canonicalPlace, needleIndex, usualPlace } from '../../mechanism/bed.ts'
import { at } from '../../mechanism/lookup.ts'
import { paperOf } from '../../drawings/shared/elements.ts'
import { changeProgress, loadProgress, notKept, progressTrouble, today } from './progress-storage.ts'

/** How many questions of earlier chapters come back at once. */
const mostBack = 3

/** The whole chain shows every needle and every part, so it is the figure for answers. */
const figure = 'chain'

/** A maker's id, with the makers of its chapter. */
interface AskedMaker {
  readonly maker: string
  readonly makers: Makers
}

/** Questions of earlier chapters that are due today. */
const questionsBack = async (chapter: number): Promise<AskedMaker[]> => {
  const ids = due(loadProgress(), today()).filter((maker) => chapterOfMaker(maker) < chapter)
  const asked: AskedMaker[] = []
  for (const maker of ids) {
    const makers = await loadMakers(chapterOfMaker(maker))
    // A later version of the site may have dropped a question.
    if (Object.hasOwn(makers, maker.split('.')[1] ?? '')) asked.push({ maker, makers })
    if (asked.length === mostBack) break
  }
  return asked
}

/** Where column 1 is on the bed of the page's machine, as the address says it. */
const placeNow = (): CardPlace => {
  const name = new URLSearchParams(location.hash.slice(1)).get('first') ?? ''
  const columnOne = needleIndex(name)
  return columnOne === null ? usualPlace : canonicalPlace({ columnOne })
}

/** Starts a chapter's questions: its own, and those of earlier chapters that are due. */
export const startQuiz = async (root: HTMLElement): Promise<void> => {
  const chapter = Number(dataOf(root, 'chapter'))
  const card = decodeCard(dataOf(root, 'card')).rows ?? [0]
  const library: CardLibrary = { main: mainCard, cards: new Map([[mainCard, card]]) }
  const paper = paperOf(document)
  const machine = root.closest('.machine')
  const note = paper.html('p', { class: 'note', role: 'status' })

  const series = (all: readonly AskedMaker[]): HTMLElement => {
    const place = paper.html('div', { class: 'course' })
    startSeries(place, paper, {
      length: all.length,
      firstSeed: (n) => timesAnswered(loadProgress(), at(all, n).maker) + 1,
      question: (n, seed) => makeQuestion(at(all, n).makers, at(all, n).maker, seed, library, placeNow()),
      show: machine
        ? (state) => machine.dispatchEvent(new CustomEvent('show', { detail: { state, figure } }))
        : undefined,
      answered: (n, right) => {
        const isKept = changeProgress((progress) => withAnswer(progress, at(all, n).maker, right, today()))
        note.textContent = isKept ? '' : notKept
      },
    })
    return place
  }
  const makers = await loadMakers(chapter)
  const own = Object.keys(makers).map((name) => ({ maker: `${chapter}.${name}`, makers }))
  const live = paper.html('div', { class: 'quiz-live' }, [series(own), note])
  const wasHeld = root.contains(document.activeElement)
  root.append(live)
  root.setAttribute('data-live', '')
  // The element that had the focus is hidden now.
  if (wasHeld) live.querySelector<HTMLElement>('h3')?.focus()
  // Steps seen may not have been kept either. The contents page says what can't be read.
  if (progressTrouble() === notKept) note.textContent = notKept
  const back = await questionsBack(chapter)
  if (back.length === 0) return
  live.append(
    paper.html('section', { class: 'quiz-earlier', 'aria-label': 'From earlier chapters' }, [
      paper.html('h2', {}, ['From earlier chapters']),
      series(back),
    ]),
  )
}
