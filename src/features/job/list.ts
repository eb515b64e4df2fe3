import { element, required, setText } from '../../browser/dom.ts'
import type { Job, JobReading, JobState } from '../../link/job.ts'
import { type JobMoment, writeJobAddress } from '../../link/job-address.ts'
import { quote } from '../../link/troubles.ts'
import { counted } from '../../words/lists.ts'
import { jobName, jobStateWords, timeWords } from './words.ts'

/** The moment that a job is opened at, by how far it is. */
const momentOf: Readonly<Record<JobState, JobMoment>> = {
  in: 'intake',
  open: 'look',
  waiting: 'work',
  proved: 'hand-over',
  'handed-over': 'hand-over',
  'for-parts': 'decide',
}

const rowOf = (job: Job): HTMLElement => {
  const [complaint = ''] = job.complaint.trim().split('\n')
  return element('li', {}, [
    element('a', { href: writeJobAddress(job.id, momentOf[job.state]), dir: 'auto' }, [jobName(job)]),
    element('span', { class: 'job-row-state' }, [jobStateWords[job.state]]),
    element('span', { class: 'job-row-complaint', dir: 'auto' }, [complaint]),
    element('time', { datetime: job.changed }, [timeWords(job.changed)]),
  ])
}

/** What there is to say of a job that is kept but can't be shown. */
const strangerOf = (reading: JobReading): string | null => {
  switch (reading.kind) {
    case 'job':
      return null
    case 'later':
      return `${quote(reading.name)} was kept by a later version of this site. It stays as it is.`
    case 'unreadable':
      return `A job that is kept here can’t be read: ${reading.reason}. It stays as it is.`
  }
}

const matches = (job: Job, words: string, state: string): boolean => {
  const text = `${job.name} ${job.complaint} ${job.word}`.toLocaleLowerCase()
  return (
    (state === '' || job.state === state) &&
    words
      .toLocaleLowerCase()
      .split(/\s+/)
      .every((word) => text.includes(word))
  )
}

/** The list of jobs, newest first, with search and state. Returns what shows it again. */
export const createList = (root: HTMLElement): ((readings: readonly JobReading[]) => void) => {
  const rows = required(root, '.job-rows', HTMLElement)
  const search = required(root, '.job-search', HTMLInputElement)
  const filter = required(root, '.job-filter', HTMLSelectElement)
  const count = required(root, '.job-count', HTMLElement)
  let all: readonly JobReading[] = []
  const show = (): void => {
    const jobs = all
      .flatMap((reading) => (reading.kind === 'job' ? [reading.job] : []))
      .sort((one, other) => (one.changed < other.changed ? 1 : -1))
    const shown = jobs.filter((job) => matches(job, search.value, filter.value))
    rows.replaceChildren(
      ...shown.map(rowOf),
      ...all.flatMap((reading) => strangerOf(reading) ?? []).map((words) => element('li', {}, [words])),
    )
    required(root, '.job-none', HTMLElement).hidden = all.length > 0
    required(root, '.job-find', HTMLElement).hidden = all.length === 0
    required(root, '.job-all-out', HTMLButtonElement).disabled = jobs.length === 0
    setText(
      count,
      shown.length === jobs.length
        ? counted(jobs.length, 'job')
        : `${shown.length} of ${counted(jobs.length, 'job')}`,
    )
  }
  search.addEventListener('input', show)
  filter.addEventListener('change', show)
  return (readings) => {
    all = readings
    show()
  }
}
