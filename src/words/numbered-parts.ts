import type { FaultKindName } from '../mechanism/fault-kinds.ts'

interface NumberedWords {
  /** The part's number, the same on the whole site. */
  readonly number: number
  /** Its name, as a label has it. */
  readonly name: string
  /** The glossary's entry that says what it does. */
  readonly term: string
  /** The faults that it can have. */
  readonly faults: readonly FaultKindName[]
}

/** The parts that have a number, in the order of their numbers. */
export const numberedParts = {
  card: {
    number: 1,
    name: 'card',
    term: 'card',
    faults: ['card.torn', 'card.blocked', 'card.side', 'card.skew', 'card.reversed', 'card.locked'],
  },
  pin: { number: 2, name: 'feeler pins', term: 'pin', faults: ['pin.low', 'pin.high', 'pin.sticky'] },
  sweep: { number: 3, name: 'sweep', term: 'sweep', faults: ['sweep.worn'] },
  rocker: {
    number: 4,
    name: 'rockers and rods',
    term: 'rocker',
    faults: ['rocker.dead', 'rocker.worn', 'pivots.loose'],
  },
  strip: { number: 5, name: 'strips', term: 'strip', faults: ['strip.seized', 'strip.over', 'strip.slow'] },
  presser: {
    number: 6,
    name: 'presser',
    term: 'presser',
    faults: ['presser.right.worn', 'presser.left.worn'],
  },
  'gate.1': { number: 7, name: 'first gate', term: 'first-gate', faults: ['gate.1.low', 'gate.1.high'] },
  'gate.2': { number: 8, name: 'second gate', term: 'second-gate', faults: [] },
  needle: {
    number: 9,
    name: 'needles',
    term: 'needle',
    faults: ['needle.bent', 'needle.stiff', 'needle.gone'],
  },
  belt: { number: 10, name: 'belt', term: 'belt', faults: ['belt.off', 'belt.timing', 'belt.slack'] },
  plate: { number: 11, name: 'plate', term: 'plate', faults: [] },
  'leaf-spring': { number: 12, name: 'leaf springs', term: 'leaf-spring', faults: ['pin.over'] },
  'lift-spring': { number: 13, name: 'lift springs', term: 'lift-spring', faults: ['pin.low'] },
  'draw-bar': { number: 14, name: 'draw bar', term: 'draw-bar', faults: [] },
  rail: { number: 15, name: 'rocker rails', term: 'rocker-rail', faults: ['pivots.loose'] },
  'top-plate': { number: 16, name: 'top plate', term: 'top-plate', faults: [] },
  guide: { number: 17, name: 'strip guides', term: 'strip-guide', faults: ['strip.seized'] },
  bed: { number: 18, name: 'needle bed', term: 'needle-bed', faults: [] },
  cheek: { number: 19, name: 'cheek', term: 'cheek', faults: [] },
  carriage: { number: 20, name: 'carriage', term: 'carriage', faults: ['carriage.plain'] },
  deck: { number: 21, name: 'deck', term: 'deck', faults: [] },
  catch: { number: 22, name: 'catches', term: 'catch', faults: ['catch.broken'] },
  spur: { number: 23, name: 'spurs', term: 'spur', faults: [] },
  butt: { number: 24, name: 'butts', term: 'butt', faults: ['needle.gone', 'needle.bent', 'needle.stiff'] },
  retainer: { number: 25, name: 'retainer bar', term: 'retainer-bar', faults: ['retainer.worn'] },
  'return-spring': { number: 26, name: 'return springs', term: 'return-spring', faults: ['strip.slow'] },
  'butt-spring': { number: 27, name: 'butt springs', term: 'butt-spring', faults: ['needle.stiff'] },
  drum: { number: 28, name: 'drum and ratchet', term: 'drum', faults: [] },
  pawl: {
    number: 29,
    name: 'pawls',
    term: 'pawl',
    faults: ['pawl.right', 'pawl.left', 'pawl.double', 'pawl.skips', 'pawl.jumps'],
  },
  wheel: { number: 30, name: 'wheels', term: 'wheel', faults: [] },
  'card-guide': { number: 31, name: 'card guides', term: 'card-guide', faults: ['card.side', 'card.skew'] },
  'leading-cam': { number: 32, name: 'leading cams', term: 'leading-cam', faults: [] },
  'turn-mark': { number: 33, name: 'turn marks', term: 'turn-mark', faults: ['turn.short'] },
  lever: { number: 34, name: 'lever', term: 'lever', faults: ['turn.twice'] },
  'belt-cover': { number: 35, name: 'belt cover', term: 'belt-cover', faults: [] },
} as const satisfies Readonly<Record<string, NumberedWords>>

/** A part that has a number. */
export type NumberedPart = keyof typeof numberedParts

/** The names of all parts that have a number, in its order. */
export const numberedNames = Object.keys(numberedParts) as readonly NumberedPart[]
