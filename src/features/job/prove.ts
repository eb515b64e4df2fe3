import { element, required, setText } from '../../browser/dom.ts'
import { setNotedJob } from '../../browser/noted-job.ts'
import type { RequestedCard } from '../../find/check-outcomes.ts'
import { type Place, placeOfFault } from '../../find/place.ts'
import type { ProofPasses } from '../../find/prove.ts'
import { repairOfKind } from '../../find/repairs.ts'
import { readSession } from '../../link/session-link.ts'
import { faultPhrase } from '../../words/faults.ts'
import { passPhrase } from '../../words/finding.ts'
import { counted } from '../../words/lists.ts'
import { queryOf } from '../find/index.ts'
import { askForLatest } from './latest-answer.ts'
import { createBeforeAndAfter } from './before-and-after.ts'
import type { JobClient } from './client.ts'
import type { Seen } from './look.ts'
import { type ProofNote, proofNotes } from './proof-notes.ts'
import type { Section } from './section.ts'
import { askForProof, type Proved, statementWords } from './statement.ts'
import { placeOnly } from '../../find/view.ts'

const cardWords: Readonly<Record<RequestedCard, string>> = {
  same: '',
  none: '',
  'all-holes': ', a card of all holes',
  blank: ', a blank card',
}

/** The places that were worked on: those at which what was done may have mended something. */
const workedOn = ({ job }: Section, seen: Seen | null): Place[] => {
  const done = new Set<string>(job.now().repairs.flatMap(({ id, isDone }) => (isDone ? [id] : [])))
  const faults = (seen?.answers ?? []).flatMap(({ ways }) => ways.flat())
  return [...new Set(faults.filter(({ kind }) => done.has(repairOfKind(kind))).map(placeOfFault))]
}

const leadWords = ({ passes, atLeast, hidden }: ProofPasses): string =>
  [
    `After the work, make ${passes.length} ${passes.length === 1 ? 'pass' : 'passes'} and look at every needle.`,
    'They would show it if anything that was worked on, or any single fault that can be seen from outside, were still there.',
    atLeast === passes.length ? 'No fewer would do.' : `At least ${atLeast} are needed.`,
    ...(hidden.length === 0
      ? []
      : [`${counted(hidden.length, 'fault')} can’t be seen for sure in any of them.`]),
  ].join(' ')

const unshownWords = {
  'from-outside': 'not to be seen from outside',
  'in-these': 'only in other passes',
} as const

/** The passes, each with what was noted of it; `mark` goes on to the page where needles are marked. */
const createPasses = (root: HTMLElement, mark: () => void): ((notes: readonly ProofNote[]) => void) => {
  const list = required(root, '.prove-passes', HTMLElement)
  const button = (label: string, name: string, isOn: boolean, act: () => void): HTMLElement => {
    const made = element('button', { type: 'button', 'aria-pressed': String(isOn), 'aria-label': name }, [
      label,
    ])
    made.addEventListener('click', act)
    return made
  }
  const itemOf = ({ requested, isAgain, noted, toggleRight, begin }: ProofNote): HTMLElement => {
    const { row, way, speed, card } = requested
    const phrase = `${passPhrase(row, way, speed)}${cardWords[card]}${isAgain ? ', once more' : ''}`
    return element('li', {}, [
      element('span', {}, [phrase]),
      element('span', { class: 'job-choices' }, [
        button('Every needle right', `${phrase}: every needle right`, noted === 'right', toggleRight),
        button('Some are wrong …', `${phrase}: some are wrong; mark them`, noted === 'wrong', () => {
          begin()
          mark()
        }),
      ]),
    ])
  }
  return (notes) => {
    const buttons = (): HTMLElement[] => [...list.querySelectorAll('button')]
    const focused = buttons().findIndex((one) => one === document.activeElement)
    list.replaceChildren(...notes.map(itemOf))
    buttons()[focused]?.focus()
  }
}

/** What the passes noted prove. */
const createStatement = (root: HTMLElement): ((proved: Proved) => void) => {
  const said = required(root, '.prove-statement', HTMLElement)
  const unshown = required(root, '.prove-unshown', HTMLElement)
  return ({ statement, session }) => {
    unshown.hidden = !statement || statement.unshown.length === 0 || statement.wrong.length > 0
    setText(
      said,
      statement ? statementWords(statement, session) : 'Nothing has been looked at after the work yet.',
    )
    if (!statement) return
    setText(
      required(unshown, 'summary', HTMLElement),
      `${counted(statement.unshown.length, 'single fault')} that would not have shown`,
    )
    required(unshown, 'ul', HTMLElement).replaceChildren(
      ...statement.unshown.map(({ fault, why }) =>
        element('li', {}, [`${faultPhrase(fault)}: ${unshownWords[why]}.`]),
      ),
    )
  }
}

/** The moment of proving: the passes to make after the work, and what they prove. Returns what shows it again. */
export const createProve = (section: Section, client: JobClient): ((seen: Seen | null) => void) => {
  const { root, job, library } = section
  const lead = required(root, '.prove-lead', HTMLElement)
  const note = required(root, '.prove-note', HTMLAnchorElement)
  const toFind = (): void => {
    setNotedJob({ id: job.now().id, part: 'after' })
  }
  const showPasses = createPasses(root, () => {
    toFind()
    void job.flush().then(() => {
      location.assign(note.href)
    })
  })
  const showStatement = createStatement(root)
  const showBeforeAndAfter = createBeforeAndAfter(section)
  let proof: ProofPasses | null = null
  note.addEventListener('click', toFind)
  const update = (): void => {
    if (!proof) return
    setText(lead, leadWords(proof))
    showPasses(proofNotes(section, proof.passes))
  }
  const passesOnce = askForLatest<ProofPasses>({
    begin: () => {
      setText(lead, 'Working it out …')
    },
    show: (found) => {
      proof = found
      update()
    },
    fail: () => {
      setText(lead, 'This browser can’t work out here which passes would prove it.')
    },
  })
  const statementOnce = askForLatest<Proved>({
    begin: () => {
      setText(required(root, '.prove-statement', HTMLElement), 'Working it out …')
    },
    show: showStatement,
    fail: () => {
      setText(lead, 'This browser can’t work out here what that proves.')
    },
  })
  const askForPasses = (seen: Seen | null): void => {
    const { session } = readSession(job.now().before, library)
    const { card } = queryOf(session, library)
    const question = { card, ...placeOnly(session), worked: workedOn(section, seen) }
    passesOnce(question, () => client.ask('prove', question))
  }
  return (seen) => {
    const { after } = job.now()
    note.hidden = after === ''
    showBeforeAndAfter()
    update()
    askForPasses(seen)
    statementOnce(after, () => askForProof(client, after, library))
  }
}
