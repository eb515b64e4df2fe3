import { bareFaultId, type Fault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../../words/faults.ts'
import { confidence, distinctWays, passPhrase, percent, wayPhrase } from '../../words/finding.ts'
import { counted } from '../../words/lists.ts'
import { machineWeighed } from '../../words/own-dimensions.ts'
import { element, required, setText, dataOf } from '../../browser/dom.ts'
import { faultPage } from './answers.ts'
import { findingState, mostWrong } from './finding-state.ts'
import { checkedLines } from './pass-line.ts'
import { createMachinePicture } from './machine-view.ts'
import type { Answer } from '../../find/messages.ts'
import { drawWholeBed } from './picture.ts'
import { expectedIn, actualIn } from './marks.ts'
import type { FindStore } from './store.ts'

/** How sure the finding is, by the answer that holds it. */
const sureWords = (finding: readonly Fault[], answers: readonly Answer[]): string => {
  const key = (way: readonly Fault[]): string =>
    way
      .map((fault) => bareFaultId(fault))
      .sort()
      .join()
  const holder = answers.find(({ ways }) => ways.some((way) => key(way) === key(finding)))
  if (!holder) return 'As things stand, what was seen does not point to it.'
  const alike = distinctWays(holder.ways).length - 1
  const sure = `${confidence(holder.probability)}, ${percent(holder.probability)}`
  return alike === 0
    ? `Confidence: ${sure}.`
    : `Confidence: ${sure}, together with ${counted(alike, 'other')} that look${alike === 1 ? 's' : ''} the same from outside.`
}

/** Said where the workbench's card is not counted as the noted one. */
const movedWords =
  'That row is read the other way on a card laid in at its first row, so the workbench has it laid in one row further on.'

/** The finding that was kept, with where it leads, and the record that is printed. */
export const createFinding = (
  root: HTMLElement,
  store: FindStore,
): ((answers: readonly Answer[]) => void) => {
  const section = required(root, '.finding', HTMLElement)
  const base = dataOf(root, 'base')
  const svg = required(section, '.finding-bed', SVGSVGElement)
  const wide = matchMedia('print, (min-width: 45rem)')
  const titleOf = (id: string): string =>
    root.querySelector<HTMLElement>(`input[name="card"][value="${CSS.escape(id)}"]`)?.dataset.title ?? id
  const figure = required(section, '.finding-machine', HTMLElement)
  const showMachine = createMachinePicture(figure, store, 'finding')
  let answers: readonly Answer[] = []
  let linked = ''

  const drawSeen = (): void => {
    const { session } = store.now()
    const pass = mostWrong(session)
    if (!pass) return
    setText(
      required(section, '.finding-bed-words', HTMLElement),
      `The bed as it was seen. ${passPhrase(pass.row, pass.way, pass.speed)}.`,
    )
    const shape = wide.matches ? 'wide' : 'narrow'
    drawWholeBed(svg, actualIn(pass, store.library, session), expectedIn(pass, store.library, session), shape)
  }
  const show = (): void => {
    const { session } = store.now()
    const { finding } = session
    section.hidden = !finding
    if (!finding) return
    setText(required(section, '.finding-part', HTMLElement), wayPhrase(finding))
    setText(required(section, '.finding-sure', HTMLElement), sureWords(finding, answers))
    required(section, '.finding-checked', HTMLElement).replaceChildren(
      ...checkedLines(session, titleOf).map((line) => element('li', {}, [line])),
    )
    showMachine(
      finding.map((fault, n) => ({ fault, number: String(n + 1) })),
      finding,
    )
    const { text: state, isMoved } = findingState(session, finding, store.library)
    setText(required(section, '.finding-moved', HTMLElement), isMoved ? movedWords : '')
    if (linked !== state) {
      linked = state
      required(section, '.finding-pages', HTMLElement).replaceChildren(
        ...finding.map((fault) =>
          element('a', { href: faultPage(base, fault) }, [`How to mend it: ${faultPhrase(fault)}`]),
        ),
        element('a', { href: `${base}/workbench/#${state}` }, ['See it on the workbench']),
        element('a', { href: `${base}/case/?make#${state}` }, ['Make a case for the customer']),
      )
    }
    setText(required(section, '.finding-of', HTMLElement), machineWeighed(session.own))
    drawSeen()
  }
  required(section, '.finding-print', HTMLButtonElement).addEventListener('click', () => {
    print()
  })
  required(section, '.finding-drop', HTMLButtonElement).addEventListener('click', () => {
    store.set({ finding: null })
    required(root, '.answers-title', HTMLElement).focus()
  })
  wide.addEventListener('change', show)
  addEventListener('beforeprint', show)
  store.subscribe(show)
  return (ranked) => {
    answers = ranked
    show()
  }
}
