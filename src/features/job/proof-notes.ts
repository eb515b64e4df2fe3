import type { RequestedCard, RequestedPass } from '../../find/check-outcomes.ts'
import { allRightOf } from '../../link/bed-marks.ts'
import { emptySession, readSession, writeSession } from '../../link/session-link.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import type { CardChoice } from '../../link/state.ts'
import type { Section } from './section.ts'
import { dimensionsOf } from '../../mechanism/own.ts'

const cardOf = (kind: RequestedCard, { passes }: Session): CardChoice => {
  if (kind === 'none') return { kind: 'none' }
  return kind === 'same' ? (passes[0]?.card ?? { kind: 'none' }) : { kind: 'site', id: kind }
}

const keyOf = ({ card, row, way, speed }: SeenPass): string => JSON.stringify([card, row, way, speed])

/** One of the passes that are asked for, and what was noted of it. */
export interface ProofNote {
  readonly requested: RequestedPass
  /** Whether the same pass was asked for before: what goes by chance may show the second time. */
  readonly isAgain: boolean
  readonly noted: 'not yet' | 'right' | 'wrong'
  /** Notes that every needle came out right, or takes that back. */
  readonly toggleRight: () => void
  /** Notes it, as right until its needles are marked. */
  readonly begin: () => void
}

/** What was noted after the work of each pass that is asked for. The same pass asked for twice is two. */
export const proofNotes = ({ job, library }: Section, requested: readonly RequestedPass[]): ProofNote[] => {
  const before = readSession(job.now().before, library).session
  const { after } = job.now()
  const passes = after === '' ? [] : readSession(after, library).session.passes
  const write = (changed: readonly SeenPass[]): void => {
    const session = {
      ...emptySession(library),
      columnOne: before.columnOne,
      own: before.own,
      passes: changed,
    }
    job.set({ after: changed.length === 0 ? '' : writeSession(session, library) })
  }
  const taken = new Set<number>()
  const seen = new Set<string>()
  return requested.map((one): ProofNote => {
    const { row, way, speed } = one
    const pass: SeenPass = {
      card: cardOf(one.card, before),
      row,
      way,
      speed,
      pass: null,
      marks: allRightOf(dimensionsOf(before.own).needles),
    }
    const n = passes.findIndex((other, place) => !taken.has(place) && keyOf(other) === keyOf(pass))
    if (n >= 0) taken.add(n)
    const found = passes[n]
    const isAgain = seen.has(keyOf(pass))
    seen.add(keyOf(pass))
    const isRight = found?.marks.every((mark) => mark === 'r') ?? false
    return {
      requested: one,
      isAgain,
      noted: found === undefined ? 'not yet' : isRight ? 'right' : 'wrong',
      toggleRight: () => {
        if (found === undefined) write([...passes, pass])
        else write(isRight ? passes.toSpliced(n, 1) : passes.with(n, pass))
      },
      begin: () => {
        if (found === undefined) write([...passes, pass])
      },
    }
  })
}
