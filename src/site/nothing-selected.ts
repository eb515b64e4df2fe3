import { type CheckId, checkOf } from '../find/checks.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'

/** A question of the sheet for a machine that selects nothing, what to do where the answer is the bad one, and what it may be. */
export interface Decision {
  readonly ask: string
  /** The answer at which to stop and do something, and what to do. */
  readonly at: 'yes' | 'no'
  readonly then: string
  /** In minutes. Common practice from memory, or the table of checks' own. */
  readonly minutes: number
  /** What comes off for it; nothing where it is left out. */
  readonly opens?: boolean
  /** Ids of the cautions that stand before it. */
  readonly cautions: readonly string[]
  readonly kinds: readonly FaultKindName[]
}

const effort = (id: CheckId): Pick<Decision, 'minutes' | 'cautions'> => {
  const { minutes, cautions } = checkOf(id)
  return { minutes, cautions }
}

/**
 * What to ask of a machine that selects nothing, in the order in which to ask it: settings, then the card, then what can be
 * seen from outside, and last what a cover hides. A test holds it against the model.
 */
export const nothingSelected: readonly Decision[] = [
  {
    ask: 'Is the carriage set to pattern, with its lever right in its place?',
    at: 'no',
    then: 'Set it, and try again. Nothing was broken.',
    minutes: 0.5,
    cautions: [],
    kinds: ['carriage.plain'],
  },
  {
    ask: 'Is the belt engaged? Does the reader turn as you move the carriage?',
    at: 'no',
    then: 'Engage it, with the carriage where your machine’s manual wants it. Nothing was broken.',
    minutes: 0.5,
    cautions: ['fingers'],
    kinds: ['belt.off'],
  },
  {
    ask: 'Is the card off its lock, and does the row number go on past the mark at both ends?',
    at: 'no',
    then: 'Unlock it, and take the carriage right past the mark. A locked card stays on one row, and that row may be blank.',
    minutes: 1,
    cautions: [],
    kinds: [],
  },
  {
    ask: 'Are the needles in working position, and does the row being read have holes? It lies some rows below the one that you see.',
    at: 'no',
    then: 'Bring the needles to working position, and go on to a row with holes.',
    minutes: 0.5,
    cautions: ['hooks'],
    kinds: [],
  },
  {
    ask: 'Take the card out and push the carriage across slowly, once each way. Does every needle come forward now?',
    at: 'yes',
    then: 'It is the card. See whether it lies straight and right in between its guides, with its right face towards you; then try another.',
    ...effort('no-card'),
    kinds: ['card.side', 'card.skew'],
  },
  {
    ask: 'Do needles come forward in passes one way, and none the other way?',
    at: 'yes',
    then: 'Feel the belt’s play first. Then take the carriage off and look at the presser for the way that fails.',
    ...effort('carriage'),
    kinds: ['presser.right.worn', 'presser.left.worn'],
  },
  {
    ask: 'Is there play before the belt follows the carriage, or have belt, reader or carriage been off since it last worked?',
    at: 'yes',
    then: 'Mark where all of it is. Then tighten the belt, or set it a tooth at a time, with a pass after each.',
    ...effort('belt'),
    kinds: ['belt.slack', 'belt.timing'],
  },
  {
    ask: 'Take the carriage off and turn it over. Does the first gate hang low, or is it loose or held down by fluff?',
    at: 'yes',
    then: 'Clean its seat, and set it by your machine’s manual.',
    ...effort('carriage'),
    kinds: ['gate.1.low'],
  },
  {
    ask: 'Make the same pass twice. Are needles missed here and there, and others the second time?',
    at: 'yes',
    then: 'Pins and rockers rattle. Clean them before you judge, and try again; then decide with the owner, as for the sweep.',
    minutes: 1,
    cautions: [],
    kinds: ['pivots.loose'],
  },
  {
    ask: 'Plug out, one cover off: is the sweep’s edge worn or rounded, or does old oil lift it?',
    at: 'yes',
    then: 'Clean the sweep and its guide first. Then decide with the owner: the machine still knits plain.',
    ...effort('cover'),
    opens: true,
    kinds: ['sweep.worn'],
  },
]
