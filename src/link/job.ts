import * as v from 'valibot'
import type { IntakeAnswer } from '../find/intake.ts'
import { readFault } from '../mechanism/read-fault.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { oneLine, quote } from './troubles.ts'

/** The form in which jobs are written now. Forms before it stay readable; a later one is refused in a sentence. */
const jobForm = 2

/** Where a job is, from the door to the door. */
export const jobStates = ['in', 'open', 'waiting', 'proved', 'handed-over', 'for-parts'] as const
export type JobState = (typeof jobStates)[number]

/** What of a job goes into the page for its owner, unless it is kept back. */
export const givenParts = ['done', 'proof', 'word'] as const
export type GivenPart = (typeof givenParts)[number]

/**
 * How a job writes what its owner answered: by question, each answer with what the search for faults calls it, null for
 * one that changes nothing. A question without an answer is written as null.
 */
export const writtenAnswers = {
  plain: { well: null, badly: 'plain.badly' },
  onset: { sudden: 'came.suddenly', slow: 'came.slowly' },
  stood: { years: 'stood.yes', 'in-use': 'stood.no' },
  opened: { yes: 'opened.yes', no: null },
  settings: { checked: 'settings.confirmed', unknown: null },
} as const satisfies Record<string, Readonly<Record<string, IntakeAnswer | null>>>
export type WrittenQuestion = keyof typeof writtenAnswers
type WrittenAnswer<Question extends WrittenQuestion> = keyof (typeof writtenAnswers)[Question] & string

export const writtenQuestions = Object.keys(writtenAnswers) as WrittenQuestion[]

/** The most characters of each text, and the most of each list: a hostile file must not stop a page. */
export const jobLimits = {
  name: 80,
  complaint: 2000,
  session: 20_000,
  note: 600,
  word: 1200,
  repairs: 40,
  photos: 60,
  turnedOut: 60,
  measured: 800,
} as const

const text = (name: string, most: number) =>
  v.pipe(
    v.string(`its “${name}” is no text`),
    v.check((value) => Array.from(value).length <= most, `its “${name}” is longer than ${most} characters`),
  )

const whole = (name: string) =>
  v.pipe(
    v.number(`its “${name}” is no number`),
    v.check(
      (value) => Number.isInteger(value) && value >= 1 && value <= 0xffff_ffff,
      `its “${name}” is no whole number from 1 to 4294967295`,
    ),
  )

const moment = (name: string) =>
  v.pipe(
    v.string(`its “${name}” is no time`),
    v.check(
      (value) => /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/.test(value) && !Number.isNaN(Date.parse(value)),
      `its “${name}” is no time such as 2026-11-30T09:00:00.000Z`,
    ),
  )

const answer = <Question extends WrittenQuestion>(question: Question) =>
  v.nullable(
    v.picklist(
      Object.keys(writtenAnswers[question]) as WrittenAnswer<Question>[],
      `its answer “${question}” is not known here`,
    ),
  )

const listOf = <Item extends v.GenericSchema>(name: string, item: Item, most: number) =>
  v.pipe(
    v.array(item, `its “${name}” is no list`),
    v.check(({ length }) => length <= most, `its “${name}” has more than ${most} entries`),
  )

const isId = (value: string): boolean => /^[a-z][a-z-]{0,30}$/.test(value)

/** A repair of the plan: whether it is done, and what was found at it. */
const repairSchema = v.strictObject(
  {
    id: v.pipe(v.string('a repair has no name'), v.check(isId, 'a repair has a name that is not known here')),
    isDone: v.boolean('a repair is neither done nor not'),
    note: text('note', jobLimits.note),
  },
  'one of its repairs has a part that is missing or not known here',
)

/** A fault by its id. */
const faultSchema = v.pipe(
  v.string('a fault that it turned out to be is no text'),
  v.check(
    (value) => readFault(value, bedLengths.most).kind === 'fault',
    'a fault that it turned out to be is not known here',
  ),
)

/** The fields of the first form, which every later one has, too. */
const firstFields = {
  id: whole('id'),
  made: moment('made'),
  changed: moment('changed'),
  name: text('name', jobLimits.name),
  complaint: text('complaint', jobLimits.complaint),
  state: v.picklist(jobStates, 'its state is not known here'),
  intake: v.strictObject(
    {
      plain: answer('plain'),
      onset: answer('onset'),
      stood: answer('stood'),
      opened: answer('opened'),
      settings: answer('settings'),
    },
    'its answers of the intake are not all there',
  ),
  before: text('before', jobLimits.session),
  repairs: listOf('repairs', repairSchema, jobLimits.repairs),
  after: text('after', jobLimits.session),
  word: text('word', jobLimits.word),
  photos: listOf(
    'photos',
    v.strictObject(
      { id: whole('photo'), words: text('words', jobLimits.note) },
      'one of its pictures has a part that is missing or not known here',
    ),
    jobLimits.photos,
  ),
}

const missingOrStrange = ({ expected, input }: v.StrictObjectIssue): string =>
  expected === 'never'
    ? `it has ${quote(String(input))}, which is not known here`
    : `it has no ${oneLine(expected.replaceAll('"', ''), 40)}`

const formIs = <Form extends number>(number: Form) => v.literal(number, 'its form is not known here')

/** The form of a job, field by field; each message goes on from “The job can’t be opened: …”. */
const jobSchema = v.strictObject(
  {
    form: formIs(jobForm),
    ...firstFields,
    turnedOut: v.nullable(listOf('turnedOut', faultSchema, jobLimits.turnedOut)),
    keptBack: listOf(
      'keptBack',
      v.picklist(givenParts, 'a part that it keeps back is not known here'),
      givenParts.length,
    ),
    measuredBefore: v.optional(text('measuredBefore', jobLimits.measured), ''),
    measuredAfter: v.optional(text('measuredAfter', jobLimits.measured), ''),
  },
  missingOrStrange,
)

/** What the first form has no word for: nobody had said it. */
const unsaid = { turnedOut: null, keptBack: [], measuredBefore: '', measuredAfter: '' } satisfies Partial<
  v.InferOutput<typeof jobSchema>
>

/** A job of the first form, as today's form has it. */
const firstSchema = v.pipe(
  v.strictObject({ form: formIs(1), ...firstFields }, missingOrStrange),
  v.transform((job): Job => ({ ...job, form: jobForm, ...unsaid })),
)

/**
 * One machine's job. `before` and `after` are texts of sessions, as links of the search for faults have them: what was
 * seen when the machine came, and after the work. `turnedOut` is what she confirmed to have been wrong, as ids of faults;
 * null while she has not said. `measuredBefore` and `measuredAfter` are texts of states with what was measured, empty for
 * nothing. `keptBack` is what does not go into the page for its owner. Times are in UTC.
 */
export type Job = v.InferOutput<typeof jobSchema>

/** What came of reading a job. */
export type JobReading =
  | { readonly kind: 'job'; readonly job: Job }
  /** Made by a later version of the site; `name` as far as it can be read. */
  | { readonly kind: 'later'; readonly name: string }
  | { readonly kind: 'unreadable'; readonly reason: string }

const nameIn = (value: object): string =>
  'name' in value && typeof value.name === 'string' ? oneLine(value.name, jobLimits.name) : ''

/** Reads a job from what was kept or written; never throws. `reason` goes on from “It can’t be opened: …”. */
export const readJob = (value: unknown): JobReading => {
  if (typeof value !== 'object' || value === null)
    return { kind: 'unreadable', reason: 'it is not a job of this site' }
  if ('form' in value && typeof value.form === 'number' && value.form > jobForm)
    return { kind: 'later', name: nameIn(value) }
  const schema = 'form' in value && value.form === 1 ? firstSchema : jobSchema
  const { success, output, issues } = v.safeParse(schema, value, { abortEarly: true })
  if (success) return { kind: 'job', job: output }
  return { kind: 'unreadable', reason: issues[0].message }
}

/** A job of a machine that has just come in. `id` is a random whole number, `now` a time in ms since 1970. */
export const newJob = (id: number, now: number, name = ''): Job => {
  const time = new Date(now).toISOString()
  return {
    form: jobForm,
    id,
    made: time,
    changed: time,
    name: Array.from(name).slice(0, jobLimits.name).join(''),
    complaint: '',
    state: 'in',
    intake: { plain: null, onset: null, stood: null, opened: null, settings: null },
    before: '',
    repairs: [],
    after: '',
    word: '',
    photos: [],
    ...unsaid,
  }
}

/** A session's text as a job keeps it; null where it is too long to be kept. */
export const sessionForJob = (session: string): string | null =>
  session.length <= jobLimits.session ? session : null
