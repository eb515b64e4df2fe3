import { needleName, passEnds, wholeBedOf, withinPass } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { readNumber, roundNumber } from '../mechanism/number.ts'
import { dimensionsOf } from '../mechanism/own.ts'
import { readBed, readCarriagePosition, writeBed, writeCarriagePosition } from './carriage-position.ts'
import { cardPlaceRow } from './card-place-row.ts'
import { readCardChoice, writeCardChoice } from './card-choice.ts'
import { oneValue, type Row, type Table } from './codec.ts'
import { faultsRow } from './faults-row.ts'
import { ownRow } from './own-row.ts'
import { type CardChoice, limits, type State } from './state.ts'
import { quote } from './troubles.ts'

/** What a state's link says: the state, and by which version of this form. */
export interface StateLink extends State {
  readonly version: 1
}

/** The state alone, without what else its link says. */
export const stateOf = ({
  card,
  pass,
  at,
  faults,
  speed,
  wear,
  seed,
  bed,
  columnOne,
  own,
  note,
}: StateLink): State => ({
  card,
  pass,
  at,
  faults,
  speed,
  wear,
  seed,
  bed,
  columnOne,
  own,
  note,
})

/** A number within a range, both ends included; it is kept to four decimals. */
const number = (
  key: string,
  [least, most]: readonly [number, number],
  usual: number,
  kind: 'number' | 'whole number',
): Row<number, StateLink> =>
  oneValue(key, {
    usual: () => usual,
    parse(text, { troubles }) {
      const value = readNumber(text)
      if (value === null || (kind === 'whole number' && !Number.isInteger(value))) {
        troubles.leftOut(
          key,
          text.trim() === ''
            ? `For “${key}” the link has nothing, where a ${kind} belongs.`
            : `For “${key}” the link has ${quote(text)}, which is no ${kind}.`,
          `; ${usual} is used.`,
        )
        return usual
      }
      const clamped = Math.min(most, Math.max(least, value))
      if (clamped !== value)
        troubles.changed(
          key,
          `For “${key}” the link has ${value}, outside ${least} to ${most}; ${clamped} is used.`,
        )
      return clamped
    },
    write: (value) => String(roundNumber(value)),
  })

/** The table of a state's link: every key, in its canonical order. */
export const stateTable: Table<StateLink> = {
  version: oneValue('v', {
    usual: () => 1,
    parse(text, { usual, troubles }) {
      if (text !== '1')
        troubles.leftOut(
          'version',
          text.trim() === ''
            ? 'The link does not say of which version it is.'
            : `The link is of version ${quote(text)}, which is not known here.`,
          '; it was read as version 1.',
        )
      return usual
    },
    write: String,
  }),

  card: oneValue<CardChoice, StateLink>('card', {
    usual: (_, library) => ({ kind: 'site', id: library.main }),
    parse(text, { usual, library, troubles }) {
      const reading = readCardChoice(text, library)
      switch (reading.kind) {
        case 'read':
          return reading.choice
        case 'cut':
          troubles.leftOut('card', `The link's own card was cut: ${reading.remark}.`)
          return reading.choice
        case 'unknown':
          troubles.leftOut(
            'card',
            text.trim() === ''
              ? 'The link names a card without its name.'
              : `There is no card ${quote(text)} here.`,
            '; the main card is used.',
          )
          return usual
        case 'unreadable':
          troubles.leftOut(
            'card',
            `The link's own card can't be read: ${reading.reason}.`,
            '. The main card is used.',
          )
          return usual
      }
    },
    write: writeCardChoice,
  }),

  pass: number('pass', limits.pass, 1, 'whole number'),

  at: oneValue('at', {
    usual: (others) => passEnds(others('pass'), others('bed')).start,
    parse(text, { usual, others, troubles }) {
      const at = readCarriagePosition(text)
      if (at === null) {
        troubles.leftOut(
          'at',
          text.trim() === ''
            ? 'The link has no place for the carriage after “at”.'
            : `${quote(text)} is no place for the carriage.`,
          '; it stands at the start of the pass.',
        )
        return usual
      }
      const clamped = withinPass(at, others('pass'), others('bed'))
      if (clamped !== at)
        troubles.changed(
          'at',
          `The carriage can't be at ${quote(text)} with these needles in use; it stands at ${writeCarriagePosition(clamped)}.`,
        )
      return clamped
    },
    write: writeCarriagePosition,
  }),

  faults: faultsRow,
  speed: number('speed', limits.speed, dimensions.speed, 'number'),
  wear: number('wear', limits.wear, 0, 'number'),
  seed: number('seed', limits.seed, 1, 'whole number'),

  bed: oneValue('needles', {
    usual: (others) => wholeBedOf(dimensionsOf(others('own')).needles),
    parse(text, { usual, others, troubles }) {
      const bed = readBed(text, dimensionsOf(others('own')).needles)
      if (bed) return bed
      const whole = `${needleName(usual.first)} to ${needleName(usual.last)}`
      troubles.leftOut(
        'needles',
        text.trim() === ''
          ? 'The link names no needles in use.'
          : readBed(text, bedLengths.most)
            ? `${quote(text)} goes beyond the needles of this bed.`
            : `${quote(text)} names no needles from left to right such as L24-R24.`,
        `; ${whole} are used.`,
      )
      return usual
    },
    write: writeBed,
  }),

  columnOne: cardPlaceRow((others) => dimensionsOf(others('own')).needles),
  own: ownRow,

  note: oneValue('note', {
    usual: () => '',
    parse(text, { troubles }) {
      const characters = Array.from(text)
      if (characters.length > limits.noteCharacters)
        troubles.changed(
          'note',
          `The note is longer than ${limits.noteCharacters} characters and is cut there.`,
        )
      return characters.slice(0, limits.noteCharacters).join('')
    },
    write: (note) => note,
  }),
}
