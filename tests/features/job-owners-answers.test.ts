import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { withOwnersAnswers } from '@/features/job/owners-answers.ts'
import { intakeAnswers } from '@/find/intake.ts'
import { type Job, writtenAnswers } from '@/link/job.ts'
import { effectWords } from '@/words/intake.ts'
import { emptySession } from '@/link/session-link.ts'
import { ownersQuestions } from '@/features/job/words.ts'

const session = emptySession(cardLibrary(cardsFolder))
const nothing: Job['intake'] = { plain: null, onset: null, stood: null, opened: null, settings: null }
const answered = (intake: Partial<Job['intake']>, before = session) =>
  withOwnersAnswers(before, { intake: { ...nothing, ...intake } }).intake

test('a job’s intake counts in what its machine may have, but for answers that change nothing', () => {
  expect(answered({})).toEqual([])
  expect(answered({ plain: 'well', opened: 'no', settings: 'unknown' })).toEqual([])
  expect(answered({ stood: 'years', onset: 'sudden' })).toEqual(['stood.yes', 'came.suddenly'])
})

test('every answer that changes something can be given on a job', () => {
  const all = Object.entries(writtenAnswers).flatMap(([question, answers]) =>
    Object.keys(answers).flatMap((answer) => answered({ [question]: answer })),
  )
  expect(all.sort()).toEqual([...intakeAnswers].sort())
})

test('what was answered while looking counts before it', () => {
  const looked = { ...session, intake: ['stood.no'] as const }
  expect(answered({ stood: 'years', plain: 'badly' }, looked)).toEqual(['stood.no', 'plain.badly'])
})

test('a job asks in the words of the page that finds faults, and says what each answer changes', () => {
  const asked = (id: string) => ownersQuestions.find((question) => question.id === id)!
  expect(asked('onset')).toEqual({
    id: 'onset',
    ask: 'Did it come suddenly, or slowly?',
    answers: [
      { written: 'sudden', name: 'Suddenly', changes: effectWords('came.suddenly') },
      { written: 'slow', name: 'Slowly', changes: effectWords('came.slowly') },
    ],
  })
  expect(asked('plain').answers.map(({ name }) => name)).toEqual(['Yes', 'No'])
  expect(asked('plain').answers[0]!.changes).toBe('It changes nothing.')
  expect(asked('settings').answers.map(({ name }) => name)).toEqual(['Yes, all are right', 'No'])
})
