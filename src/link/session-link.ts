import { type Fault, faultId } from '../mechanism/fault.ts'
import { sortedFaults } from '../mechanism/fault-list.ts'
import { readFault } from '../mechanism/read-fault.ts'
import { readNumber } from '../mechanism/number.ts'
import { dimensionsOf, nothingOwn, type Own } from '../mechanism/own.ts'
import { levels } from '../find/deal-machine.ts'
import { type IntakeAnswer, isIntakeAnswer, questionOf, settledAnswers } from '../find/intake.ts'
import { readTable, type Row, type SayStrangers, type Table, writeTable } from './codec.ts'
import { cardPlaceRow } from './card-place-row.ts'
import { sayUnreadableFault } from './faults-row.ts'
import { ownRow } from './own-row.ts'
import { type Checked, isPractised, type Session, sessionLimits } from './session.ts'
import { passesRow } from './session-passes.ts'
import { type CardLibrary, limits } from './state.ts'
import { quote, type Trouble, type Troubles } from './troubles.ts'

const sayUnknown = (key: string, value: string, troubles: Troubles): void => {
  troubles.leftOut(
    'unknown key',
    `This page doesn't know ${quote(`${key}=${value}`)}.`,
    ', so it is left out.',
  )
}

const readFaultOf = (id: string, needles: number, troubles: Troubles): Fault | null => {
  const reading = readFault(id, needles)
  if (reading.kind === 'fault') return reading.fault
  sayUnreadableFault(id, reading.reason, troubles)
  return null
}

const isSeed = (value: number | null): value is number =>
  value !== null && Number.isInteger(value) && value >= limits.seed[0] && value <= limits.seed[1]

/** Reads `CHECK` or `CHECK.FAULT`; null where the fault can't be read. */
const readCheck = (
  check: string,
  found: string | null,
  needles: number,
  troubles: Troubles,
): Checked | null => {
  if (found === null) return { check, found }
  const fault = readFaultOf(found, needles, troubles)
  return fault && { check, found: fault }
}

/** The row of a machine to practise on: its seed. */
const seedRow = (key: 'practice' | 'deal'): Table<Session>['practice'] => ({
  keys: [key],
  isList: true,
  usual: () => null,
  parse(pairs, { usual, troubles }) {
    let seed = usual
    for (const [, text] of pairs) {
      const value = readNumber(text)
      if (isSeed(value)) seed = value
      else
        troubles.leftOut(
          key,
          text.trim() === ''
            ? 'The link has a machine to practise on without its number.'
            : `The machine ${quote(text)} to practise on is not known.`,
          ', so it is left out.',
        )
    }
    return seed
  },
  write: (seed) => (seed === null ? [] : [[key, String(seed)]]),
})

/** The row of what was measured of a machine; one to practise on is the training machine. */
const ownOfSession: Row<Own, Session> = {
  ...ownRow,
  parse(pairs, reading) {
    if (!isPractised({ practice: reading.others('practice'), deal: reading.others('deal') }))
      return ownRow.parse(pairs, reading)
    reading.troubles.leftOut(
      'own practice',
      'A machine to practise on is the training machine.',
      ', so the measured values are left out.',
    )
    return nothingOwn
  },
}

/** The table of a session's link: every key, in its canonical order. */
const sessionTable: Table<Session> = {
  practice: seedRow('practice'),
  deal: seedRow('deal'),

  level: {
    keys: ['level'],
    isList: true,
    usual: () => 1,
    parse(pairs, { usual, troubles }) {
      let level = usual
      for (const [, text] of pairs) {
        const value = levels.find((one) => String(one) === text)
        if (value) level = value
        else
          troubles.leftOut('level', `There is no level ${quote(text)} of practice.`, ', so it is left out.')
      }
      return level
    },
    write: (level) => (level === 1 ? [] : [['level', String(level)]]),
  },

  isRough: {
    keys: ['marks'],
    isList: true,
    usual: () => false,
    parse(pairs, { troubles }) {
      for (const [key, text] of pairs) if (text !== 'rough') sayUnknown(key, text, troubles)
      return pairs.some(([, text]) => text === 'rough')
    },
    write: (isRough) => (isRough ? [['marks', 'rough']] : []),
  },

  columnOne: cardPlaceRow((others) => dimensionsOf(others('own')).needles),
  own: ownOfSession,
  passes: passesRow,

  checked: {
    keys: ['check'],
    isList: true,
    usual: () => [],
    parse(pairs, { others, troubles }) {
      const { needles } = dimensionsOf(others('own'))
      const checked: Checked[] = []
      for (const [, text] of pairs) {
        const [check = '', ...rest] = text.split('.')
        if (!/^[a-z-]{1,20}$/.test(check)) {
          troubles.leftOut(
            'unknown check',
            text.trim() === ''
              ? 'The link has a check without a name.'
              : `The check ${quote(text)} is not known.`,
            ', so it is left out.',
          )
          continue
        }
        if (checked.length === sessionLimits.checks) {
          troubles.leftOut(
            'too many checks',
            `The link has more than ${sessionLimits.checks} checks.`,
            `; ${quote(text)} is left out.`,
          )
          continue
        }
        const read = readCheck(check, rest.length === 0 ? null : rest.join('.'), needles, troubles)
        if (read) checked.push(read)
      }
      return checked
    },
    write: (checked) =>
      checked.map(({ check, found }) => ['check', found ? `${check}.${faultId(found)}` : check]),
  },

  intake: {
    keys: ['asked'],
    isList: true,
    usual: () => [],
    parse(pairs, { troubles }) {
      const answers: IntakeAnswer[] = []
      for (const [, text] of pairs) {
        if (!isIntakeAnswer(text)) {
          troubles.leftOut('asked', `The answer ${quote(text)} is not known.`, ', so it is left out.')
          continue
        }
        if (answers.some((other) => other !== text && questionOf(other) === questionOf(text)))
          troubles.changed(
            'asked twice',
            `A question has two answers; ${quote(text)} counts, as the later one.`,
          )
        answers.push(text)
      }
      return settledAnswers(answers)
    },
    write: (answers) => settledAnswers(answers).map((answer) => ['asked', answer]),
  },

  finding: {
    keys: ['found'],
    isList: true,
    usual: () => null,
    parse(pairs, { usual, others, troubles }) {
      const { needles } = dimensionsOf(others('own'))
      const finding: Fault[] = []
      for (const [, text] of pairs) {
        const fault = readFaultOf(text, needles, troubles)
        if (!fault) continue
        if (finding.length < sessionLimits.together) finding.push(fault)
        else
          troubles.leftOut(
            'finding',
            'The finding has more than two faults.',
            `; ${quote(text)} is left out.`,
          )
      }
      return finding.length > 0 ? sortedFaults(finding) : usual
    },
    write: (finding) =>
      (finding ?? [])
        .map(faultId)
        .sort()
        .map((id) => ['found', id]),
  },
}

/** The only version of this form may be named; every other stranger is said. */
const sayStrangers: SayStrangers = (strangers, troubles) => {
  for (const [key, value] of strangers) if (key !== 'v' || value !== '1') sayUnknown(key, value, troubles)
}

/** A session, always whole, and what there is to say about how it was read. */
export interface SessionReading {
  readonly session: Session
  readonly troubles: readonly Trouble[]
}

/**
 * Reads a session's link (with or without its `#`). Never throws and always gives a session with at least one pass;
 * what can't be read is left out or replaced, and said in a sentence.
 */
export const readSession = (text: string, library: CardLibrary): SessionReading => {
  const { whole, troubles } = readTable(text, sessionTable, library, sayStrangers)
  return { session: whole, troubles }
}

/** What an empty link means. */
export const emptySession = (library: CardLibrary): Session => readSession('', library).session

/**
 * Writes a session in its one canonical form: `practice=SEED`, or `deal=SEED` with `level=2`, for a machine to practise on, `marks=rough` for marks made
 * in passing, `first=R13` for the needle of column 1, `own=1_pitch-5` for what was measured of the machine, its passes, `check=ID.FAULT` for each part looked at, `asked=ANSWER` for each answer of its owner, `found=FAULT` for each fault of the finding.
 */
export const writeSession = (session: Session, library: CardLibrary): string =>
  writeTable(session, sessionTable, library)
