import * as v from 'valibot'
import { letters } from '../find/bed-letters.ts'
import { mostLooks } from '../find/looks.ts'
import { readCardChoice } from '../link/card-choice.ts'
import { type CardLibrary, limits, rowsOf } from '../link/state.ts'
import { readOwn } from '../link/own-row.ts'
import { quote, Troubles } from '../link/troubles.ts'
import {
  canonicalPlace,
  needleIndex,
  needleName,
  sideOfWay,
  usualPlace,
  type Way,
  wayOfPass,
} from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { at } from '../mechanism/lookup.ts'
import { bedLengths, type Needle } from '../mechanism/indices.ts'
import type { Own } from '../mechanism/own.ts'

/** What begins a message about a part of the file, the whole or one pass: whoever reports it puts the name there. */
export const partMark = '{part}'

/** A value as a sentence names it. */
const named = (value: unknown): string => {
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'string') return quote(value)
  return typeof value === 'object' ? 'an object' : JSON.stringify(value)
}

/** An object with all of the entries that are not optional, and with nothing else. */
const record = <const Entries extends v.ObjectEntries>(entries: Entries, names: readonly string[]) =>
  v.pipe(
    v.custom<object>(
      (value) => typeof value === 'object' && value !== null && !Array.isArray(value),
      ({ input }) => `${partMark} should be an object with ${names.join(', ')}, but is ${named(input)}.`,
    ),
    v.strictObject(entries, ({ expected, input }) =>
      expected === 'never'
        ? `${partMark} has ${quote(String(input))}, which is not known here.`
        : `${partMark} has no ${expected.replace(/^"(.*)"$/, '“$1”')}.`,
    ),
  )

/** A link's card, as its rows; null for none. `subject` begins the sentence that says why one is refused. */
const cardSchema = (library: CardLibrary, subject: string) =>
  v.pipe(
    v.string(({ input }) => `${subject} should be a text, but is ${named(input)}.`),
    v.rawTransform(({ dataset, addIssue, NEVER }): Card | null => {
      const reading = readCardChoice(dataset.value, library)
      switch (reading.kind) {
        case 'read':
          return rowsOf(reading.choice, library)
        case 'cut':
          addIssue({ message: `${subject} can't be read whole: ${reading.remark}.` })
          return NEVER
        case 'unreadable':
          addIssue({ message: `${subject} can't be read: ${reading.reason}.` })
          return NEVER
        case 'unknown':
          addIssue({ message: `There is no card ${quote(dataset.value)} here.` })
          return NEVER
      }
    }),
  )

/** The needle of column 1, by its name: any that some bed has, as its column is the same on every bed. */
const firstSchema = v.optional(
  v.pipe(
    v.string(({ input }) => `“first” should be a needle's name, but is ${named(input)}.`),
    v.rawTransform(({ dataset, addIssue, NEVER }): Needle => {
      const columnOne = needleIndex(dataset.value, bedLengths.most)
      if (columnOne !== null) return canonicalPlace({ columnOne }).columnOne
      addIssue({ message: `“first” has ${quote(dataset.value)}, which is no needle such as R1 or L12.` })
      return NEVER
    }),
  ),
  needleName(usualPlace.columnOne),
)

/** What was measured of the machine, as a link has it. What a page would leave out or change is refused here. */
const ownSchema = v.optional(
  v.pipe(
    v.string(({ input }) => `“own” should be a text such as 1_pitch-5, but is ${named(input)}.`),
    v.rawTransform(({ dataset, addIssue, NEVER }): Own => {
      const troubles = new Troubles()
      const own = readOwn(dataset.value, troubles)
      const [first] = troubles.all
      if (!first) return own
      addIssue({
        message: `“own” can't be taken as it is. ${first.problem.replace(/; [^;]* is used\.$/, '.')}`,
      })
      return NEVER
    }),
  ),
)

/** The whole file, its passes still unread: how they are read depends on the card. */
export const fileSchema = (library: CardLibrary) =>
  record(
    {
      card: cardSchema(library, 'The card'),
      first: firstSchema,
      own: ownSchema,
      passes: v.pipe(
        v.array(v.unknown(), ({ input }) => `“passes” should be a list, but is ${named(input)}.`),
        v.check(
          ({ length }) => length >= 1 && length <= mostLooks,
          ({ input }) => `“passes” has ${input.length} passes; it needs 1 to ${mostLooks}.`,
        ),
      ),
    },
    ['card', 'passes'],
  )

const waySchema = v.pipe(
  v.picklist(
    ['right', 'left'],
    ({ input }) => `${partMark} has way ${named(input)}; it is “right” or “left”.`,
  ),
  v.transform((way): Way => (way === 'right' ? 1 : -1)),
)

const within = (least: number, most: number, isWhole: boolean) => (value: unknown) =>
  typeof value === 'number' && value >= least && value <= most && (!isWhole || Number.isInteger(value))

const speedSchema = v.custom<number>(
  within(...limits.speed, false),
  ({ input }) =>
    `${partMark} has speed ${named(input)}; speeds run from ${limits.speed[0]} to ${limits.speed[1]} mm/s.`,
)

/** The letters of one pass over a bed with these needles. */
const needlesSchema = (needles: readonly Needle[]) =>
  v.pipe(
    v.string(({ input }) => `${partMark} has needles ${named(input)}, not a text.`),
    v.rawCheck(({ dataset, addIssue }) => {
      if (!dataset.typed) return
      const marks = Array.from(dataset.value)
      const bad = marks.findIndex((mark) => !letters.includes(mark))
      if (bad >= 0 && bad < needles.length)
        addIssue({
          message: `${partMark} has ${quote(at(marks, bad))} at needle ${needleName(at(needles, bad))}; each is s, p, u or ?.`,
        })
      else if (marks.length !== needles.length)
        addIssue({
          message: `${partMark} has ${marks.length} needles; it needs ${needles.length}, one letter each, ${needleName(at(needles, 0))} first.`,
        })
    }),
  )

const passSchema = v.optional(
  v.custom<number>(
    within(...limits.pass, true),
    ({ input }) =>
      `${partMark} has pass ${named(input)}; passes run from ${limits.pass[0]} to ${limits.pass[1]}.`,
  ),
)

/** A pass that has its own card, which it is read with. */
export const ownCardSchema = (library: CardLibrary) =>
  v.looseObject({ card: cardSchema(library, `${partMark}'s card`) })

const rowSchema = (card: Card | null) =>
  card
    ? v.custom<number>(
        within(1, card.length, true),
        ({ input }) => `${partMark} has row ${named(input)}; the card's rows run from 1 to ${card.length}.`,
      )
    : v.optional(
        v.null(({ input }) => `${partMark} has row ${named(input)}, but there is no card.`),
        null,
      )

/** One pass seen, on a machine with this card and these needles. */
export const lookSchema = (card: Card | null, needles: readonly Needle[]) =>
  v.pipe(
    record(
      {
        row: rowSchema(card),
        way: waySchema,
        speed: speedSchema,
        needles: needlesSchema(needles),
        card: v.optional(v.unknown()),
        pass: passSchema,
      },
      [...(card ? ['row'] : []), 'way', 'speed', 'needles'],
    ),
    v.forward(
      v.check(
        ({ pass, way }) => pass === undefined || wayOfPass(pass) === way,
        ({ input: { pass, way } }) =>
          `${partMark} is pass ${pass} and goes to the ${sideOfWay(way)}; odd passes go to the right, even ones to the left.`,
      ),
      ['pass'],
    ),
  )
