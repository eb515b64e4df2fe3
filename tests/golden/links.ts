import type { State } from '@/link/state.ts'
import { type Bed, needleIndex } from '@/mechanism/bed.ts'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { toNeedle } from '@/mechanism/indices.ts'

// Links as they may have been given to someone. Each keeps its meaning in every later version of this site:
// lines are added here, never changed and never taken out.

/** A link, what it means, and its canonical form where that differs from the link itself. */
export interface GoldenLink {
  readonly text: string
  /** The same in words, for whoever reads this list. */
  readonly means: string
  /** What differs from the state of an empty link. A needle's number: L125 is -25, L100 0, L1 99, R1 100, R100 199. */
  readonly state: Partial<Omit<State, 'card'>> & {
    /** An id of the site's cards, `none`, or rows from column 1 to 24 with `o` for a hole. */
    readonly card?: string | readonly string[]
  }
  readonly canonical?: string
  /** How many things the page has to say about it; none where it is left out. */
  readonly said?: number
}

const fault = (kind: Fault['kind'], at: number[] = [], amount: number | null = null): Fault =>
  makeFault(kind, at, amount)

const bedOf = (first: string, last: string): Bed => ({
  first: needleIndex(first, 250)!,
  last: needleIndex(last, 250)!,
})

const cards: readonly GoldenLink[] = [
  { text: '', means: 'the main card, pass 1, nothing broken', state: {} },
  { text: 'card=harbour-star', means: 'the main card by its name', state: {}, canonical: '' },
  { text: 'card=fern&pass=12', means: 'another card in pass 12', state: { card: 'fern', pass: 12, at: 211 } },
  { text: 'card=all-holes', means: 'a card of holes only', state: { card: 'all-holes' } },
  { text: 'card=blank', means: 'a card without a hole', state: { card: 'blank' } },
  { text: 'card=none', means: 'no card in the reader', state: { card: 'none' } },
  {
    text: 'card=x.____&pass=3&break=strip.3.seized',
    means: 'one row of holes, third pass, strip 3 seized',
    state: { card: ['oooooooooooooooooooooooo'], pass: 3, faults: [fault('strip.seized', [3])] },
  },
  {
    text: 'card=x.gAAAAAAB',
    means: 'a hole in column 1 of row 1 and in column 24 of row 2',
    state: { card: ['o.......................', '.......................o'] },
  },
  {
    text: 'card=x.qqqqVVVV',
    means: 'every other column, first the odd ones',
    state: { card: ['o.o.o.o.o.o.o.o.o.o.o.o.', '.o.o.o.o.o.o.o.o.o.o.o.o'] },
  },
  {
    text: 'card=x.-_-_',
    means: 'all holes but columns 6 and 18',
    state: { card: ['ooooo.ooooooooooo.oooooo'] },
  },
]

const places: readonly GoldenLink[] = [
  { text: 'pass=2', means: 'pass 2, starting from the right', state: { pass: 2, at: 211 } },
  { text: 'pass=2&at=R12.5', means: 'half a needle past R12', state: { pass: 2, at: 111.5 } },
  { text: 'at=R12', means: 'at R12 in pass 1', state: { at: 111 } },
  { text: 'at=L112', means: 'at the left turn mark, where pass 1 starts', state: {}, canonical: '' },
  { text: 'at=R112', means: 'at the right turn mark', state: { at: 211 } },
  { text: 'at=L1', means: 'at the last needle left of the middle', state: { at: 99 } },
  { text: 'at=R0.5', means: 'half way from L1 to R1', state: { at: 99.5 } },
  { text: 'at=L0.5', means: 'the same, counted from the right', state: { at: 99.5 }, canonical: 'at=R0.5' },
  {
    text: 'needles=L24-R24',
    means: '48 needles; the carriage starts 12 left of L24',
    state: { bed: { first: toNeedle(76), last: toNeedle(123) }, at: 64 },
  },
  {
    text: 'pass=2&needles=R5-R5',
    means: 'one needle, from the right',
    state: { pass: 2, bed: { first: toNeedle(104), last: toNeedle(104) }, at: 116 },
  },
]

const broken: readonly GoldenLink[] = [
  {
    text: 'break=strip.3.seized&break=pin.5.low',
    means: 'two faults, in any order',
    state: { faults: [fault('pin.low', [5]), fault('strip.seized', [3])] },
    canonical: 'break=pin.5.low&break=strip.3.seized',
  },
  {
    text: 'break=strip.7.slow&speed=900',
    means: 'strip 7 in thick oil, 300 ms, and a fast carriage',
    state: { faults: [fault('strip.slow', [7], 300)], speed: 900 },
  },
  {
    text: 'break=strip.7.slow%3D150',
    means: 'strip 7 in oil of 150 ms',
    state: { faults: [fault('strip.slow', [7], 150)] },
  },
  {
    text: 'break=strip.7.slow=300',
    means: 'thick oil, typed by hand with its number',
    state: { faults: [fault('strip.slow', [7], 300)] },
    canonical: 'break=strip.7.slow',
  },
  {
    text: 'break=strip.1.over&break=strip.2.over',
    means: 'two strips stuck shifted',
    state: { faults: [fault('strip.over', [1]), fault('strip.over', [2])] },
  },
  {
    text: 'break=card.blocked.5.24&break=card.reversed&break=card.torn.2.11',
    means: 'a hole too few, a card the wrong way round and a hole too many',
    state: { faults: [fault('card.blocked', [5, 24]), fault('card.reversed'), fault('card.torn', [2, 11])] },
  },
  {
    text: 'break=card.locked&break=card.side%3D-1.2&break=card.skew%3D0.12',
    means: 'a card that does not step, too far to one side and askew',
    state: { faults: [fault('card.locked'), fault('card.side', [], -1.2), fault('card.skew', [], 0.12)] },
  },
  {
    text: 'pass=5&break=pawl.double&break=pawl.left&break=pawl.right&break=turn.short.3',
    means: 'the pawls in every trouble, and a short turn before pass 3',
    state: {
      pass: 5,
      faults: [fault('pawl.double'), fault('pawl.left'), fault('pawl.right'), fault('turn.short', [3])],
    },
  },
  {
    text: 'break=pin.24.over&break=pin.5.high&break=rocker.10.worn%3D0.8&break=rocker.9.dead',
    means: 'pins and rockers',
    state: {
      faults: [
        fault('pin.high', [5]),
        fault('pin.over', [24]),
        fault('rocker.dead', [9]),
        fault('rocker.worn', [10], 0.8),
      ],
    },
  },
  {
    text: 'break=belt.slack%3D1.3&break=belt.timing%3D-8&break=sweep.worn%3D0.8',
    means: 'the belt and the sweep',
    state: {
      faults: [fault('belt.slack', [], 1.3), fault('belt.timing', [], -8), fault('sweep.worn', [], 0.8)],
    },
  },
  {
    text: 'break=catch.R3.broken&break=needle.L7.bent&break=needle.R2.stiff%3D80&break=needle.R4.gone',
    means: 'single needles and catches',
    state: {
      faults: [
        fault('catch.broken', [102]),
        fault('needle.bent', [93]),
        fault('needle.stiff', [101], 80),
        fault('needle.gone', [103]),
      ],
    },
  },
  {
    text: 'break=needle.L100.stiff',
    means: 'the leftmost needle stiff, 50 ms',
    state: { faults: [fault('needle.stiff', [0], 50)] },
  },
  {
    text: 'break=gate.1.low%3D0.5&break=presser.left.worn%3D0.8&break=retainer.worn%3D12&seed=7',
    means: 'the carriage and the retainer bar, with the scatter of machine 7',
    state: {
      faults: [
        fault('gate.1.low', [], 0.5),
        fault('presser.left.worn', [], 0.8),
        fault('retainer.worn', [], 12),
      ],
      seed: 7,
    },
  },
  {
    text: 'break=gate.1.high%3D0.5&break=presser.right.worn%3D0.7',
    means: 'a first gate too high and a shallow dip to the right',
    state: { faults: [fault('gate.1.high', [], 0.5), fault('presser.right.worn', [], 0.7)] },
  },
]

const rest: readonly GoldenLink[] = [
  { text: 'wear=0.8&seed=42', means: 'machine 42, nearly worn out', state: { wear: 0.8, seed: 42 } },
  { text: 'speed=83.5', means: 'a slow carriage', state: { speed: 83.5 } },
  { text: '#v=1&pass=7', means: 'with its # and its version', state: { pass: 7 }, canonical: 'pass=7' },
  {
    text: 'note=Clean+strip+3+first%2C+please.',
    means: 'a note',
    state: { note: 'Clean strip 3 first, please.' },
  },
  {
    text: 'note=%3Cb%3E%26+caf%C3%A9+%E2%82%AC5+%F0%9F%A7%B6',
    means: 'a note of signs that mean something elsewhere',
    state: { note: '<b>& café €5 🧶' },
  },
  {
    text: 'card=x.AAAA&pass=4&at=L3.25&break=pin.1.high&speed=250&wear=0.25&seed=9&needles=L30-R40&note=All+of+it',
    means: 'every key at once',
    state: {
      card: ['........................'],
      pass: 4,
      at: 96.75,
      faults: [fault('pin.high', [1])],
      speed: 250,
      wear: 0.25,
      seed: 9,
      bed: { first: toNeedle(70), last: toNeedle(139) },
      note: 'All of it',
    },
  },
  {
    text: 'note=Hello&seed=3&pass=2',
    means: 'keys in any order',
    state: { note: 'Hello', seed: 3, pass: 2, at: 211 },
    canonical: 'pass=2&seed=3&note=Hello',
  },
  {
    text: 'break=strip.3.seized&break=strip.3.over',
    means: 'one strip in two states: the later stands',
    state: { faults: [fault('strip.over', [3])] },
    canonical: 'break=strip.3.over',
    said: 1,
  },
  { text: 'pass=0&wear=2', means: 'out of range: clamped', state: { wear: 1 }, canonical: 'wear=1', said: 2 },
  { text: 'colour=red&pass=3', means: 'an unknown key', state: { pass: 3 }, canonical: 'pass=3', said: 1 },
]

/** Three links for each kind of fault that came with the machine as it is, one of them with what it can't be beside. */
const asItIs: readonly GoldenLink[] = [
  {
    text: 'break=carriage.plain',
    means: 'the carriage not set to pattern',
    state: { faults: [fault('carriage.plain')] },
  },
  {
    text: 'pass=2&break=carriage.plain&break=strip.3.seized',
    means: 'not set to pattern, and a strip seized, to the left',
    state: { pass: 2, at: 211, faults: [fault('carriage.plain'), fault('strip.seized', [3])] },
  },
  {
    text: 'break=carriage.plain&break=carriage.plain',
    means: 'the same said twice is one',
    state: { faults: [fault('carriage.plain')] },
    canonical: 'break=carriage.plain',
  },
  {
    text: 'break=belt.off',
    means: 'the belt not engaged',
    state: { faults: [fault('belt.off')] },
  },
  {
    text: 'card=none&break=belt.off',
    means: 'the belt not engaged, and no card',
    state: { card: 'none', faults: [fault('belt.off')] },
  },
  {
    text: 'break=belt.off&break=belt.off',
    means: 'the same said twice is one',
    state: { faults: [fault('belt.off')] },
    canonical: 'break=belt.off',
  },
  {
    text: 'break=turn.twice',
    means: 'each row read twice on purpose',
    state: { faults: [fault('turn.twice')] },
  },
  {
    text: 'break=pawl.left&break=turn.twice',
    means: 'each row twice, and the left pawl dead',
    state: { faults: [fault('pawl.left'), fault('turn.twice')] },
  },
  {
    text: 'break=turn.twice&break=turn.twice',
    means: 'the same said twice is one',
    state: { faults: [fault('turn.twice')] },
    canonical: 'break=turn.twice',
  },
  {
    text: 'break=pawl.skips.4',
    means: 'the card not moved on before pass 4',
    state: { faults: [fault('pawl.skips', [4])] },
  },
  {
    text: 'break=pawl.skips.2&break=pawl.skips.9999',
    means: 'not moved on at the first turn and at the last there can be',
    state: { faults: [fault('pawl.skips', [2]), fault('pawl.skips', [9999])] },
  },
  {
    text: 'break=pawl.jumps.4&break=pawl.skips.4',
    means: 'two rows and none at one turn: the later stands',
    state: { faults: [fault('pawl.skips', [4])] },
    canonical: 'break=pawl.skips.4',
    said: 1,
  },
  {
    text: 'break=pawl.jumps.3',
    means: 'the card moved on by two rows before pass 3',
    state: { faults: [fault('pawl.jumps', [3])] },
  },
  {
    text: 'break=pawl.jumps.3&break=pawl.skips.4',
    means: 'two rows at one turn and none at the next',
    state: { faults: [fault('pawl.jumps', [3]), fault('pawl.skips', [4])] },
  },
  {
    text: 'break=pawl.skips.4&break=pawl.jumps.4',
    means: 'none and two rows at one turn: the later stands',
    state: { faults: [fault('pawl.jumps', [4])] },
    canonical: 'break=pawl.jumps.4',
    said: 1,
  },
  {
    text: 'break=pin.7.sticky=0.5',
    means: 'pin 7 fails to rise at half of the turns',
    state: { faults: [fault('pin.sticky', [7], 0.5)] },
    canonical: 'break=pin.7.sticky%3D0.5',
  },
  {
    text: 'break=pin.24.sticky=2',
    means: 'a share out of range: clamped',
    state: { faults: [fault('pin.sticky', [24], 0.95)] },
    canonical: 'break=pin.24.sticky%3D0.95',
    said: 1,
  },
  {
    text: 'break=pin.7.low&break=pin.7.sticky=0.25',
    means: 'a pin stuck down and sticky: the later stands',
    state: { faults: [fault('pin.sticky', [7], 0.25)] },
    canonical: 'break=pin.7.sticky%3D0.25',
    said: 1,
  },
  {
    text: 'break=pivots.loose=0.4',
    means: 'pins and rockers rattle',
    state: { faults: [fault('pivots.loose', [], 0.4)] },
    canonical: 'break=pivots.loose%3D0.4',
  },
  {
    text: 'break=pivots.loose=0.6&break=rocker.3.worn=0.5',
    means: 'loose pivots, and a rocker worn besides',
    state: { faults: [fault('pivots.loose', [], 0.6), fault('rocker.worn', [3], 0.5)] },
    canonical: 'break=pivots.loose%3D0.6&break=rocker.3.worn%3D0.5',
  },
  {
    text: 'break=pivots.loose=0.4&break=pivots.loose=0.2',
    means: 'one amount given twice: the later stands',
    state: { faults: [fault('pivots.loose', [], 0.2)] },
    canonical: 'break=pivots.loose%3D0.2',
    said: 1,
  },
  {
    text: 'first=R13',
    means: 'a bed on which R13 is of column 1',
    state: { columnOne: toNeedle(112) },
  },
  {
    text: 'needles=L50-R50&first=L11&break=strip.3.seized',
    means: 'L11 of column 1, which is the same as R14; the order of the keys does not matter',
    state: {
      bed: { first: toNeedle(50), last: toNeedle(149) },
      at: 38,
      columnOne: toNeedle(113),
      faults: [fault('strip.seized', [3])],
    },
    canonical: 'break=strip.3.seized&needles=L50-R50&first=R14',
  },
  {
    text: 'first=R5&first=R29&first=L3&pass=2',
    means: 'the needle of column 1 said thrice: the last stands',
    state: { pass: 2, at: 211, columnOne: toNeedle(121) },
    canonical: 'pass=2&first=R22',
    said: 1,
  },
]

/** Machines of which something was measured. */
const measured: readonly GoldenLink[] = [
  {
    text: 'own=1_pitch-5_presserLeft-1.1',
    means: 'needles 5 mm apart, and a presser that dips 1.1 mm moving left',
    state: { own: { pitch: 5, presserLeft: 1.1 } },
  },
  {
    text: 'break=strip.3.seized&own=1_gate1-0.6_stripReturn-9_stripReturn-9',
    means: 'a first gate 0.6 mm down, strips slower by themselves, and strip 3 seized',
    state: { own: { stripReturn: 9, gate1: 0.6 }, faults: [fault('strip.seized', [3])] },
    canonical: 'break=strip.3.seized&own=1_stripReturn-9_gate1-0.6',
  },
  {
    text: 'own=1_pitch-4.5_reach-1.3_reach-1.4',
    means: 'a pitch as usual, and two values for one reach: the later stands',
    state: { own: { reach: 1.4 } },
    canonical: 'own=1_reach-1.4',
    said: 1,
  },
  {
    text: 'own=1_pinLow-4_sweepEdge-2.1',
    means: 'a low pin higher than a high one: left out, and the rest is read',
    state: { own: { sweepEdge: 2.1 } },
    canonical: 'own=1_sweepEdge-2.1',
    said: 1,
  },
  {
    text: 'own=1_gateLag-99_colour-3_gate2',
    means: 'a value beyond any machine, which is clamped, and two that are none',
    state: { own: { gateLag: 6 } },
    canonical: 'own=1_gateLag-6',
    said: 2,
  },
  {
    text: 'own=1_gateLag-2.5',
    means: 'a first gate two and a half needles behind the presser',
    state: { own: { gateLag: 2.5 } },
  },
  {
    text: 'own=1_bed-160_pitch-5',
    means: 'a bed of 160 needles, 5 mm apart, all of them in use',
    state: { at: 8, bed: bedOf('L80', 'R80'), own: { needles: 160, pitch: 5 } },
  },
  {
    text: 'break=needle.L125.bent&at=L120&needles=L125-R3&own=1_bed-250',
    means: 'the longest bed, its first needle bent, and the carriage near it',
    state: {
      at: -20,
      bed: bedOf('L125', 'R3'),
      faults: [fault('needle.bent', [-25])],
      own: { needles: 250 },
    },
    canonical: 'at=L120&break=needle.L125.bent&needles=L125-R3&own=1_bed-250',
  },
  {
    text: 'own=1_bed-60&needles=L40-R30&break=needle.R31.bent&first=L31&at=R60',
    means:
      'the shortest bed, with needles named that it lacks: they are left out, and the carriage brought to its mark',
    state: { at: 141, bed: bedOf('L30', 'R30'), own: { needles: 60 } },
    canonical: 'at=R42&own=1_bed-60',
    said: 4,
  },
  {
    text: 'own=1_bed-161_pitch-5',
    means: 'a bed that can’t be parted in two halves: left out, and the pitch is read',
    state: { own: { pitch: 5 } },
    canonical: 'own=1_pitch-5',
    said: 1,
  },
  {
    text: 'own=1_bed-160_bed-400&pass=2',
    means: 'two lengths of one bed, the later beyond the longest: clamped, and it stands',
    state: { pass: 2, at: 236, bed: bedOf('L125', 'R125'), own: { needles: 250 } },
    canonical: 'pass=2&own=1_bed-250',
    said: 2,
  },
  {
    text: 'own=2_pitch-5&pass=3',
    means: 'measured values of a form that is not known',
    state: { pass: 3 },
    canonical: 'pass=3',
    said: 1,
  },
]

export const golden: readonly GoldenLink[] = [...cards, ...places, ...broken, ...rest, ...asItIs, ...measured]
