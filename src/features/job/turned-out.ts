import { element, required, setText } from '../../browser/dom.ts'
import { placeOfFault } from '../../find/place.ts'
import { kindAndPlace } from '../../find/query.ts'
import { repairOfKind } from '../../find/repairs.ts'
import { type Job, jobLimits } from '../../link/job.ts'
import { type Fault, faultId } from '../../mechanism/fault.ts'
import { sortedFaults } from '../../mechanism/fault-list.ts'
import { faultOf } from '../../mechanism/read-fault.ts'
import { faultPhrase } from '../../words/faults.ts'
import { capital } from '../../words/parts.ts'
import { confirmedFaults } from './experience.ts'
import type { Seen } from './look.ts'
import type { Section } from './section.ts'

/** A place counts as found from this chance on. */
const found = 0.5
/** At most so many of what the search for faults names may be ticked. */
const mostOffered = 8

const distinct = (faults: readonly Fault[]): Fault[] => [
  ...new Map(faults.map((fault) => [kindAndPlace(fault), fault])).values(),
]

const likeliestOf = ({ answers }: Seen, least: number): Fault[] =>
  answers
    .filter(({ kind, probability }) => kind === 'faults' && probability > least)
    .flatMap(({ ways }) => ways[0] ?? [])

/** The repairs of a job that are done. */
export const doneRepairs = ({ repairs }: Pick<Job, 'repairs'>): ReadonlySet<string> =>
  new Set(repairs.flatMap(({ id, isDone }) => (isDone ? [id] : [])))

/**
 * What was wrong with a job's machine: what she confirmed; until then what a hand found, what was kept as the finding,
 * and the likeliest way of each place that is likelier wrong than right.
 */
export const wrongFaults = (job: Job, seen: Seen | null, { library }: Pick<Section, 'library'>): Fault[] => {
  const confirmed = confirmedFaults(job, library)
  if (job.turnedOut !== null) return confirmed
  const said = seen ? (seen.session.finding ?? likeliestOf(seen, found)) : []
  // What a hand found at a place is surer than what no look from outside distinguishes.
  const sure = new Set(confirmed.map(placeOfFault))
  return sortedFaults(distinct([...said.filter((fault) => !sure.has(placeOfFault(fault))), ...confirmed]))
}

/** Faults that were mended by nothing that was done. */
export const leftFaults = (faults: readonly Fault[], job: Pick<Job, 'repairs'>): Fault[] => {
  const done = doneRepairs(job)
  return faults.filter(({ kind }) => !done.has(repairOfKind(kind)))
}

/** What the machine turned out to be, to be ticked and confirmed. Returns what shows it again. */
export const createTurnedOut = (section: Section): ((seen: Seen | null) => void) => {
  const { root, job } = section
  const list = required(root, '.turned-out-list', HTMLElement)
  const confirm = required(root, '.turned-out-confirm', HTMLButtonElement)
  const said = required(root, '.turned-out-said', HTMLElement)
  let shown = ''
  const ticked = (): string[] =>
    [...list.querySelectorAll('input')].flatMap(({ checked, value }) => (checked ? [value] : []))
  const keep = (): void => {
    job.set({ turnedOut: ticked().slice(0, jobLimits.turnedOut) })
  }
  confirm.addEventListener('click', keep)
  list.addEventListener('change', keep)
  return (seen) => {
    const now = job.now()
    const wrong = wrongFaults(now, seen, section)
    const offered = distinct([
      ...(seen ? likeliestOf(seen, 0).slice(0, mostOffered) : []),
      ...confirmedFaults({ ...now, turnedOut: null }, section.library),
      ...wrong,
    ])
    confirm.hidden = now.turnedOut !== null
    setText(
      said,
      now.turnedOut === null
        ? 'Not confirmed yet: it is what the search for faults takes it for.'
        : 'Confirmed. It counts in your own experience once the job is proved, handed over or kept for parts.',
    )
    const isWrong = new Set(wrong.map(kindAndPlace))
    const key = JSON.stringify([now.id, offered.map(faultId)])
    if (key !== shown) {
      shown = key
      list.replaceChildren(
        ...offered.map((fault) =>
          element('label', {}, [
            element('input', { type: 'checkbox', value: faultId(fault) }),
            capital(faultPhrase(fault)),
          ]),
        ),
      )
    }
    for (const box of list.querySelectorAll('input'))
      box.checked = isWrong.has(kindAndPlace(faultOf(box.value)))
    if (offered.length === 0) setText(said, 'Nothing that the needles show.')
    confirm.hidden ||= offered.length === 0
  }
}
