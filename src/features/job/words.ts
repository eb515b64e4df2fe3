import type { IntakeAnswer } from '../../find/intake.ts'
import {
  type Job,
  type JobState,
  writtenAnswers,
  type WrittenQuestion,
  writtenQuestions,
} from '../../link/job.ts'
import type { JobMoment } from '../../link/job-address.ts'
import { effectWords, intakeQuestions } from '../../words/intake.ts'
import { capital } from '../../words/parts.ts'

/** Where a job is, in words. */
export const jobStateWords: Readonly<Record<JobState, string>> = {
  in: 'Come in',
  open: 'On the bench',
  waiting: 'Waiting for a part',
  proved: 'Proved',
  'handed-over': 'Handed over',
  'for-parts': 'Kept for parts',
}

/** What one does with a machine, from the door to the door. */
export const jobMomentWords: Readonly<Record<JobMoment, string>> = {
  intake: 'Intake',
  look: 'Look',
  decide: 'Decide',
  work: 'Work',
  measure: 'Measure',
  prove: 'Prove',
  'hand-over': 'Hand over',
}

/** A question to the owner as a job has it: in words, and each of its answers with what it changes. */
interface QuestionWords {
  readonly id: WrittenQuestion
  readonly ask: string
  readonly answers: readonly { readonly written: string; readonly name: string; readonly changes: string }[]
}

const questionWords = (id: WrittenQuestion): QuestionWords => {
  const answers: [string, IntakeAnswer | null][] = Object.entries(writtenAnswers[id])
  const question = intakeQuestions.find((one) =>
    one.answers.some(({ value }) => answers.some(([, known]) => known === value)),
  )
  if (!question) throw new Error(`nobody asks for ${id}`)
  return {
    id,
    ask: question.ask,
    answers: answers.map(([written, known]) => ({
      written,
      name: capital(
        question.answers.find(({ value }) => value === known)?.name ?? question.otherwise ?? written,
      ),
      changes: known === null ? 'It changes nothing.' : effectWords(known),
    })),
  }
}

/** What the owner is asked, in the order in which a job writes it. */
export const ownersQuestions: readonly QuestionWords[] = writtenQuestions.map(questionWords)

/** A job's name in a list and as a heading. */
export const jobName = ({ name }: Pick<Job, 'name'>): string =>
  name.trim() === '' ? 'A machine without a name' : name.trim()

// Made once: making it takes longer than all that a list of jobs says by it.
const timeFormat = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
})

/** When something was, as a reader of the page says it: 30 November 2026, 09:12. */
export const timeWords = (time: string): string => timeFormat.format(new Date(time))
