import type { Fault } from '../../mechanism/fault.ts'
import {
  answerTitle,
  confidence,
  distinctWays,
  percent,
  showsWords,
  speakingInPass,
  speakingWords,
  wayPhrase,
} from '../../words/finding.ts'
import { element, required, setText, dataOf } from '../../browser/dom.ts'
import type { Answer } from '../../find/messages.ts'
import { createMachinePicture, isOnMachine, marksFor } from './machine-view.ts'
import { bedPicture, drawWholeBed } from './picture.ts'
import { expectedIn, actualIn, predictedIn } from './marks.ts'
import { nothingEntered } from '../../words/whole-finding.ts'
import type { Session } from '../../link/session.ts'
import type { FindStore } from './store.ts'

/** With more answers than this each is a row, so that all are seen at once. */
const mostOpen = 2

/** The most ways of one answer that are named one by one. */
const mostWays = 8

/** A kind of fault's page. */
export const faultPage = (base: string, { kind }: Fault): string =>
  `${base}/faults/${kind.replaceAll('.', '-')}/`

/** One answer's place in the list. It stays while the answers change, so that what is open stays open. */
interface Place {
  readonly root: HTMLElement
  /** Open where few answers leave it room, unless somebody opened or closed it. */
  readonly show: (answer: Answer, rank: number, isAlone: boolean, isUntouched: boolean) => void
}

/** The ways of an answer, each with its page and a button that keeps it. */
const waysList = (answer: Answer, base: string, keep: (way: readonly Fault[]) => void): HTMLElement => {
  const ways = distinctWays(answer.ways)
  const items = ways.slice(0, mostWays).map((way) => {
    const links = way.flatMap((fault, n) => [
      ...(n > 0 ? [' with '] : []),
      element('a', { href: faultPage(base, fault) }, [
        ways.length === 1 && way.length === 1 ? 'About this fault' : wayPhrase([fault]),
      ]),
    ])
    const button = element('button', { type: 'button', class: 'keep' }, ['Keep as the finding'])
    button.setAttribute('aria-label', `Keep as the finding: ${wayPhrase(way)}`)
    button.addEventListener('click', () => {
      keep(way)
    })
    return element('li', {}, [element('span', {}, links), button])
  })
  const more = ways.length - items.length
  if (more > 0) items.push(element('li', {}, [`and ${more} more.`]))
  return element('ul', { class: 'ways-list' }, items)
}

const createPlace = (
  store: FindStore,
  base: string,
  isOpen: boolean,
  keep: (way: readonly Fault[]) => void,
  pointAt: (needles: readonly number[]) => void,
): Place => {
  const title = element('h3')
  const chance = element('span', { class: 'chance' })
  const bar = element('span', { class: 'chance-bar', 'aria-hidden': 'true' })
  const summary = element('summary', {}, [title, chance, bar])
  const why = element('p', { class: 'why' })
  const fits = element('p', { class: 'fits' })
  const waysTitle = element('summary')
  const ways = element('details', { class: 'answer-ways' }, [waysTitle])
  ways.open = isOpen
  const predicted = bedPicture('The bed that it predicts')
  const noted = bedPicture('The bed as you noted it')
  const seen = element('details', { class: 'predicted' }, [
    element('summary', {}, ['The bed that it predicts beside yours']),
    element('p', {}, ['It predicts, for this pass:']),
    predicted,
    element('p', {}, ['You noted:']),
    noted,
  ])
  const show = element('button', { type: 'button', class: 'show-needles' }, ['Show the needles'])
  const details = element('details', {}, [summary, why, fits, show, ways, seen])
  const root = element('li', { class: 'answer' }, [details])
  // Once somebody has opened or closed it, it stays so.
  let isKept = false
  summary.addEventListener('click', () => {
    isKept = true
  })
  let now: Answer | null = null
  show.addEventListener('click', () => {
    const inPass = now?.speaking[store.now().at]
    if (inPass) pointAt([...inPass.for, ...inPass.against])
  })
  let listed = ''
  const draw = (): void => {
    const prediction = now?.shown[store.now().at]
    seen.hidden = !prediction || prediction.chance > 0 || now?.kind !== 'faults'
    if (!prediction || !seen.open) return
    const pass = store.pass()
    const { session } = store.now()
    const expected = expectedIn(pass, store.library, session)
    drawWholeBed(predicted, predictedIn(pass, prediction, store.library, session), expected, 'narrow')
    drawWholeBed(noted, actualIn(pass, store.library, session), expected, 'narrow')
  }
  seen.addEventListener('toggle', draw)
  return {
    root,
    show: (answer, rank, isAlone, isUntouched) => {
      now = answer
      if (!isKept) details.open = isAlone
      if (isOnMachine(answer)) title.dataset.number = String(rank)
      else delete title.dataset.number
      setText(title, answerTitle(answer))
      setText(chance, isUntouched ? '' : `${confidence(answer.probability)}, ${percent(answer.probability)}`)
      bar.hidden = isUntouched
      bar.style.setProperty('--share', String(answer.probability))
      const speaking = answer.speaking.reduce((sum, each) => sum + each.for.length, 0)
      const against = answer.speaking.reduce((sum, each) => sum + each.against.length, 0)
      setText(
        why,
        answer.kind === 'sound'
          ? ''
          : [speakingWords(speaking, against), showsWords(answer)].filter(Boolean).join(' '),
      )
      const inPass = answer.speaking[store.now().at]
      setText(fits, inPass ? speakingInPass(inPass.for, inPass.against) : '')
      show.hidden = !inPass || inPass.for.length + inPass.against.length === 0
      const key = JSON.stringify(answer.ways)
      if (key !== listed) ways.replaceChildren(waysTitle, waysList(answer, base, keep))
      listed = key
      ways.hidden = answer.kind !== 'faults'
      const isOne = distinctWays(answer.ways).length === 1
      setText(waysTitle, isOne ? 'About it' : 'From outside these look the same')
      waysTitle.hidden = isOne && rank === 1
      if (waysTitle.hidden) ways.open = true
      draw()
    },
  }
}

/** Whether no needle is marked wrong, no pass added and no check made: as the page opens. */
const isUntouched = ({ passes, checked }: Pick<Session, 'passes' | 'checked'>): boolean =>
  checked.length === 0 &&
  passes.length === 1 &&
  passes.every(({ marks }) => marks.every((mark) => mark === 'r'))

/** The likely answers, the likeliest first. */
export const createAnswers = (
  root: HTMLElement,
  store: FindStore,
  keep: (way: readonly Fault[]) => void,
  pointAt: (needles: readonly number[]) => void,
): ((answers: readonly Answer[], whole: string, remarks: readonly string[]) => void) => {
  const list = required(root, '.answers', HTMLElement)
  const said = required(root, '.answers-said', HTMLElement)
  const now = required(root, '.find-now', HTMLButtonElement)
  now.addEventListener('click', () => {
    required(root, '.answers-title', HTMLElement).focus()
  })
  const base = dataOf(root, 'base')
  const figure = required(root, '.likely-machine', HTMLElement)
  const showMachine = createMachinePicture(figure, store, 'likely')
  const places: Place[] = []
  const sentence = required(root, '.whole-finding', HTMLElement)
  const more = required(root, '.finding-remarks', HTMLElement)
  return (answers, whole, remarks) => {
    const isNew = isUntouched(store.now().session)
    setText(sentence, isNew ? nothingEntered : whole)
    more.replaceChildren(...remarks.map((remark) => element('li', {}, [remark])))
    more.hidden = remarks.length === 0
    while (places.length < answers.length)
      places.push(createPlace(store, base, places.length === 0, keep, pointAt))
    for (const [n, answer] of answers.entries())
      places[n]?.show(answer, n + 1, n === 0 && answers.length <= mostOpen, isNew)
    const shown = places.slice(0, answers.length).map(({ root: item }) => item)
    while (list.children.length > shown.length) list.lastElementChild?.remove()
    for (const item of shown) if (item.parentElement !== list) list.append(item)
    showMachine(root.hasAttribute('data-hides') ? [] : marksFor(answers), [])
    const [first] = answers
    if (!first) return
    const words = isNew ? nothingEntered : `${answerTitle(first)}: ${confidence(first.probability)}`
    setText(said, words)
    setText(required(now, '.now-answer', HTMLElement), words)
    // As long as nothing is wrong it would only lie over the buttons.
    now.toggleAttribute('data-quiet', first.kind === 'sound')
  }
}
