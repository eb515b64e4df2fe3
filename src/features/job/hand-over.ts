import { dataOf, element, required, tell } from '../../browser/dom.ts'
import { jobLimits } from '../../link/job.ts'
import { limits } from '../../link/state.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { keeping, wrongLead, wrongParts } from '../../words/case.ts'
import { findingState } from '../find/index.ts'
import { createAsker } from './asker.ts'
import type { JobClient } from './client.ts'
import type { Section } from './section.ts'
import { askForProof, type Proved, statementWords } from './statement.ts'
import type { Seen } from './look.ts'
import { jobName } from './words.ts'

/** A place counts as found from this chance on. */
const found = 0.5

/** What was wrong: the finding that was kept, or the likeliest way of each place that is likelier wrong than right. */
const faultsOf = ({ session, answers }: Seen): readonly Fault[] =>
  session.finding ??
  answers.flatMap(({ kind, probability, ways }) =>
    kind === 'faults' && probability > found ? (ways[0] ?? []) : [],
  )

const part = (title: string, lines: readonly string[]): HTMLElement[] =>
  lines.length === 0
    ? []
    : [
        element('section', {}, [
          element('h4', {}, [title]),
          ...lines.map((line) => element('p', { dir: 'auto' }, [line])),
        ]),
      ]

/** The moment of handing over: the word to the owner, the customer's page and the sheet. Returns what shows it again. */
export const createHandOver = (
  { root, job, library }: Section,
  client: JobClient,
): ((seen: Seen | null) => void) => {
  const word = required(root, '.hand-over-word', HTMLTextAreaElement)
  const link = required(root, '.hand-over-case', HTMLAnchorElement)
  const sheet = required(root, '.job-sheet-body', HTMLElement)
  const base = dataOf(root, 'base')
  word.addEventListener('input', () => {
    job.set({ word: Array.from(word.value).slice(0, jobLimits.word).join('') })
  })
  let proved: readonly string[] = []
  let last: Seen | null = null
  const proofOnce = createAsker<Proved>(
    ({ statement, session }) => {
      proved = statement ? [statementWords(statement, session)] : []
      show(last)
    },
    () => {
      proved = []
    },
  )
  const show = (seen: Seen | null): void => {
    last = seen
    const now = job.now()
    proofOnce(now.after, () => askForProof(client, now.after, library))
    if (word.value !== now.word) word.value = now.word
    tell(required(root, '#job-sheet-title', HTMLElement), `${jobName(now)}: the sheet that goes with it`)
    const faults = seen ? faultsOf(seen) : []
    const done = now.repairs.filter(({ isDone }) => isDone)
    const machine = { faults, wear: 0 }
    sheet.replaceChildren(
      ...part('What was wrong', [
        ...(seen && faults.length > 0 ? [wrongLead(machine)] : ['Nothing that the needles show.']),
        ...wrongParts(faults).map(({ name, words }) => `${name}: ${words}`),
      ]),
      ...part(
        'What was done',
        done.map(({ note }) => note).filter((note) => note.trim() !== ''),
      ),
      ...part('After the work', proved),
      ...part('To keep it well', faults.length > 0 ? [keeping(machine)] : []),
      ...part('From your repairer', now.word.trim() === '' ? [] : [now.word]),
    )
    link.hidden = faults.length === 0 || !seen
    if (!seen || faults.length === 0) return
    const note = Array.from(now.word.trim()).slice(0, limits.noteCharacters).join('')
    const { text } = findingState(seen.session, faults, library)
    const state = note === '' ? text : `${text}&${new URLSearchParams({ note }).toString()}`
    link.href = `${base}/case/?make#${state}`
  }
  return show
}
