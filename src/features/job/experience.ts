import { countsExperience } from '../../browser/own-experience.ts'
import { type Experience, experienceFrom } from '../../find/experience.ts'
import type { Job, JobState } from '../../link/job.ts'
import { readSession } from '../../link/session-link.ts'
import type { CardLibrary } from '../../link/state.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultOf } from '../../mechanism/read-fault.ts'
import type { Shelf } from './shelf.ts'

const finished: ReadonlySet<JobState> = new Set<JobState>(['proved', 'handed-over', 'for-parts'])

/** What a hand found; a session without a check is not read, since many jobs are read at once. */
const foundByHand = ({ before }: Job, library: CardLibrary): Fault[] =>
  before.includes('check=')
    ? readSession(before, library).session.checked.flatMap(({ found }) => found ?? [])
    : []

/** What somebody confirmed of a job's machine: what she said that it turned out to be, or else what a hand found. */
export const confirmedFaults = (job: Job, library: CardLibrary): Fault[] =>
  job.turnedOut === null ? foundByHand(job, library) : job.turnedOut.map(faultOf)

/** The experience of the finished ones among some jobs. */
export const experienceOf = (jobs: readonly Job[], library: CardLibrary): Experience =>
  experienceFrom(
    jobs
      .filter(({ state }) => finished.has(state))
      .map((job) => confirmedFaults(job, library).map(({ kind }) => kind)),
  )

/** All jobs of this device that can be read. */
const jobsOf = async (shelf: Shelf): Promise<Job[]> =>
  (await shelf.all()).flatMap((reading) => (reading.kind === 'job' ? [reading.job] : []))

/**
 * The experience that counts for a machine, where it is switched on: that of all finished jobs but its own, which would
 * count twice. Empty where it is off.
 */
export const countedExperience = async (
  shelf: Shelf,
  library: CardLibrary,
  own: number | null,
): Promise<Experience> =>
  countsExperience()
    ? experienceOf(
        (await jobsOf(shelf)).filter(({ id }) => id !== own),
        library,
      )
    : {}
