import { findsOf } from '../../find/experience.ts'
import type { Query } from '../../find/query.ts'
import type { Session } from '../../link/session.ts'
import { queryOf } from '../find/index.ts'
import { withOwnersAnswers } from './owners-answers.ts'
import type { Section } from './section.ts'

/** What is known of a job's machine: what was seen, what its owner answered, and what she found at other machines. */
export const jobQuery = ({ job, library, experience }: Section, session: Session): Query => {
  const query = queryOf(withOwnersAnswers(session, job.now()), library)
  const seen = experience()
  return findsOf(seen) === 0 ? query : { ...query, experience: seen }
}
