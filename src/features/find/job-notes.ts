import { dataOf, element, required } from '../../browser/dom.ts'
import { type NotedJob, notedJob, setNotedJob } from '../../browser/noted-job.ts'
import { type Job, newJob, sessionForJob } from '../../link/job.ts'
import { writeJobAddress } from '../../link/job-address.ts'
import { readSession, writeSession } from '../../link/session-link.ts'
import { createJobStore, jobName, openShelf, randomId } from '../job/index.ts'
import type { FindStore } from './store.ts'

const partWords: Readonly<Record<NotedJob['part'], string>> = {
  before: 'as the machine came in',
  after: 'after the work',
}

const tooLongWords =
  'These are more notes than a job can hold, so the last ones are in the address only. Copy the link to keep them.'
const notKeptWords =
  'This browser would not keep the last notes in the job. Copy the link to keep them, and open the job again.'

/** Notes what is entered into a job, from now on, and says so above the page. */
const follow = (root: HTMLElement, store: FindStore, job: Job, { part }: NotedJob, isNew: boolean): void => {
  const place = required(root, '.find-job', HTMLElement)
  const keep = required(root, '.find-keep', HTMLButtonElement)
  const trouble = element('span', { role: 'status' })
  const say = (words: string): void => {
    trouble.textContent = words === '' ? '' : ` ${words}`
  }
  openShelf()
    .then((shelf) => {
      const kept = createJobStore(job, isNew, shelf, {
        kept: (how) => {
          say(how === 'kept' ? '' : notKeptWords)
        },
      })
      const note = (): void => {
        const text = sessionForJob(writeSession(store.now().session, store.library))
        if (text === null) say(tooLongWords)
        else if (kept.now()[part] !== text) kept.set({ [part]: text })
      }
      const back = element(
        'a',
        {
          href: `${dataOf(root, 'base')}/job/${writeJobAddress(job.id, part === 'before' ? 'look' : 'prove')}`,
        },
        ['Back to the job'],
      )
      const leave = element('button', { type: 'button' }, ['Note no more into it'])
      let isOn = true
      back.addEventListener('click', (event) => {
        event.preventDefault()
        void kept.flush().then(() => {
          location.assign(back.href)
        })
      })
      leave.addEventListener('click', () => {
        isOn = false
        setNotedJob(null)
        void kept.flush().then(kept.close)
        place.hidden = true
        keep.hidden = false
      })
      place.replaceChildren(
        element('span', {}, [`What you note here goes into the job “${jobName(job)}”, ${partWords[part]}.`]),
        back,
        leave,
        trouble,
      )
      place.hidden = false
      keep.hidden = true
      store.subscribe((_, before) => {
        if (isOn && before !== null) note()
      })
      if (isNew) kept.set({})
      note()
      addEventListener('visibilitychange', () => {
        if (isOn) void kept.flush()
      })
    })
    .catch(() => {
      say(notKeptWords)
    })
}

/** Goes on with the job in this window's hand: its notes come to the page unless the address has some of its own. */
export const resumeJob = async (root: HTMLElement, store: FindStore): Promise<void> => {
  const hand = notedJob()
  if (!hand) return
  const shelf = await openShelf()
  const reading = await shelf.get(hand.id)
  if (reading?.kind !== 'job') {
    setNotedJob(null)
    return
  }
  const { session } = readSession(reading.job[hand.part], store.library)
  if (!location.hash.includes('=')) store.set(session, session.passes.length - 1)
  follow(root, store, reading.job, hand, false)
}

/** Begins a job with what is on the page, and goes on noting into it. */
export const keepAsJob = (root: HTMLElement, store: FindStore): void => {
  const before = sessionForJob(writeSession(store.now().session, store.library))
  const job: Job = { ...newJob(randomId(), Date.now()), state: 'open', before: before ?? '' }
  const hand: NotedJob = { id: job.id, part: 'before' }
  setNotedJob(hand)
  follow(root, store, job, hand, true)
}
