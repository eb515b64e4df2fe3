import { type IntakeAnswer, settledAnswers } from '../../find/intake.ts'
import { type Job, writtenAnswers, writtenQuestions } from '../../link/job.ts'
import type { Session } from '../../link/session.ts'

/** What was seen of a job's machine with what its owner answered; an answer given while looking counts before it. */
export const withOwnersAnswers = (session: Session, { intake }: Pick<Job, 'intake'>): Session => {
  const known = writtenQuestions.flatMap((question) => {
    const answers: Readonly<Record<string, IntakeAnswer | null>> = writtenAnswers[question]
    return answers[intake[question] ?? ''] ?? []
  })
  return { ...session, intake: settledAnswers([...known, ...session.intake]) }
}
