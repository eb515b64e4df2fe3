import type { MachineStore } from '../../browser/machine-store.ts'
import { allRightOf } from '../../link/bed-marks.ts'
import { newJob, sessionForJob } from '../../link/job.ts'
import { writeJobAddress } from '../../link/job-address.ts'
import { emptySession, writeSession } from '../../link/session-link.ts'
import { sessionLimits } from '../../link/session.ts'
import { rowsOf } from '../../link/state.ts'
import { wayOfPass } from '../../mechanism/bed.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { openShelf, randomId } from '../job/index.ts'

const deniedWords =
  'This browser keeps nothing for this page, so it can keep no job either. Copy the link to keep the machine.'
const refusedWords = 'The browser would not keep the job. Copy the link to keep the machine.'

/** What a job knows of the machine on the workbench: its card, and what is broken as what it may be; nothing was seen. */
const sessionOf = ({ now, library }: MachineStore): string => {
  const { card, pass, columnOne, own, speed, faults } = now().state
  const rows = rowsOf(card, library)
  const isFinding = faults.length > 0 && faults.length <= sessionLimits.together
  return writeSession(
    {
      ...emptySession(library),
      columnOne,
      own,
      passes: [
        {
          card,
          row: rows && ((pass - 1) % rows.length) + 1,
          way: wayOfPass(pass),
          speed,
          pass,
          marks: allRightOf(dimensionsOf(own).needles).map(() => 'n'),
        },
      ],
      finding: isFinding ? faults : null,
    },
    library,
  )
}

/** Where the job that was begun is, among the jobs; or why none could be. */
type KeptJob = { readonly fragment: string } | { readonly fragment: null; readonly words: string }

/** Begins a job with the machine on the workbench. */
export const keepAsJob = async (store: MachineStore): Promise<KeptJob> => {
  const shelf = await openShelf()
  if (shelf.trouble) return { fragment: null, words: deniedWords }
  const job = { ...newJob(randomId(), Date.now()), before: sessionForJob(sessionOf(store)) ?? '' }
  if ((await shelf.keep(job, null)) !== 'kept') return { fragment: null, words: refusedWords }
  return { fragment: writeJobAddress(job.id, 'intake') }
}
