import { dataOf, element, required, tell } from '../../browser/dom.ts'
import { takeInHand } from '../../browser/job-in-hand.ts'
import type { Answer, WorkerMessage } from '../../find/messages.ts'
import { emptySession, readSession, writeSession } from '../../link/session-link.ts'
import type { Session } from '../../link/session.ts'
import { answerTitle, confidence, percent } from '../../words/finding.ts'
import { createClient, passLine, queryOf } from '../find/index.ts'
import { withOwnersAnswers } from './owners-answers.ts'
import type { Section } from './section.ts'

/** What the search for faults says of the job's machine as it was seen. */
export interface Seen {
  readonly session: Session
  readonly answers: readonly Answer[]
}

/** The moment of looking: what was seen, and what it may be. Returns what shows it again; `hear` gets each new answer. */
export const createLook = (section: Section, hear: (seen: Seen) => void): (() => void) => {
  const { root, job, library } = section
  const base = dataOf(root, 'base')
  const whole = required(root, '.look-whole', HTMLElement)
  const remarks = required(root, '.look-remarks', HTMLElement)
  const places = required(root, '.look-places', HTMLElement)
  const passes = required(root, '.look-passes', HTMLElement)
  const note = required(root, '.look-note', HTMLAnchorElement)
  const titles = JSON.parse(dataOf(passes, 'titles')) as Readonly<Record<string, string>>
  const titleOf = (id: string): string => titles[id] ?? id
  let asked: string | null = null
  let session = emptySession(library)
  const showAnswers = ({
    answers,
    whole: sentence,
    remarks: more,
  }: WorkerMessage & { kind: 'ranked' }): void => {
    tell(whole, sentence)
    remarks.replaceChildren(...more.map((words) => element('p', { class: 'small' }, [words])))
    places.replaceChildren(
      ...answers
        .filter(({ kind }) => kind !== 'sound')
        .map((answer) =>
          element('li', {}, [
            element('b', {}, [answerTitle(answer)]),
            ` ${confidence(answer.probability)}, ${percent(answer.probability)}`,
          ]),
        ),
    )
    hear({ session, answers })
  }
  const client = createClient(
    (message) => {
      if (message.kind === 'ranked') showAnswers(message)
    },
    () => {
      tell(whole, 'This browser can’t work out here what it may be. What you noted is kept all the same.')
    },
  )
  note.addEventListener('click', () => {
    takeInHand({ id: job.now().id, part: 'before' })
  })
  return () => {
    const { before, intake } = job.now()
    const key = JSON.stringify([before, intake])
    if (key === asked) return
    asked = key
    const reading = readSession(before, library)
    session = reading.session
    const isLooked = before !== '' && writeSession(session, library) !== ''
    note.href = `${base}/find/`
    passes.replaceChildren(
      ...(isLooked
        ? [
            element('span', {}, ['Seen so far:']),
            element(
              'ul',
              {},
              session.passes.map((pass) => element('li', {}, [passLine(pass, titleOf)])),
            ),
          ]
        : ['Nothing has been looked at yet.']),
      ...reading.troubles.map(({ sentence }) => element('p', {}, [sentence])),
    )
    client.infer(queryOf(withOwnersAnswers(session, job.now()), library))
  }
}
