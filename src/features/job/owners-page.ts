import { repairIds } from '../../find/repairs.ts'
import { type Case, writeCase } from '../../link/case.ts'
import type { GivenPart, Job } from '../../link/job.ts'
import { read } from '../../link/read.ts'
import type { Session } from '../../link/session.ts'
import { type CardLibrary, limits } from '../../link/state.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { doneWords } from '../../words/repairs.ts'
import { findingState } from '../find/index.ts'
import type { Proved } from './statement.ts'
import { doneRepairs, leftFaults } from './turned-out.ts'

const cut = (text: string): string => Array.from(text.trim()).slice(0, limits.noteCharacters).join('')

/** What was done, a line a repair: in her words, or in those of the site where she has written none. */
export const doneLines = (job: Job): string[] => {
  const done = doneRepairs(job)
  return repairIds
    .filter((id) => done.has(id))
    .map((id) => {
      const note = job.repairs.find((one) => one.id === id)?.note.trim() ?? ''
      return note === '' ? doneWords[id] : note
    })
}

const afterOf = (job: Job, { statement }: Proved, isGiven: boolean): Case['after'] => {
  if (doneRepairs(job).size === 0 || (statement && statement.wrong.length > 0)) return null
  return statement && isGiven ? { shown: statement.shown, faults: statement.faults } : 'mended'
}

/**
 * The link of the page for a job's owner: what was wrong, and of what was done, of the proof and of the word whatever is
 * not kept back. Nothing else of the job is in it.
 */
export const ownersPage = (
  job: Job,
  session: Session,
  faults: readonly Fault[],
  proved: Proved,
  library: CardLibrary,
): string => {
  const isGiven = (part: GivenPart): boolean => !job.keptBack.includes(part)
  const { state } = read(findingState(session, faults, library).text, library)
  const after = afterOf(job, proved, isGiven('proof'))
  return writeCase(
    {
      title: '',
      state: { ...state, note: isGiven('word') ? cut(job.word) : '' },
      done: after !== null && isGiven('done') ? cut(doneLines(job).join('\n')) : '',
      after,
      left: after === null ? [] : leftFaults(state.faults, job),
    },
    library,
  )
}
