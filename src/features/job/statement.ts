import { readSession } from '../../link/session-link.ts'
import type { CardLibrary } from '../../link/state.ts'
import { queryOf } from '../find/index.ts'
import type { JobClient } from './client.ts'
import type { Statement } from '../../find/statement.ts'
import type { Session } from '../../link/session.ts'
import { provedWords } from '../../words/case.ts'
import { passPhrase } from '../../words/finding.ts'
import { needlesListed } from '../../words/lists.ts'

const wrongWords = ({ wrong }: Statement, session: Session): string =>
  session.passes
    .flatMap(({ row, way, speed }, n) => {
      const needles = wrong.filter(({ pass }) => pass === n).map(({ needle }) => needle)
      return needles.length === 0 ? [] : [`${passPhrase(row, way, speed)}: ${needlesListed(needles)}`]
    })
    .join('; ')

/** The statement in words: what would have shown, and what would not. */
export const statementWords = (statement: Statement, session: Session): string => {
  const { faults, shown, unshown, wrong } = statement
  if (wrong.length > 0)
    return `Not yet: not every needle came out right. ${wrongWords(statement, session)}. Go back to “Look” with what you see now.`
  const outside = unshown.filter(({ why }) => why === 'from-outside').length
  const here = unshown.length - outside
  return [
    provedWords(faults, shown),
    ...(here > 0 ? [`${here} would show only in passes that were not looked at.`] : []),
    ...(outside > 0 ? [`${outside} can’t be seen from outside.`] : []),
  ].join(' ')
}

/** What passes after the work prove; no statement where there are none. */
export interface Proved {
  readonly statement: Statement | null
  readonly session: Session
}

/** Asks what the passes noted after the work prove. */
export const askForProof = async (
  { ask }: Pick<JobClient, 'ask'>,
  after: string,
  library: CardLibrary,
): Promise<Proved> => {
  const { session } = readSession(after, library)
  return { session, statement: after === '' ? null : await ask('state', queryOf(session, library)) }
}
