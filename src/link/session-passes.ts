import { type Way, wayOfPass } from '../mechanism/bed.ts'
import { mostRows } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { dimensionsOf } from '../mechanism/own.ts'
import { readNumber } from '../mechanism/number.ts'
import { readMarks, writeMarks } from './bed-marks.ts'
import { readCardChoice, writeCardChoice } from './card-choice.ts'
import type { Pair, Reading, Row } from './codec.ts'
import { firstPass, type SeenPass, type Session, sessionLimits } from './session.ts'
import { type CardChoice, type CardLibrary, limits, rowsOf } from './state.ts'
import { oneLine, quote, type Troubles } from './troubles.ts'

/** What a pass is read beside: its number from 1, and the number of rows of its card; null without a card. */
interface Place {
  readonly number: number
  /** How many needles the bed has. */
  readonly needles: number
  readonly rows: number | null
  readonly troubles: Troubles
}

/** The card that a session's link names, or the one in use before where it names none. */
const readCard = (
  text: string,
  before: CardChoice,
  { library, troubles }: { readonly library: CardLibrary; readonly troubles: Troubles },
): CardChoice => {
  const reading = readCardChoice(text, library)
  switch (reading.kind) {
    case 'read':
      return reading.choice
    case 'cut':
      troubles.leftOut('cut card', `The link's own card was cut: ${reading.remark}.`)
      return reading.choice
    case 'unknown':
    case 'unreadable':
      troubles.leftOut(
        'unknown card',
        text.trim() === ''
          ? 'The link names a card without its name.'
          : `There is no card ${quote(text)} here.`,
        `; ${quote(writeCardChoice(before))} is used in its place.`,
      )
      return before
  }
}

const readRow = (text: string, { number, rows, troubles }: Place): number | null => {
  if (rows === null) return null
  const row = readNumber(text)
  if (row !== null && Number.isInteger(row) && row >= 1 && row <= Math.min(rows, mostRows)) return row
  troubles.changed(
    'row',
    `For pass ${number} the link has ${text.trim() === '' ? 'no row' : `row ${quote(text)}`}; this card has rows 1 to ${rows}, and row 1 is used.`,
  )
  return 1
}

const readSpeed = (text: string, { number, troubles }: Place): number => {
  const [least, most] = limits.speed
  const speed = readNumber(text)
  if (speed !== null && speed >= least && speed <= most) return speed
  troubles.changed(
    'speed',
    text.trim() === ''
      ? `For pass ${number} the link has no speed; ${dimensions.speed} is used.`
      : `For pass ${number} the link has the speed ${quote(text)}, which is no number from ${least} to ${most}; ${dimensions.speed} is used.`,
  )
  return dimensions.speed
}

/** Reads `pNUMBER`, the number of the pass; null where it is not a pass of this way. */
const readNumberOfPass = (text: string, way: Way, { number, troubles }: Place): number | null => {
  const pass = readNumber(text.slice(1))
  const [least, most] = limits.pass
  if (pass !== null && Number.isInteger(pass) && pass >= least && pass <= most && wayOfPass(pass) === way)
    return pass
  troubles.changed(
    'pass number',
    `For pass ${number} the link has the number ${quote(text.slice(1))}, which is no pass to the ${way === 1 ? 'right: those are 1, 3, 5' : 'left: those are 2, 4, 6'} and so on; it is taken from the row and the way.`,
  )
  return null
}

/** Reads `ROW.WAY.SPEED.pNUMBER.MARKS`, of which the number of the pass may be missing; null where the text has no way. */
const readPass = (text: string, card: CardChoice, place: Place): SeenPass | null => {
  const { number, troubles } = place
  const [row = '', way = '', speed = '', ...rest] = text.split('.')
  if (way !== 'right' && way !== 'left') {
    troubles.leftOut(
      'pass',
      text.trim() === ''
        ? 'The link has a pass of which it says nothing.'
        : `The pass ${quote(text)} can't be read.`,
      ', so it is left out.',
    )
    return null
  }
  const isNumbered = rest[0]?.startsWith('p') ?? false
  const { marks, leftOut } = readMarks(rest.slice(isNumbered ? 1 : 0).join('.'), place.needles)
  if (leftOut.length > 0)
    troubles.leftOut(
      'needles',
      `In pass ${number} the needles ${oneLine(leftOut.join(', '), 120)} can't be read.`,
      ' and are left out.',
    )
  return {
    card,
    row: readRow(row, place),
    way: way === 'right' ? 1 : -1,
    speed: readSpeed(speed, place),
    pass: isNumbered ? readNumberOfPass(rest[0] ?? '', way === 'right' ? 1 : -1, place) : null,
    marks,
  }
}

const writePass = ({ row, way, speed, pass, marks }: SeenPass): string =>
  [row ?? 0, way === 1 ? 'right' : 'left', speed, pass === null ? '' : `p${pass}`, writeMarks(marks)]
    .filter((word) => word !== '')
    .join('.')

/** Reads the passes in turn, each with the last card named before it. */
const readPasses = (
  pairs: readonly Pair[],
  { usual, others, library, troubles }: Reading<readonly SeenPass[], Session>,
): readonly SeenPass[] => {
  const most = sessionLimits.passes
  const { needles } = dimensionsOf(others('own'))
  const passes: SeenPass[] = []
  let isCut = false
  let card: CardChoice = { kind: 'site', id: library.main }
  for (const [key, text] of pairs) {
    if (key === 'card') card = readCard(text, card, { library, troubles })
    else if (passes.length === most) isCut = true
    else {
      const rows = rowsOf(card, library)?.length ?? null
      const pass = readPass(text, card, { number: passes.length + 1, needles, rows, troubles })
      if (pass) passes.push(pass)
    }
  }
  if (isCut) {
    const count = pairs.filter(([key]) => key === 'pass').length
    troubles.leftOut(
      'too many passes',
      `The link has ${count} passes, more than ${most}.`,
      `; the first ${most} are read.`,
    )
  }
  return passes.length > 0 ? passes : usual
}

const writePasses = (passes: readonly SeenPass[], library: CardLibrary): Pair[] => {
  let before = library.main
  return passes.flatMap((pass): Pair[] => {
    const card = writeCardChoice(pass.card)
    const own: Pair[] = card === before ? [] : [['card', card]]
    before = card
    return [...own, ['pass', writePass(pass)]]
  })
}

/** The passes seen: `card=` before the first pass with a new card, and `pass=ROW.WAY.SPEED.pNUMBER.MARKS` for each pass. */
export const passesRow: Row<readonly SeenPass[], Session> = {
  keys: ['card', 'pass'],
  isList: true,
  isAlwaysWritten: true,
  usual: (others, library) => [firstPass(library, others('own'))],
  parse: readPasses,
  write: writePasses,
}
