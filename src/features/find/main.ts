import { at } from '../../mechanism/lookup.ts'
import { isPractised } from '../../link/session.ts'
import { emptySession, writeSession } from '../../link/session-link.ts'
import type { Trouble } from '../../link/troubles.ts'
import { notedJob } from '../../browser/noted-job.ts'
import { countsExperience } from '../../browser/own-experience.ts'
import { copyLink } from '../../browser/share.ts'
import { element, required } from '../../browser/dom.ts'
import { libraryOf } from '../../browser/library.ts'
import { addressedSession, followSession } from './address.ts'
import { createAnswers } from './answers.ts'
import { bindBed } from './bed-input.ts'
import { createClient } from './client.ts'
import type { Experience } from '../../find/experience.ts'
import type { Unexplained } from '../../find/finding.ts'
import type { Answer, WorkerMessage } from '../../find/messages.ts'
import { createNextCheck } from './next-check.ts'
import { bindIntake } from './intake.ts'
import { bindPasses } from './passes.ts'
import type { createFinding } from './finding.ts'
import type { createLookAgain } from './look-again.ts'
import type { PracticeView } from './practice-view.ts'
import { queryOf, withMachine, withNumbers } from './session-query.ts'
import { bindStarts } from './bind-starts.ts'
import { createFindStore } from './store.ts'

const bindLink = (root: HTMLElement, link: () => string): void => {
  const text = required(root, '.find-link', HTMLInputElement)
  const said = required(root, '.link-said', HTMLElement)
  required(root, '.find-copy', HTMLButtonElement).addEventListener('click', () => {
    copyLink(text, link(), 'The link to all of this is copied.', (words) => {
      said.textContent = words
    })
  })
}

const workerWords =
  'This browser can’t work the answers out here. What you marked is kept in the link: open it in another browser.'

/** Brings the page to life: what was seen, what it may be, what to check next, and the finding. */
export const startFind = (root: HTMLElement): void => {
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const { session, troubles } = addressedSession(library)
  const store = createFindStore(session, library, (now) => withMachine(withNumbers(now, library), library))
  const notice = required(root, '.find-notice', HTMLElement)
  const tellTroubles = (some: readonly Pick<Trouble, 'sentence'>[]): void => {
    notice.replaceChildren(...some.map(({ sentence }) => element('p', {}, [sentence])))
    notice.hidden = some.length === 0
  }
  tellTroubles(troubles)
  bindPasses(root, store)
  const bed = bindBed(root, store)
  bindStarts(root, store)
  bindIntake(root, store)
  // Which settings to rule out first can be said only once a needle is marked wrong.
  let settingsFirst: Promise<void> | null = null
  store.subscribe(({ session }) => {
    if (session.passes.some(({ marks }) => marks.includes('w')))
      settingsFirst ??= import('./settings-first.ts').then(({ bindSettingsFirst }) => {
        bindSettingsFirst(root, store)
      })
  })
  followSession(store, tellTroubles)
  let answers: readonly Answer[] = []
  let said: { whole: string; remarks: readonly string[] } = { whole: '', remarks: [] }
  // What is kept as the finding has its script fetched once there is something to keep.
  let showFinding: ReturnType<typeof createFinding> | null = null
  const startFinding = async (): Promise<void> => {
    const { createFinding } = await import('./finding.ts')
    showFinding ??= createFinding(root, store)
    showFinding(answers)
  }
  const showAnswers = createAnswers(
    root,
    store,
    (finding) => {
      store.set({ finding })
      void startFinding().then(() => {
        required(root, '.finding-title', HTMLElement).focus()
      })
    },
    bed.pointAt,
  )
  const showNext = createNextCheck(root, store)
  let lookAgain: ReturnType<typeof createLookAgain> | null = null
  const showLookAgain = async (unexplained: readonly Unexplained[]): Promise<void> => {
    const isNeeded = unexplained.length > 0
    // What to check next depends on it, and comes before its script.
    required(root, '.again', HTMLElement).hidden = !isNeeded
    if (!isNeeded) return
    const { createLookAgain } = await import('./look-again.ts')
    lookAgain ??= createLookAgain(root, store, bed.pointAt)
    lookAgain(unexplained)
  }
  // It comes only when somebody practises.
  let practice: PracticeView | null = null
  const shown = required(root, '.finding-shown', HTMLElement)
  const hear = (message: WorkerMessage): void => {
    if (message.kind === 'ranked' || message.kind === 'next')
      root.dataset['ms'] = String(Math.round(message.ms))
    switch (message.kind) {
      case 'course':
        practice?.showCourse(message)
        break
      case 'ranked':
        answers = message.answers
        said = message
        showAnswers(answers, said.whole, said.remarks)
        void showLookAgain(message.unexplained)
        showFinding?.(answers)
        practice?.showAnswers(answers)
        break
      case 'next':
        showNext(message.looks)
        break
      case 'shown':
        shown.replaceChildren(...message.sentences.map((sentence) => element('p', {}, [sentence])))
        shown.hidden = false
    }
  }
  const client = createClient(hear, () => {
    tellTroubles([{ sentence: workerWords }])
  })
  // Machines to practise on are dealt by common practice, so that her own experience would mislead there.
  let experience: Experience | null = null
  const infer = (): void => {
    const { session: now } = store.now()
    const query = queryOf(now, library)
    client.infer(experience && !isPractised(now) ? { ...query, experience } : query)
  }
  const startPractice = async (): Promise<PracticeView> => {
    const { createPractice } = await import('./practice-view.ts')
    practice ??= createPractice(root, store, (machine) => {
      const { columnOne } = store.now().session
      const [first] = queryOf({ ...emptySession(library), columnOne }, library).passes
      if (first) client.course({ machine, first, columnOne })
    })
    practice.showAnswers(answers)
    return practice
  }
  // Until its script is there, an answer leads nowhere.
  required(root, '.practice form', HTMLFormElement).addEventListener('submit', (event) => {
    event.preventDefault()
  })
  for (const button of root.querySelectorAll<HTMLButtonElement>('.practise'))
    button.addEventListener('click', () => {
      void startPractice().then((view) => {
        view.begin()
      })
    })
  store.subscribe(({ session: now }, before) => {
    if (!showFinding && now.finding) void startFinding()
    if (!practice && isPractised(now)) {
      // What the machine is stays hidden from the first.
      root.setAttribute('data-hides', '')
      void startPractice()
    }
    const isSame =
      before &&
      before.session.passes === now.passes &&
      before.session.checked === now.checked &&
      before.session.intake === now.intake &&
      before.session.columnOne === now.columnOne &&
      before.session.own === now.own &&
      before.session.isRough === now.isRough
    if (!isSame) infer()
    // Each answer says which needles of the current pass speak for it.
    showAnswers(answers, said.whole, said.remarks)
  })
  bindLink(root, () => {
    const text = writeSession(store.now().session, library)
    return `${at(location.href.split(/[?#]/), 0)}#${text}`
  })
  if (countsExperience())
    void import('./experience.ts').then(async ({ loadExperience }) => {
      experience = await loadExperience(root, library)
      if (experience) infer()
    })
  // Jobs come only where one is begun, or goes on.
  if (notedJob()) void import('./job-notes.ts').then(({ resumeJob }) => resumeJob(root, store))
  required(root, '.find-keep', HTMLButtonElement).addEventListener('click', () => {
    void import('./job-notes.ts').then(({ keepAsJob }) => {
      keepAsJob(root, store)
    })
  })
  required(root, '.find-clear', HTMLButtonElement).addEventListener('click', () => {
    store.set(emptySession(library), 0)
  })
  root.setAttribute('data-live', '')
}
