import { type IntakeAnswer, settledAnswers } from '../../find/intake.ts'
import type { IntakeQuestion, Job } from '../../link/job.ts'
import type { Session } from '../../link/session.ts'

/** The answers of a job's intake that change what is likely, as the search for faults knows them. */
const known: Readonly<Record<IntakeQuestion, Partial<Readonly<Record<string, IntakeAnswer>>>>> = {
  plain: { badly: 'plain.badly' },
  onset: { sudden: 'came.suddenly', slow: 'came.slowly' },
  stood: { years: 'stood.yes', 'in-use': 'stood.no' },
  opened: { yes: 'opened.yes' },
  settings: { checked: 'settings.confirmed' },
}

/** What was seen of a job's machine with what its owner said; what was answered while looking stands before it. */
export const withTold = (session: Session, { intake }: Pick<Job, 'intake'>): Session => {
  const told = (Object.keys(known) as IntakeQuestion[]).flatMap((question) => {
    const answer = intake[question]
    return answer === null ? [] : (known[question][answer] ?? [])
  })
  return { ...session, intake: settledAnswers([...told, ...session.intake]) }
}
