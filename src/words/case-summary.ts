import type { FaultKindName } from '../mechanism/fault-kinds.ts'

/** How long a repair takes, about, from the shortest to the longest. */
const repairTimes = ['at once', 'within an hour', 'hours', 'half a day'] as const
type RepairTime = (typeof repairTimes)[number]

/** What keeps a fault from coming back. */
type Keep = 'oil' | 'bar' | 'card' | 'turn' | 'gently' | 'belt' | 'setting'

/** A kind of fault in short, for someone who only wants to know how bad it is. */
interface Summary {
  /** In a sentence without needles, rows or columns. */
  readonly short: string
  readonly time: RepairTime
  readonly keep: Keep
}

const pawl: Summary = {
  short: 'The card does not move on when you turn at one end, so each row of the pattern comes twice.',
  time: 'hours',
  keep: 'oil',
}
const crooked: Summary = {
  short: 'The card lies crooked in the machine, so its holes are not all read.',
  time: 'at once',
  keep: 'card',
}
const presser: Summary = {
  short: 'A part of the carriage is worn for one direction, so every other row has no pattern.',
  time: 'within an hour',
  keep: 'gently',
}

/** Every kind of fault in short. Times are common practice, from memory. */
const summaries: Readonly<Record<FaultKindName, Summary>> = {
  'card.torn': {
    short: 'The card is torn, so the machine reads a hole too many.',
    time: 'at once',
    keep: 'card',
  },
  'card.blocked': {
    short: 'A hole in the card is filled or covered, so the machine cannot read it.',
    time: 'at once',
    keep: 'card',
  },
  'card.side': crooked,
  'card.skew': crooked,
  'card.reversed': {
    short: 'The card is in the wrong way round. Nothing is broken.',
    time: 'at once',
    keep: 'card',
  },
  'card.locked': {
    short: 'The card does not move on, so one row of the pattern comes again and again.',
    time: 'at once',
    keep: 'card',
  },
  'pawl.right': pawl,
  'pawl.left': pawl,
  'pawl.double': {
    short: 'The card moves on by two rows at a time, so every other row of the pattern is missing.',
    time: 'hours',
    keep: 'oil',
  },
  'pawl.skips': {
    short: 'Once the card did not move on, so all of the pattern after that is a row late.',
    time: 'hours',
    keep: 'oil',
  },
  'pawl.jumps': {
    short: 'Once the card moved on too far, so a row of the pattern is missing.',
    time: 'hours',
    keep: 'oil',
  },
  'turn.twice': {
    short: 'The machine is set to knit each row of the pattern twice. Nothing is broken.',
    time: 'at once',
    keep: 'setting',
  },
  'turn.short': {
    short: 'The carriage was turned a little too soon. Nothing is broken.',
    time: 'at once',
    keep: 'turn',
  },
  'pin.low': {
    short:
      'A small pin that reads the card is stuck, so one stitch of each repeat never comes in the pattern colour.',
    time: 'hours',
    keep: 'oil',
  },
  'pin.high': {
    short:
      'A small pin that reads the card is stuck, so one stitch of each repeat always comes in the pattern colour.',
    time: 'hours',
    keep: 'oil',
  },
  'pin.sticky': {
    short:
      'A small pin that reads the card sticks now and then, so a stitch of each repeat is missing in some rows.',
    time: 'hours',
    keep: 'oil',
  },
  'pin.over': {
    short: 'A small spring has gone, so stray stitches come in the pattern colour.',
    time: 'half a day',
    keep: 'oil',
  },
  'sweep.worn': {
    short: 'A part that goes past the card is worn, so the pattern is weak or missing.',
    time: 'half a day',
    keep: 'oil',
  },
  'belt.off': {
    short: 'A belt is not engaged, so there is no pattern. Most often nothing is broken.',
    time: 'at once',
    keep: 'setting',
  },
  'belt.timing': {
    short: 'A belt is out of step, so the pattern is missing or in the wrong place.',
    time: 'hours',
    keep: 'belt',
  },
  'belt.slack': {
    short: 'A belt is slack, so the pattern is missing.',
    time: 'hours',
    keep: 'belt',
  },
  'pivots.loose': {
    short:
      'Small parts that read the card have worn loose, so stitches of the pattern are missing here and there.',
    time: 'half a day',
    keep: 'oil',
  },
  'rocker.dead': {
    short: 'A small lever is broken, so one stitch of each repeat never comes in the pattern colour.',
    time: 'half a day',
    keep: 'gently',
  },
  'rocker.worn': {
    short: 'A small lever is worn, so one stitch of each repeat fails to come in the pattern colour.',
    time: 'half a day',
    keep: 'oil',
  },
  'strip.seized': {
    short: 'A long bar inside is stuck in old oil, so stitches of the pattern are missing at even distances.',
    time: 'hours',
    keep: 'oil',
  },
  'strip.over': {
    short: 'A long bar inside is stuck, so stray stitches come at even distances.',
    time: 'hours',
    keep: 'oil',
  },
  'strip.slow': {
    short: 'Old, thick oil makes a long bar inside slow, so stray stitches come when you knit fast.',
    time: 'hours',
    keep: 'oil',
  },
  'carriage.plain': {
    short: 'The carriage is set to plain knitting, so there is no pattern. Nothing is broken.',
    time: 'at once',
    keep: 'setting',
  },
  'catch.broken': {
    short:
      'A tiny part of one needle’s place has broken off, so that stitch never comes in the pattern colour.',
    time: 'half a day',
    keep: 'gently',
  },
  'needle.bent': {
    short: 'One needle is bent, so its stitch never comes in the pattern colour.',
    time: 'within an hour',
    keep: 'gently',
  },
  'needle.gone': {
    short: 'One needle is broken, and the piece must be found before the carriage moves again.',
    time: 'within an hour',
    keep: 'gently',
  },
  'presser.right.worn': presser,
  'presser.left.worn': presser,
  'needle.stiff': {
    short:
      'One needle moves stiffly, so its stitch comes in the pattern colour too often when you knit fast.',
    time: 'within an hour',
    keep: 'oil',
  },
  'retainer.worn': {
    short: 'The padded bar over the needles is tired, so stray stitches come here and there.',
    time: 'within an hour',
    keep: 'bar',
  },
  'gate.1.low': {
    short: 'A guide in the carriage hangs too low, so the pattern is missing.',
    time: 'within an hour',
    keep: 'gently',
  },
  'gate.1.high': {
    short: 'A guide in the carriage stands too high, so every stitch comes in the pattern colour.',
    time: 'within an hour',
    keep: 'gently',
  },
}

const timeWords: Readonly<Record<RepairTime, string>> = {
  'at once': 'It takes a few minutes, and you can often do it yourself.',
  'within an hour': 'Once the part is there, it is usually done within an hour.',
  hours: 'It usually takes an hour or two, with a cover off.',
  'half a day': 'It may take half a day or more, as much has to come off first.',
}

const keepWords: Readonly<Record<Keep, string>> = {
  oil: 'So that it lasts, push the carriage across every few weeks, keep the machine covered and dry, and use a little thin machine oil, never a spray.',
  bar: 'So that it lasts, have the padded bar looked at once a year: its padding lasts only a few years, used or not.',
  card: 'So that it lasts, store cards flat, dry and away from heat, and mend a small tear at once.',
  turn: 'So that it lasts, push the carriage right past the mark at both ends, every time.',
  gently: 'So that it lasts, stop at once when the carriage catches, and find out why before you push on.',
  setting: 'So that it lasts, look at the settings first whenever the pattern fails to come.',
  belt: 'So that it lasts, put the carriage back where it came off, and have the belt looked at once a year.',
}

const watchWords: Readonly<Record<Keep, string>> = {
  oil: 'Watch for stitches of the pattern that fail at even distances, most of all after a long rest: something is sticking again, and as long as it still moves it is a small job.',
  bar: 'Watch for stray stitches in the pattern colour here and there: the padding is giving way again.',
  card: 'Watch for a stitch of each repeat that is wrong all the way up: look at the card first, for a tear, a crease or a filled hole.',
  turn: 'Watch for a row of the pattern that comes twice or not at all: a turn came too soon.',
  gently:
    'Watch for an upright line of wrong stitches in one place, and for a carriage that catches: stop there, and look before you push on.',
  setting: 'Watch for a pattern that fails all at once: most often a setting has moved.',
  belt: 'Watch for a pattern that stands a few stitches to one side, or does not come at all: the belt has slipped.',
}

/** What is wrong, in short, without needles, rows or columns. */
export const shortWords = (kinds: readonly FaultKindName[]): string =>
  [...new Set(kinds.map((kind) => summaries[kind].short))].join(' ')

/** How long the repair takes, about: as long as the longest of what is wrong; empty where nothing is. */
export const repairTimeWords = (kinds: readonly FaultKindName[]): string => {
  const longest = [...repairTimes]
    .reverse()
    .find((time) => kinds.some((kind) => summaries[kind].time === time))
  return longest === undefined ? '' : timeWords[longest]
}

/** What the owner can do so that it does not come back, in a sentence for each kind of care. */
export const keepingWords = (kinds: readonly FaultKindName[]): string =>
  [...new Set(kinds.map((kind) => keepWords[summaries[kind].keep]))].join(' ')

/** What would show that it comes back, in a sentence for each kind of care. */
export const watchingWords = (kinds: readonly FaultKindName[]): string =>
  [...new Set(kinds.map((kind) => watchWords[summaries[kind].keep]))].join(' ')
