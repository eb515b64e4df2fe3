import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { withTold } from '@/features/job/told.ts'
import { intakeAnswers as known } from '@/find/intake.ts'
import { intakeAnswers as asked, type Job } from '@/link/job.ts'
import { emptySession } from '@/link/session-link.ts'

const session = emptySession(cardLibrary(cardsFolder))
const nothing: Job['intake'] = { plain: null, onset: null, stood: null, opened: null, settings: null }
const told = (intake: Partial<Job['intake']>, before = session) =>
  withTold(before, { intake: { ...nothing, ...intake } }).intake

test('a job’s intake counts in what its machine may have, but for answers that change nothing', () => {
  expect(told({})).toEqual([])
  expect(told({ plain: 'well', opened: 'no', settings: 'unknown' })).toEqual([])
  expect(told({ stood: 'years', onset: 'sudden' })).toEqual(['stood.yes', 'came.suddenly'])
})

test('every answer that changes something can be given on a job', () => {
  const all = Object.entries(asked).flatMap(([question, answers]) =>
    answers.flatMap((answer) => told({ [question]: answer })),
  )
  expect(all.sort()).toEqual([...known].sort())
})

test('what was answered while looking stands before it', () => {
  const looked = { ...session, intake: ['stood.no'] as const }
  expect(told({ stood: 'years', plain: 'badly' }, looked)).toEqual(['stood.no', 'plain.badly'])
})
