import type { CardLibrary } from '../link/state.ts'
import { drawFrom } from './draw.ts'
import { beltOut } from './makers/belt.ts'
import { badGate, badHold } from './makers/cams.ts'
import { anyCheck, benchCheck, camCheck, pinCheck, runCheck } from './makers/check.ts'
import { apartAsked, columnAsked, decidedAsked, lostAsked, stripAsked } from './makers/numbers-bed.ts'
import { floatAsked, knittedAsked, rowAsked, shortRowAsked } from './makers/numbers-card.ts'
import { biteAsked, dipAsked, gateAsked } from './makers/numbers-length.ts'
import { benchOrder } from './makers/order-bench.ts'
import { chainOrder, gateOrder, holdOrder } from './makers/order-chain.ts'
import { fabricOrder, turnOrder } from './makers/order-rows.ts'
import { stripOrder, sweepOrder } from './makers/order-travel.ts'
import {
  anyPart,
  atSpeed,
  drive,
  firstLook,
  gateParts,
  holdParts,
  patternFaults,
  pinOrCard,
  rockerOrStrip,
} from './makers/parts.ts'
import { askewCard, stuckPin } from './makers/pins.ts'
import { lateRow, nextRow, soundRow } from './makers/rows.ts'
import { steppingPart } from './makers/rows-read.ts'
import { badStrip, thickOil, twoFaults } from './makers/strips.ts'
import type { Maker, Question } from './question.ts'

/**
 * The makers of each chapter's questions, in the order in which they are asked. Progress is kept by chapter and
 * name, so a name once used stays with its question.
 */
const chapters: Readonly<Record<number, Readonly<Record<string, Maker>>>> = {
  1: { row: soundRow, chain: chainOrder, column: columnAsked, part: firstLook },
  2: { turn: turnOrder, row: rowAsked, late: lateRow, short: shortRowAsked, part: steppingPart },
  3: { pin: stuckPin, bite: biteAsked, askew: askewCard, part: pinOrCard, check: pinCheck },
  4: { order: sweepOrder, decided: decidedAsked, belt: beltOut, part: drive },
  5: { strip: stripAsked, bad: badStrip, order: stripOrder, lost: lostAsked, part: rockerOrStrip },
  6: { order: holdOrder, dip: dipAsked, hold: badHold, part: holdParts },
  7: { order: gateOrder, gap: gateAsked, gate: badGate, part: gateParts, check: camCheck },
  8: { fabric: fabricOrder, next: nextRow, knitted: knittedAsked, float: floatAsked, part: patternFaults },
  9: { apart: apartAsked, two: twoFaults, oil: thickOil, speed: atSpeed, part: anyPart, check: runCheck },
  10: { order: benchOrder, check: benchCheck, any: anyCheck, part: anyPart, speed: atSpeed },
}

/** The ids of a chapter's makers, such as `5.strip`, in the order in which they are asked. */
export const makersOf = (chapter: number): string[] =>
  Object.keys(chapters[chapter] ?? {}).map((name) => `${chapter}.${name}`)

/** The chapter of a maker's id. */
export const chapterOf = (maker: string): number => Number(maker.split('.')[0])

/** Makes a maker's question for a seed; null where no maker has this id. */
export const questionOf = (maker: string, seed: number, library: CardLibrary): Question | null => {
  const [chapter = '', name = ''] = maker.split('.')
  const makers = chapters[Number(chapter)] ?? {}
  const make = Object.hasOwn(makers, name) ? makers[name] : undefined
  return make
    ? { ...make({ draw: drawFrom(maker, seed), library }), id: `${maker}.${seed}`, maker, seed }
    : null
}
