import type { MachineStore } from '../../browser/machine-store.ts'
import { allRight } from '../../link/bed-marks.ts'
import { newJob, sessionForJob, writeJobAddress } from '../../link/job.ts'
import { emptySession, writeSession } from '../../link/session-link.ts'
import { sessionLimits } from '../../link/session.ts'
import { rowsOf } from '../../link/state.ts'
import { wayOfPass } from '../../mechanism/bed.ts'
import { openShelf, randomId } from '../job/index.ts'

const deniedWords =
  'This browser keeps nothing for this page, so it can keep no job either. Copy the link to keep the machine.'
const refusedWords = 'The browser would not keep the job. Copy the link to keep the machine.'

/** What a job knows of the machine on the workbench: its card, and what is broken as what it may be; nothing was seen. */
const sessionOf = ({ now, library }: MachineStore): string => {
  const { card, pass, columnOne, speed, faults } = now().state
  const rows = rowsOf(card, library)
  const isFinding = faults.length > 0 && faults.length <= sessionLimits.together
  return writeSession(
    {
      ...emptySession(library),
      columnOne,
      passes: [
        {
          card,
          row: rows && ((pass - 1) % rows.length) + 1,
          way: wayOfPass(pass),
          speed,
          pass,
          marks: allRight.map(() => 'n'),
        },
      ],
      finding: isFinding ? faults : null,
    },
    library,
  )
}

/** Begins a job with the machine on the workbench, and goes there; gives the sentence that says why it can't. */
export const keepAsJob = async (base: string, store: MachineStore): Promise<string | null> => {
  const shelf = await openShelf()
  if (shelf.trouble) return deniedWords
  const job = { ...newJob(randomId(), Date.now()), before: sessionForJob(sessionOf(store)) ?? '' }
  if ((await shelf.keep(job, null)) !== 'kept') return refusedWords
  location.assign(`${base}/job/${writeJobAddress(job.id, 'intake')}`)
  return null
}
