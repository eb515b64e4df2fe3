import { dataOf, element, required, setText } from '../../browser/dom.ts'
import { setNotedJob } from '../../browser/noted-job.ts'
import { findsOf } from '../../find/experience.ts'
import type { Answer, WorkerMessage } from '../../find/messages.ts'
import type { NextLook } from '../../find/next.ts'
import { emptySession, readSession, writeSession } from '../../link/session-link.ts'
import type { Session } from '../../link/session.ts'
import { effortWords, nextWords } from '../../words/checks.ts'
import { answerTitle, confidence, percent } from '../../words/finding.ts'
import { counted } from '../../words/lists.ts'
import { checkedLines, createClient } from '../find/index.ts'
import { jobQuery } from './job-query.ts'
import type { Section } from './section.ts'

/** What the search for faults says of the job's machine as it was seen. */
export interface Seen {
  readonly session: Session
  readonly answers: readonly Answer[]
}

/** The moment of looking: what was seen, and what it may be. Returns what shows it again; `hear` gets each new answer. */
export const createLook = (section: Section, hear: (seen: Seen) => void): (() => void) => {
  const { root, job, library, experience } = section
  const base = dataOf(root, 'base')
  const whole = required(root, '.look-whole', HTMLElement)
  const remarks = required(root, '.look-remarks', HTMLElement)
  const places = required(root, '.look-places', HTMLElement)
  const passes = required(root, '.look-passes', HTMLElement)
  const experienced = required(root, '.look-experience', HTMLElement)
  const next = required(root, '.look-next', HTMLElement)
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
    setText(whole, sentence)
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
  const showNext = ([first]: readonly NextLook[]): void => {
    setText(
      next,
      first
        ? `${nextWords(first)} It takes ${effortWords(first)}.`
        : 'No check is left that would tell more: decide what to do.',
    )
  }
  const client = createClient(
    (message) => {
      if (message.kind === 'ranked') showAnswers(message)
      if (message.kind === 'next') showNext(message.looks)
    },
    () => {
      setText(whole, 'This browser can’t work out here what it may be. What you noted is kept all the same.')
    },
  )
  note.addEventListener('click', () => {
    setNotedJob({ id: job.now().id, part: 'before' })
  })
  return () => {
    const { before, intake } = job.now()
    const key = JSON.stringify([before, intake, section.experience()])
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
              checkedLines(session, titleOf).map((line) => element('li', {}, [line])),
            ),
          ]
        : ['Nothing has been looked at yet.']),
      ...reading.troubles.map(({ sentence }) => element('p', {}, [sentence])),
    )
    const finds = findsOf(experience())
    setText(
      experienced,
      finds === 0 ? '' : `What you found at other machines counts beforehand: ${counted(finds, 'find')}.`,
    )
    client.infer(jobQuery(section, session))
  }
}
