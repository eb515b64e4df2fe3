import { dimensions } from './dimensions.ts'
import type { PartId } from './part.ts'

/** What an index in a fault's id counts: the words in capitals in its pattern. */
export const indexKinds = {
  ROW: 'row',
  COL: 'column',
  C: 'column',
  J: 'strip',
  P: 'pass',
  NEEDLE: 'needle',
} as const
export type IndexKind = (typeof indexKinds)[keyof typeof indexKinds]

/** The stages of the chain, in its own order. */
export const stages = ['card', 'pin', 'sweep', 'rocker', 'strip', 'hold', 'gate'] as const
export type Stage = (typeof stages)[number]

/** A fault's number: its unit, its range, and a value that shows the fault clearly. */
export interface Amount {
  readonly unit: 'mm' | 'mm a column' | 'ms' | 'needles' | 'share'
  readonly least: number
  readonly most: number
  readonly step: number
  readonly usual: number
  /** Whether the number may be left out of the id, where `usual` takes its place. */
  readonly optional?: boolean
}

/** A kind of fault, as the catalogue has it. */
export interface FaultKind {
  /** The id with its indices in capitals, as in `strip.J.seized`. */
  readonly pattern: string
  readonly stage: Stage
  /** The part's id where it has no number of its own; null where the id's first two words name it. */
  readonly part: PartId | null
  /** Kinds that share a group can't stand together on one part. */
  readonly excludes: readonly string[]
  readonly amount?: Amount
}

const mm = (usual: number, most: number, least = 0): Amount => ({
  unit: 'mm',
  least,
  most,
  step: 0.05,
  usual,
})
const ms = (usual: number, optional: boolean): Amount => ({
  unit: 'ms',
  least: 1,
  most: 5000,
  step: 1,
  usual,
  optional,
})

const catalogue = {
  'card.torn': { pattern: 'card.torn.ROW.COL', stage: 'card', part: 'card', excludes: ['hole'] },
  'card.blocked': { pattern: 'card.blocked.ROW.COL', stage: 'card', part: 'card', excludes: ['hole'] },
  'card.side': {
    pattern: 'card.side',
    stage: 'card',
    part: 'card',
    excludes: ['card.side'],
    amount: mm(1.2, 5, -5),
  },
  'card.skew': {
    pattern: 'card.skew',
    stage: 'card',
    part: 'card',
    excludes: ['card.skew'],
    amount: { unit: 'mm a column', least: -1, most: 1, step: 0.01, usual: 0.12 },
  },
  'card.reversed': { pattern: 'card.reversed', stage: 'card', part: 'card', excludes: ['card.reversed'] },
  'card.locked': { pattern: 'card.locked', stage: 'card', part: 'card', excludes: ['card.locked'] },
  'pawl.skips': { pattern: 'pawl.skips.P', stage: 'card', part: 'pawl', excludes: ['pawl.once'] },
  'pawl.jumps': { pattern: 'pawl.jumps.P', stage: 'card', part: 'pawl', excludes: ['pawl.once'] },
  'turn.twice': { pattern: 'turn.twice', stage: 'card', part: 'lever', excludes: ['turn.twice'] },
  'pawl.right': { pattern: 'pawl.right', stage: 'card', part: 'pawl.right', excludes: ['pawl.right'] },
  'pawl.left': { pattern: 'pawl.left', stage: 'card', part: 'pawl.left', excludes: ['pawl.left'] },
  'pawl.double': { pattern: 'pawl.double', stage: 'card', part: 'pawl', excludes: ['pawl.double'] },
  'turn.short': { pattern: 'turn.short.P', stage: 'card', part: 'turn', excludes: ['turn.short'] },
  'pin.low': { pattern: 'pin.C.low', stage: 'pin', part: null, excludes: ['pin'] },
  'pin.high': { pattern: 'pin.C.high', stage: 'pin', part: null, excludes: ['pin'] },
  'pin.sticky': {
    pattern: 'pin.C.sticky',
    stage: 'pin',
    part: null,
    excludes: ['pin'],
    amount: { unit: 'share', least: 0.05, most: 0.95, step: 0.05, usual: 0.5 },
  },
  'pin.over': { pattern: 'pin.C.over', stage: 'pin', part: null, excludes: ['pin.over'] },
  'sweep.worn': {
    pattern: 'sweep.worn',
    stage: 'sweep',
    part: 'sweep',
    excludes: ['sweep.worn'],
    amount: mm(0.8, 3),
  },
  'belt.off': { pattern: 'belt.off', stage: 'sweep', part: 'belt', excludes: ['belt.off'] },
  'belt.timing': {
    pattern: 'belt.timing',
    stage: 'sweep',
    part: 'belt',
    excludes: ['belt.timing'],
    amount: { unit: 'needles', least: -96, most: 96, step: 0.1, usual: 3 },
  },
  'belt.slack': {
    pattern: 'belt.slack',
    stage: 'sweep',
    part: 'belt',
    excludes: ['belt.slack'],
    amount: { unit: 'needles', least: 0, most: 24, step: 0.1, usual: 2 },
  },
  'pivots.loose': {
    pattern: 'pivots.loose',
    stage: 'rocker',
    part: 'pivots',
    excludes: ['pivots.loose'],
    amount: mm(0.4, 0.6, 0.05),
  },
  'rocker.dead': { pattern: 'rocker.C.dead', stage: 'rocker', part: null, excludes: ['rocker'] },
  'rocker.worn': {
    pattern: 'rocker.C.worn',
    stage: 'rocker',
    part: null,
    excludes: ['rocker'],
    amount: mm(0.8, 3),
  },
  'strip.seized': { pattern: 'strip.J.seized', stage: 'strip', part: null, excludes: ['strip'] },
  'strip.over': { pattern: 'strip.J.over', stage: 'strip', part: null, excludes: ['strip'] },
  'strip.slow': {
    pattern: 'strip.J.slow',
    stage: 'strip',
    part: null,
    excludes: ['strip'],
    amount: ms(dimensions.stripReturnThick, true),
  },
  'carriage.plain': {
    pattern: 'carriage.plain',
    stage: 'hold',
    part: 'carriage',
    excludes: ['carriage.plain'],
  },
  'catch.broken': { pattern: 'catch.NEEDLE.broken', stage: 'hold', part: null, excludes: ['catch'] },
  'needle.bent': {
    pattern: 'needle.NEEDLE.bent',
    stage: 'hold',
    part: null,
    excludes: ['needle.bent'],
  },
  'needle.gone': {
    pattern: 'needle.NEEDLE.gone',
    stage: 'hold',
    part: null,
    excludes: ['needle.bent', 'needle.stiff'],
  },
  'presser.right.worn': {
    pattern: 'presser.right.worn',
    stage: 'hold',
    part: 'presser.right',
    excludes: ['presser.right'],
    amount: mm(0.8, 1.5),
  },
  'presser.left.worn': {
    pattern: 'presser.left.worn',
    stage: 'hold',
    part: 'presser.left',
    excludes: ['presser.left'],
    amount: mm(0.8, 1.5),
  },
  'needle.stiff': {
    pattern: 'needle.NEEDLE.stiff',
    stage: 'gate',
    part: null,
    excludes: ['needle.stiff'],
    amount: ms(dimensions.buttReturnStiff, true),
  },
  'retainer.worn': {
    pattern: 'retainer.worn',
    stage: 'gate',
    part: 'retainer',
    excludes: ['retainer'],
    amount: ms(8, false),
  },
  'gate.1.low': {
    pattern: 'gate.1.low',
    stage: 'gate',
    part: 'gate.1',
    excludes: ['gate.1'],
    amount: mm(0.5, 1.5),
  },
  'gate.1.high': {
    pattern: 'gate.1.high',
    stage: 'gate',
    part: 'gate.1',
    excludes: ['gate.1'],
    amount: mm(0.5, 1.5),
  },
} as const satisfies Record<string, FaultKind>

/** The catalogue with the type of each entry, from which the types of faults and of their ids follow. */
export type Catalogue = typeof catalogue

/** The name of a kind of fault: its id without indices. */
export type FaultKindName = keyof Catalogue

/** Every kind of fault, in the chain's order. */
export const faultKinds: Readonly<Record<FaultKindName, FaultKind>> = catalogue

/** The names of every kind of fault, in the chain's order. */
export const faultKindNames = Object.keys(catalogue) as FaultKindName[]
