import { required, setText } from '../../browser/dom.ts'
import { jobStates } from '../../link/job.ts'
import { type JobMoment, jobMoments, writeJobAddress } from '../../link/job-address.ts'
import { createJobClient } from './client.ts'
import { createDecide } from './decide.ts'
import { createHandOver } from './hand-over.ts'
import { createIntake } from './intake.ts'
import { createLook, type Seen } from './look.ts'
import { createMeasure } from './measure.ts'
import { createProve } from './prove.ts'
import type { Section } from './section.ts'
import { jobMomentWords, jobName } from './words.ts'
import { createWork } from './work.ts'

/** One job on the page. */
interface JobView {
  /** Shows the job as it is now. */
  readonly show: () => void
  readonly showMoment: (moment: JobMoment) => void
  /** Begins reading at the moment on the page, as whoever pressed a link to it expects. */
  readonly beginMoment: () => void
  /** Shows all moments, as they are printed; resolves once they are computed. */
  readonly showForPrint: () => Promise<void>
}

/** Makes the sections of a job, which show whichever is open. */
export const createJobView = (section: Section): JobView => {
  const { root, job } = section
  const article = required(root, '.job-one', HTMLElement)
  const state = required(root, '.job-state', HTMLSelectElement)
  state.addEventListener('change', () => {
    const chosen = jobStates.find((known) => known === state.value)
    if (chosen) job.set({ state: chosen })
  })
  const moments = required(root, '.job-moments', HTMLElement)
  const onward = required(root, '.job-next', HTMLAnchorElement)
  let seen: Seen | null = null
  let moment: JobMoment = 'intake'
  const showIntake = createIntake(section)
  const client = createJobClient()
  const showDecide = createDecide(section, client)
  const showWork = createWork(section, client)
  const showMeasure = createMeasure(section)
  const showProve = createProve(section, client)
  const showHandOver = createHandOver(section, client)
  const showLook = createLook(section, (now) => {
    seen = now
    showMomentNow()
  })
  // Only the moment on the page is computed.
  const showMomentNow = (): void => {
    switch (moment) {
      case 'intake':
        showIntake()
        break
      case 'look':
        break
      case 'decide':
        showDecide()
        break
      case 'work':
        showWork(seen)
        break
      case 'measure':
        showMeasure()
        break
      case 'prove':
        showProve(seen)
        break
      case 'hand-over':
        showHandOver(seen)
    }
  }
  return {
    show: () => {
      if (job.id() === null) return
      setText(required(root, '.job-name', HTMLElement), jobName(job.now()))
      state.value = job.now().state
      showLook()
      showMomentNow()
    },
    showForPrint: async () => {
      showIntake()
      showWork(seen)
      showMeasure()
      showHandOver(seen)
      await client.idle()
    },
    beginMoment: () => {
      const title = required(article, `[data-moment='${moment}'] h2`, HTMLElement)
      title.focus({ preventScroll: true })
      title.scrollIntoView()
    },
    showMoment: (next) => {
      moment = next
      showMomentNow()
      for (const part of article.querySelectorAll<HTMLElement>('.job-moment'))
        part.hidden = part.dataset['moment'] !== moment
      const following = jobMoments[jobMoments.indexOf(moment) + 1]
      onward.hidden = following === undefined
      if (following !== undefined) {
        onward.href = writeJobAddress(job.now().id, following)
        setText(onward, `Next: ${jobMomentWords[following]}`)
      }
      for (const link of moments.querySelectorAll('a')) {
        const own = jobMoments.find((known) => known === link.dataset['moment'])
        if (own) link.href = writeJobAddress(job.now().id, own)
        if (own === moment) {
          link.setAttribute('aria-current', 'page')
          // On a narrow screen not all of them have room.
          moments.scrollLeft = link.offsetLeft - moments.offsetLeft - link.offsetWidth
        } else link.removeAttribute('aria-current')
      }
    },
  }
}
