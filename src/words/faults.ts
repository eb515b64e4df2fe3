import { type Fault, faultId, indexNames } from '../mechanism/fault.ts'
import { contradict, contradictionWords } from '../mechanism/fault-list.ts'
import { withUnit } from './lists.ts'
import { faultKinds, type FaultKindName, type Stage } from '../mechanism/fault-kinds.ts'
import { lower } from './parts.ts'

interface FaultWords {
  /** What kind of fault it is, without its numbers. */
  readonly title: string
  /** The fault in one short phrase; `n` is its first place, `m` its second, `q` its amount with the unit. */
  readonly phrase: (n: string, m: string, q: string) => string
  /** What one sees on the needles, in a phrase. */
  readonly shows: string
}

/** The words of every kind of fault. */
export const faultWords: Readonly<Record<FaultKindName, FaultWords>> = {
  'card.torn': {
    title: 'Card torn: a hole too many',
    phrase: (n, m) => `Card torn at row ${n}, column ${m}`,
    shows: 'every 24th needle selected without being asked, in that card row only',
  },
  'card.blocked': {
    title: 'Card hole blocked',
    phrase: (n, m) => `Card hole blocked at row ${n}, column ${m}`,
    shows: 'every 24th needle missed, in that card row only',
  },
  'card.side': {
    title: 'Card shifted to the side',
    phrase: (_n, _m, q) => `Card ${q} to the side`,
    shows: 'nothing at all until the holes no longer meet the pins, then nothing selected',
  },
  'card.skew': {
    title: 'Card askew',
    phrase: (_n, _m, q) => `Card askew by ${q}`,
    shows: 'the outer columns stop selecting, the middle ones go on',
  },
  'card.reversed': {
    title: 'Card the wrong way round',
    phrase: () => 'Card the wrong way round',
    shows: 'the pattern mirrored',
  },
  'card.locked': {
    title: 'Card locked: it does not step',
    phrase: () => 'Card locked',
    shows: 'the first row over and over',
  },
  'pawl.skips': {
    title: 'Card did not step at one turn',
    phrase: (n) => `Card not moved on before pass ${n}`,
    shows: 'one card row read twice, and the rest one row late from there',
  },
  'pawl.jumps': {
    title: 'Card stepped two rows at one turn',
    phrase: (n) => `Card moved on by two rows before pass ${n}`,
    shows: 'one card row missing, and the rest one row early from there',
  },
  'turn.twice': {
    title: 'Set to read each row twice',
    phrase: () => 'Set to read each row twice',
    shows: 'each card row read twice, on purpose',
  },
  'pawl.right': {
    title: 'Pawl dead at right-hand turns',
    phrase: () => 'Right pawl dead',
    shows: 'each card row read twice',
  },
  'pawl.left': {
    title: 'Pawl dead at left-hand turns',
    phrase: () => 'Left pawl dead',
    shows: 'each card row read twice',
  },
  'pawl.double': {
    title: 'Pawls step two rows',
    phrase: () => 'Pawls step two rows a turn',
    shows: 'every other card row missing',
  },
  'turn.short': {
    title: 'Carriage turned short of the mark',
    phrase: (n) => `Turned short before pass ${n}`,
    shows: 'one card row read twice, and the rest one row late from there',
  },
  'pin.low': {
    title: 'Pin stuck down',
    phrase: (n) => `Pin ${n} stuck down`,
    shows: 'every 24th needle never selected',
  },
  'pin.high': {
    title: 'Pin stuck up',
    phrase: (n) => `Pin ${n} stuck up`,
    shows: 'every 24th needle always selected',
  },
  'pin.sticky': {
    title: 'Pin held by old oil, now and then',
    phrase: (n, _m, q) => `Pin ${n} fails to rise at ${q} of the turns`,
    shows: 'every 24th needle missed in some rows and not in others',
  },
  'pin.over': {
    title: 'Pin left pushed over: its leaf spring gone',
    phrase: (n) => `Pin ${n} stays pushed over`,
    shows: 'from its first hole on, every eighth needle selected',
  },
  'sweep.worn': {
    title: 'Sweep edge worn',
    phrase: (_n, _m, q) => `Sweep worn by ${q}`,
    shows: 'weak selection everywhere, then none',
  },
  'belt.off': {
    title: 'Belt not engaged',
    phrase: () => 'Belt not engaged',
    shows: 'nothing selected, and the card never moves on',
  },
  'belt.timing': {
    title: 'Belt refitted out of step',
    phrase: (_n, _m, q) => `Belt out of step by ${q}`,
    shows: 'nothing selected, or the pattern moved by eights',
  },
  'belt.slack': {
    title: 'Belt slack',
    phrase: (_n, _m, q) => `Belt slack of ${q}`,
    shows: 'nothing at all at first, then nothing selected',
  },
  'pivots.loose': {
    title: 'Pivots loose: pins and rockers rattle',
    phrase: (_n, _m, q) => `Pivots loose by ${q}`,
    shows: 'needles here and there missed, others in every pass',
  },
  'rocker.dead': {
    title: 'Rocker broken: no push',
    phrase: (n) => `Rocker ${n} broken`,
    shows: 'every 24th needle never selected',
  },
  'rocker.worn': {
    title: 'Rocker worn: more lost motion',
    phrase: (n, _m, q) => `Rocker ${n} worn by ${q}`,
    shows: 'every 24th needle never selected, once worn enough',
  },
  'strip.seized': {
    title: 'Strip seized',
    phrase: (n) => `Strip ${n} seized`,
    shows: 'every eighth needle never selected',
  },
  'strip.over': {
    title: 'Strip stuck shifted',
    phrase: (n) => `Strip ${n} stuck shifted`,
    shows: 'every eighth needle always selected',
  },
  'strip.slow': {
    title: 'Strip slow: thick oil',
    phrase: (n, _m, q) => `Strip ${n} slow, ${q}`,
    shows: 'a ghost of the pattern eight needles further on, only when fast',
  },
  'carriage.plain': {
    title: 'Carriage not set to pattern',
    phrase: () => 'Carriage not set to pattern',
    shows: 'nothing selected, either way',
  },
  'catch.broken': {
    title: 'Catch broken',
    phrase: (n) => `Catch of ${n} broken`,
    shows: 'one needle never selected',
  },
  'needle.bent': {
    title: 'Needle bent: its butt out of the catch’s reach',
    phrase: (n) => `Needle ${n} bent`,
    shows: 'one needle never selected',
  },
  'needle.gone': {
    title: 'Needle without a butt',
    phrase: (n) => `Needle ${n} has no butt`,
    shows: 'one needle that never moves',
  },
  'presser.right.worn': {
    title: 'Presser worn for passes to the right',
    phrase: (_n, _m, q) => `Presser worn by ${q}, to the right`,
    shows: 'nothing selected in passes to the right',
  },
  'presser.left.worn': {
    title: 'Presser worn for passes to the left',
    phrase: (_n, _m, q) => `Presser worn by ${q}, to the left`,
    shows: 'nothing selected in passes to the left',
  },
  'needle.stiff': {
    title: 'Needle stiff: its butt springs up slowly',
    phrase: (n, _m, q) => `Needle ${n} stiff, ${q}`,
    shows: 'one needle selected too often, only when fast',
  },
  'retainer.worn': {
    title: 'Retainer bar worn',
    phrase: (_n, _m, q) => `Retainer bar worn, ${q}`,
    shows: 'needles here and there selected too often, worse when fast',
  },
  'gate.1.low': {
    title: 'First gate hangs too low',
    phrase: (_n, _m, q) => `First gate ${q} too low`,
    shows: 'held butts are stopped too: nothing selected',
  },
  'gate.1.high': {
    title: 'First gate stands too high',
    phrase: (_n, _m, q) => `First gate ${q} too high`,
    shows: 'free butts slip under: everything selected',
  },
}

/** The stages as headings for choosing a part to break. */
export const stageTitles: Readonly<Record<Stage, string>> = {
  card: 'Card and turn',
  pin: 'Feeler pins',
  sweep: 'Sweep and belt',
  rocker: 'Rockers',
  strip: 'Strips',
  hold: 'Hold',
  gate: 'Gates',
}

/** An amount with its unit. */
export const amountText = (kind: FaultKindName, amount: number): string => {
  const unit = faultKinds[kind].amount?.unit ?? ''
  const number = String(amount).replace('-', '−')
  if (unit === 'share') return withUnit(String(Math.round(amount * 100)), '%')
  return unit === 'needles' && Math.abs(amount) === 1
    ? `${number} needle`
    : unit === ''
      ? number
      : withUnit(number, unit)
}

/** A fault in one short phrase: Strip 3 seized. */
export const faultPhrase = (fault: Fault): string => {
  const [first = '', second = ''] = indexNames(fault)
  const amount = fault.amount === null ? '' : amountText(fault.kind, fault.amount)
  return faultWords[fault.kind].phrase(first, second, amount)
}

/** What is said when a part is broken, among `before`'s faults: the fault, what was changed of it, and what it replaces. */
export const brokenWords = (before: readonly Fault[], fault: Fault, remark: string | null): string => {
  const replaced = before.filter((other) => contradict(other, fault) && faultId(other) !== faultId(fault))
  return [
    `${faultPhrase(fault)}.`,
    ...(remark === null ? [] : [`${remark}.`]),
    ...replaced.map((other) => contradictionWords(faultPhrase(other), lower(faultPhrase(fault)))),
  ].join(' ')
}
