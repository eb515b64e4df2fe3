import { element, required, setText } from '../../browser/dom.ts'
import type { Job } from '../../link/job.ts'
import { writeJobAddress } from '../../link/job-address.ts'
import { randomId } from './random-id.ts'
import type { Keeping, Shelf, ShelfTrouble } from './shelf.ts'
import { jobName, timeWords } from './words.ts'

const shelfWords: Readonly<Record<ShelfTrouble, string>> = {
  denied:
    'This browser keeps nothing for this page, as in a private window. Jobs last until the page is closed: save them as a file before that.',
  later:
    'The jobs of this device were kept by a later version of this site, which this page can’t open. They stay as they are; reload the page where the site is newer. What you enter here lasts until the page is closed.',
}

const keepingWords: Readonly<Record<Exclude<Keeping, 'kept'>, string>> = {
  full: 'This device has no room left, so the last changes are on this page only. Save this job as a file before you leave the page.',
  'changed-elsewhere':
    'This job was changed in another window meanwhile, so your last changes are on this page only.',
  refused:
    'The browser would not keep the last changes: they are on this page only. Save this job as a file before you leave the page.',
}

/** What the page says above a job or the list. */
export interface Notice {
  readonly say: (words: string) => void
  readonly clear: () => void
  /** Says what came of keeping a job. */
  readonly kept: (how: Keeping, job: Job) => void
}

/** Makes the notice. */
export const createNotice = (root: HTMLElement, shelf: Shelf): Notice => {
  const place = required(root, '.job-notice', HTMLElement)
  const line = required(root, '.job-kept', HTMLElement)
  let isOfKeeping = false
  const show = (...words: (string | Node)[]): void => {
    place.replaceChildren(...words)
    place.hidden = words.length === 0
    isOfKeeping = false
  }
  const copyButton = (job: Job): HTMLElement => {
    const button = element('button', { type: 'button' }, ['Keep mine as a copy'])
    button.addEventListener('click', () => {
      const id = randomId()
      void shelf.keep({ ...job, id, name: `${jobName(job)} (copy)`, photos: [] }, null).then(() => {
        location.hash = writeJobAddress(id, 'intake')
      })
    })
    return button
  }
  if (shelf.trouble) show(shelfWords[shelf.trouble])
  return {
    say: (words) => {
      show(words)
    },
    clear: () => {
      show()
    },
    kept: (how, job) => {
      if (how === 'kept') {
        setText(line, `Kept on this device, ${timeWords(job.changed)}.`)
        if (isOfKeeping) show()
        return
      }
      setText(line, 'Not kept.')
      show(keepingWords[how], ...(how === 'changed-elsewhere' ? [' ', copyButton(job)] : []))
      isOfKeeping = true
    },
  }
}
