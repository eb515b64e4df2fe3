import { worksheet } from '../../lesson/worksheet.ts'
import { nextName, readName, usualName } from '../../lesson/worksheet/name.ts'
import { decodeCard } from '../../link/card-text.ts'
import { type CardLibrary, mainCard } from '../../link/state.ts'
import { dataOf, required } from '../../browser/dom.ts'
import { paperOf } from '../../drawings/shared/elements.ts'
import { type CardPlace, canonicalPlace, usualPlace } from '../../mechanism/bed.ts'
import { readNeedle } from '../../link/needle-list.ts'
import { placeChanged } from './first-needle.ts'
import { answersView, tasksView } from './worksheet-view.ts'

/** Where column 1 is on the bed that the address speaks of. */
const placeNow = (): CardPlace => {
  const needle = readNeedle(new URLSearchParams(location.hash.slice(1)).get('first') ?? '')
  return typeof needle === 'string' ? usualPlace : canonicalPlace({ columnOne: needle })
}

/** The query's parameter that names the worksheet. */
const key = 'seed'

/** Starts the choice of a worksheet: the address names it, and the field and the buttons change it. */
export const startWorksheets = (page: Document): void => {
  const root = required(page, '.worksheets', HTMLElement)
  const form = required(page, '.worksheet-choice', HTMLFormElement)
  const field = required(form, 'input', HTMLInputElement)
  const message = required(form, '.worksheet-said', HTMLElement)
  const lists = root.querySelectorAll<HTMLElement>('.tasks')
  const answersList = required(root, '.answers', HTMLElement)
  const [card, machine] = [dataOf(root, 'card'), dataOf(root, 'machine')]
  const library: CardLibrary = {
    main: mainCard,
    cards: new Map([[mainCard, decodeCard(card).rows ?? [0]]]),
  }
  const paper = paperOf(page)
  let shown = usualName
  let place = usualPlace

  const show = (name: string): void => {
    const now = placeNow()
    if (name !== shown || now.columnOne !== place.columnOne) {
      const tasks = worksheet(name, library, now)
      for (const list of lists)
        list.replaceChildren(
          ...tasksView(
            paper,
            tasks.filter(({ level }) => level === list.dataset.level),
          ),
        )
      answersList.replaceChildren(...answersView(paper, tasks, machine))
      for (const place of root.querySelectorAll('.worksheet-name')) place.textContent = name
    }
    shown = name
    place = now
    field.value = name
  }
  /** Shows the worksheet of a name that a reader gave; a sentence says where it is none. */
  const take = (text: string): boolean => {
    const reading = readName(text)
    if (reading.name === null) message.textContent = `${reading.reason} Worksheet ${shown} is here.`
    else {
      show(reading.name)
      message.textContent = ''
    }
    return reading.name !== null
  }
  const go = (text: string): void => {
    if (!take(text)) return
    const address = new URL(location.href)
    address.searchParams.set(key, shown)
    history.pushState(null, '', address)
    message.textContent = `Worksheet ${shown} is below, with its answers.`
  }
  const follow = (): void => {
    take(new URLSearchParams(location.search).get(key) ?? usualName)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    go(field.value)
  })
  required(form, '.worksheet-next', HTMLButtonElement).addEventListener('click', () => go(nextName(shown)))
  addEventListener('popstate', follow)
  page.addEventListener(placeChanged, () => show(shown))
  follow()
}
