import { dataOf, element, required, setText } from '../../browser/dom.ts'
import { givenParts, jobLimits } from '../../link/job.ts'
import { keeping, mendedWords, watching, wrongLead, wrongParts } from '../../words/case.ts'
import { askForLatest } from './latest-answer.ts'
import type { JobClient } from './client.ts'
import type { Seen } from './look.ts'
import { doneLines, ownersPage } from './owners-page.ts'
import type { Section } from './section.ts'
import { askForProof, type Proved, statementWords } from './statement.ts'
import { createTurnedOut, doneRepairs, leftFaults, wrongFaults } from './turned-out.ts'
import { jobName } from './words.ts'

const part = (title: string, lines: readonly string[]): HTMLElement[] => {
  const written = lines.filter((line) => line.trim() !== '')
  return written.length === 0
    ? []
    : [
        element('section', {}, [
          element('h4', {}, [title]),
          ...written.map((line) => element('p', { dir: 'auto' }, [line])),
        ]),
      ]
}

/** What goes into the page for the owner, to be ticked. Returns what shows it again. */
const createGiven = ({ root, job }: Section): (() => void) => {
  const boxes = [...root.querySelectorAll<HTMLInputElement>('.hand-over-given input')]
  for (const box of boxes)
    box.addEventListener('change', () => {
      const others = job.now().keptBack.filter((one) => one !== box.value)
      const own = givenParts.filter((one) => one === box.value && !box.checked)
      job.set({ keptBack: [...others, ...own] })
    })
  return () => {
    const { keptBack } = job.now()
    for (const box of boxes) box.checked = !keptBack.some((one) => one === box.value)
  }
}

/** The moment of handing over: what it turned out to be, the word to the owner, her page and the sheet. Returns what shows it again. */
export const createHandOver = (section: Section, client: JobClient): ((seen: Seen | null) => void) => {
  const { root, job, library } = section
  const word = required(root, '.hand-over-word', HTMLTextAreaElement)
  const link = required(root, '.hand-over-case', HTMLAnchorElement)
  const sheet = required(root, '.job-sheet-body', HTMLElement)
  const handedOver = required(root, '.hand-over-done', HTMLButtonElement)
  const said = required(root, '.hand-over-said', HTMLElement)
  const base = dataOf(root, 'base')
  const showTurnedOut = createTurnedOut(section)
  const showGiven = createGiven(section)
  word.addEventListener('input', () => {
    job.set({ word: Array.from(word.value).slice(0, jobLimits.word).join('') })
  })
  handedOver.addEventListener('click', () => {
    job.set({ state: 'handed-over' })
    // The button goes: what it did has the keyboard.
    said.focus()
  })
  let proved: Proved | null = null
  let last: Seen | null = null
  const proofOnce = askForLatest<Proved>({
    begin: () => {
      proved = null
    },
    show: (answer) => {
      proved = answer
      show(last)
    },
    fail: () => undefined,
  })
  const showSheet = (seen: Seen | null): void => {
    const now = job.now()
    const faults = wrongFaults(now, seen, section)
    const machine = { faults, wear: 0 }
    const isDone = doneRepairs(now).size > 0
    const statement = proved?.statement ? statementWords(proved.statement, proved.session) : ''
    setText(required(root, '#job-sheet-title', HTMLElement), `${jobName(now)}: the sheet that goes with it`)
    sheet.replaceChildren(
      ...part('Before', [
        faults.length > 0 ? wrongLead(machine) : 'Nothing that the needles show.',
        ...wrongParts(faults).map(({ name, words }) => `${name}: ${words}`),
      ]),
      ...part('What was done', doneLines(now)),
      ...part('After', [...(isDone ? [mendedWords(machine, leftFaults(faults, now))] : []), statement]),
      ...part('What to watch for', [watching(machine)]),
      ...part('To keep it well', [keeping(machine)]),
      ...part('From your repairer', [now.word]),
    )
  }
  const show = (seen: Seen | null): void => {
    last = seen
    const now = job.now()
    proofOnce([now.id, now.after], () => askForProof(client, now.after, library))
    if (word.value !== now.word) word.value = now.word
    const isHandedOver = now.state === 'handed-over'
    handedOver.hidden = isHandedOver
    setText(said, isHandedOver ? 'It is handed over. The job stays on this device, under All jobs.' : '')
    showTurnedOut(seen)
    showGiven()
    showSheet(seen)
    const faults = wrongFaults(now, seen, section)
    link.hidden = faults.length === 0 || !seen || !proved
    if (seen && proved)
      link.href = `${base}/case/?make#${ownersPage(now, seen.session, faults, proved, library)}`
  }
  return show
}
