import { required } from '../../browser/dom.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { setNotedJob } from '../../browser/noted-job.ts'
import { libraryOf } from '../../browser/library.ts'
import type { Experience } from '../../find/experience.ts'
import { type Job, type JobReading, newJob } from '../../link/job.ts'
import { readJobAddress, writeJobAddress } from '../../link/job-address.ts'
import { ask } from './ask.ts'
import { createCurrentJob } from './current-job.ts'
import { exampleId, exampleJob } from './example.ts'
import { countedExperience, experienceOf } from './experience.ts'
import { createExperienceTable } from './experience-table.ts'
import { bindFiles } from './files.ts'
import { createJobView } from './job-view.ts'
import { keepUnkept } from './keep-unkept.ts'
import { createList } from './list.ts'
import { createNotice } from './notice.ts'
import { randomId } from './random-id.ts'
import type { Section } from './section.ts'
import { bindPrint } from './print.ts'
import { bindStayAwake } from './stay-awake.ts'
import { askToPersist, openShelf } from './shelf.ts'
import { forgetUnkept } from './unkept.ts'
import { jobName } from './words.ts'

/** Why a job can't be opened. */
const absentWords = (reading: Exclude<JobReading, { kind: 'job' }> | null): string => {
  if (reading === null)
    return 'This job is not on this device. Jobs stay on the device where they were begun; one can be taken to another as a file.'
  return reading.kind === 'later'
    ? 'This job was kept by a later version of this site. It stays as it is.'
    : `This job can’t be read: ${reading.reason}. It stays as it is.`
}

/** Brings the page to life: the list of jobs, or one of them at a moment, by the address. */
export const startJobs = async (root: HTMLElement): Promise<void> => {
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const shelf = await openShelf()
  const notice = createNotice(root, shelf)
  const copied = await keepUnkept(shelf)
  const job = createCurrentJob(
    shelf,
    () => {
      view.show()
    },
    (how) => {
      if (job.id() !== null) notice.kept(how, job.now())
      view.show()
    },
  )
  let experience: Experience = {}
  const section: Section = { root, job, shelf, library, experience: () => experience }
  const view = createJobView(section)
  const list = createList(root)
  const showPart = (isOne: boolean): void => {
    required(root, '.job-one', HTMLElement).hidden = !isOne
    required(root, '.job-shelf', HTMLElement).hidden = isOne
  }
  const showExperience = createExperienceTable(root)
  const showList = async (): Promise<void> => {
    const readings = await shelf.all()
    list(readings)
    showPart(false)
    // The list comes first.
    await yieldToBrowser()
    const jobs = readings.flatMap((reading) => (reading.kind === 'job' ? [reading.job] : []))
    showExperience(experienceOf(jobs, library))
  }
  let isLed = false
  const follow = async (): Promise<void> => {
    await job.flush()
    const address = readJobAddress(location.hash)
    if (!address) {
      const isPlace = location.hash === '' || document.getElementById(location.hash.slice(1)) !== null
      if (!isPlace) notice.say('This address names no job. Here are the jobs of this device.')
      await showList()
      return
    }
    if (job.id() !== address.id) {
      const reading = await shelf.get(address.id)
      if (reading?.kind !== 'job') {
        notice.say(absentWords(reading))
        await showList()
        return
      }
      experience = await countedExperience(shelf, library, address.id)
      if (!shelf.trouble) notice.clear()
      job.open(reading.job, false)
      notice.kept('kept', reading.job)
    }
    view.show()
    view.showMoment(address.moment)
    showPart(true)
    if (isLed) view.beginMoment()
    isLed = false
  }
  // The browser's own buttons bring a page back as it was scrolled; a press on a link begins at its moment.
  root.addEventListener('click', ({ target }) => {
    isLed =
      target instanceof Element && target.closest('.job-moments a, .job-next, .decide-ways button') !== null
  })
  const begin = async (made: Job): Promise<void> => {
    experience = await countedExperience(shelf, library, made.id)
    job.open(made, true)
    job.set({})
    await job.flush()
    location.hash = writeJobAddress(made.id, 'intake')
    // A browser may ask her first, and gives no answer until she does.
    void askToPersist()
  }
  required(root, '.job-new', HTMLButtonElement).addEventListener('click', () => {
    void begin(newJob(randomId(), Date.now()))
  })
  required(root, '.job-example', HTMLButtonElement).addEventListener('click', () => {
    void shelf.get(exampleId).then((here) => {
      if (here?.kind === 'job') location.hash = writeJobAddress(exampleId, 'intake')
      else void begin(exampleJob(Date.now(), library))
    })
  })
  bindFiles(section, notice, showList)
  bindPrint(root, view.showForPrint)
  bindStayAwake(root)
  required(root, '.job-remove', HTMLButtonElement).addEventListener('click', () => {
    const { id } = job.now()
    const words = `Remove “${jobName(job.now())}” from this device, with its photographs? It can’t be brought back, unless you have saved it as a file.`
    void ask(root, words, { remove: 'Remove it', keep: 'Keep it' }).then(async (answer) => {
      if (answer !== 'remove') return
      job.drop()
      forgetUnkept(id)
      await shelf.remove(id)
      notice.say('The job is removed.')
      location.hash = ''
    })
  })
  // Whoever comes back to the jobs no longer notes into a job.
  setNotedJob(null)
  addEventListener('hashchange', () => void follow())
  addEventListener('visibilitychange', () => void job.flush())
  addEventListener('beforeunload', (event) => {
    if (!job.isWaiting()) return
    void job.flush()
    event.preventDefault()
  })
  await follow()
  if (copied.length > 0) notice.say(copied.join(' '))
  root.setAttribute('data-live', '')
}
