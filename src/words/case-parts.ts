import { dimensions } from '../mechanism/dimensions.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { patterns } from './patterns.ts'

/** How the machine can be used until it is repaired. */
export type Meanwhile = 'leave' | 'plain' | 'needle' | 'slowly' | 'card' | 'as it is'

/** A kind of fault for someone who has never looked inside the machine. */
interface CaseWords {
  /** What the part does and what is wrong with it; `n` is the fault's first place, `m` its second. */
  readonly wrong: (n: string, m: string) => string
  readonly meanwhile: Meanwhile
  /** What a repair usually is about, in a sentence. */
  readonly repair: string
}

const { strips, columns } = dimensions

const strip = `It is one of ${strips} long bars inside the machine. Each brings its own needles forward, ${patterns.eighth}, when the card asks for them.`
const pin = `It is one of ${columns} small pins that feel for the holes in the card, each for one column of holes.`
const pawl = 'moves the card on by one row when the carriage turns'
const rocker = `It is one of ${columns} small levers that hand on what the pins feel to the bars that bring needles forward.`
const belt =
  'It links the carriage with the card reader, so that both always agree about which needle is next.'
const presser =
  'This part of the carriage presses each needle down for a moment, so that a small finger can catch it if the card asks for it.'
const gate =
  'It is a guide in the carriage that keeps back the needles the card has not asked for and lets the others by.'

/** What is wrong, for every kind of fault. */
export const caseParts: Readonly<Record<FaultKindName, CaseWords>> = {
  'card.torn': {
    wrong: (n, m) =>
      `It is torn in row ${n}, at column ${m}. The machine takes the torn place for a hole, which means: knit this stitch in the pattern colour.`,
    meanwhile: 'card',
    repair: 'a patch over the torn place, or a new card.',
  },
  'card.blocked': {
    wrong: (n, m) =>
      `A hole in row ${n}, at column ${m}, is covered or filled, so the machine cannot feel it. A hole means: knit this stitch in the pattern colour.`,
    meanwhile: 'card',
    repair: 'opening the hole again, or a new card.',
  },
  'card.side': {
    wrong: () =>
      'It lies too far to one side. Its holes have to stand over the small pins that feel for them, and they do not quite.',
    meanwhile: 'plain',
    repair: 'a setting: the card and what guides it are put straight.',
  },
  'card.skew': {
    wrong: () =>
      'It lies askew. Its holes have to stand over the small pins that feel for them, and towards its edges they do not.',
    meanwhile: 'plain',
    repair: 'a setting: the card and what guides it are put straight.',
  },
  'card.reversed': {
    wrong: () => 'It is in the machine the wrong way round. Nothing is broken.',
    meanwhile: 'as it is',
    repair: 'no repair at all: the card is taken out and put back with its other face up.',
  },
  'card.locked': {
    wrong: () =>
      'It does not move on. The machine reads the same row of holes again for every row that you knit.',
    meanwhile: 'plain',
    repair: 'a setting: often a lever still holds the card. If not, what holds it is cleaned and freed.',
  },
  'pawl.skips': {
    wrong: (n) =>
      `Before row ${n} the small finger that ${pawl} did not take hold, although the carriage went past its mark.`,
    meanwhile: 'plain',
    repair: 'cleaning: old oil holds the small finger, or its spring is tired and is changed.',
  },
  'pawl.jumps': {
    wrong: (n) =>
      `Before row ${n} the small finger that ${pawl} moved it on by two rows, where it should be one.`,
    meanwhile: 'plain',
    repair: 'a setting, or cleaning the stop that should hold the card after one row.',
  },
  'turn.twice': {
    wrong: () =>
      'A lever is set so that the machine reads each row of the card twice. Some patterns are meant for that. Nothing is broken.',
    meanwhile: 'as it is',
    repair: 'no repair at all: the lever is put back.',
  },
  'pawl.right': {
    wrong: () =>
      `A pawl is a small sprung finger that ${pawl}. The one that works when you turn at the right does not take hold.`,
    meanwhile: 'plain',
    repair: 'cleaning: old oil holds the small finger, or its spring is tired and is changed.',
  },
  'pawl.left': {
    wrong: () =>
      `A pawl is a small sprung finger that ${pawl}. The one that works when you turn at the left does not take hold.`,
    meanwhile: 'plain',
    repair: 'cleaning: old oil holds the small finger, or its spring is tired and is changed.',
  },
  'pawl.double': {
    wrong: () =>
      'A pawl is a small sprung finger that moves the card on when the carriage turns. Here the card goes on by two rows each time where it should go on by one.',
    meanwhile: 'plain',
    repair: 'a setting, or cleaning the stop that should hold the card after one row.',
  },
  'turn.short': {
    wrong: (n) =>
      `Before row ${n} the carriage was turned too soon. It has to go past the mark beyond the last needle, or the card stays where it is. Nothing is broken.`,
    meanwhile: 'as it is',
    repair: 'no repair at all: take the carriage right past the mark at both ends, every time.',
  },
  'pin.low': {
    wrong: () => `${pin} This one is stuck down and never notices a hole.`,
    meanwhile: 'plain',
    repair: 'cleaning: old oil or dust holds the pin. Less often the pin is bent and is changed.',
  },
  'pin.high': {
    wrong: () => `${pin} This one is stuck up, as if there were a hole in every row.`,
    meanwhile: 'plain',
    repair: 'cleaning: old oil or dust holds the pin. Less often the pin is bent and is changed.',
  },
  'pin.sticky': {
    wrong: () => `${pin} This one is held by old oil: at some turns it comes up, at others it stays down.`,
    meanwhile: 'plain',
    repair: 'cleaning: the old oil is taken off the pin and out of its slot.',
  },
  'pin.over': {
    wrong: () =>
      `${pin} Once it has been pushed aside, this one does not spring back before the carriage turns.`,
    meanwhile: 'plain',
    repair: 'a small part: the spring that presses the pin back is cleaned, or changed.',
  },
  'sweep.worn': {
    wrong: () =>
      'It is the long wedge that goes past the pins and pushes aside each one that has felt a hole. Its edge is worn, so it takes hold of the pins less well, or not at all.',
    meanwhile: 'plain',
    repair: 'cleaning first, and then a part: the wedge is changed, if one is to be had.',
  },
  'belt.off': {
    wrong: () => `${belt} It is not engaged, so the card reader stands still. Nothing is broken.`,
    meanwhile: 'plain',
    repair: 'no repair at all: the belt is put in again where the carriage takes hold of it.',
  },
  'belt.timing': {
    wrong: () => `${belt} It has been put on out of step.`,
    meanwhile: 'plain',
    repair: 'a setting: the belt is put back in step, tooth by tooth.',
  },
  'belt.slack': {
    wrong: () => `${belt} It is slack, so the card reader lags behind the carriage.`,
    meanwhile: 'plain',
    repair: 'a setting: the belt is made tight again, or changed where it has stretched.',
  },
  'pivots.loose': {
    wrong: () =>
      'The small pins that feel for the holes, and the levers that hand on what they feel, have grown loose where they turn. Part of each push is lost, now more and now less.',
    meanwhile: 'plain',
    repair:
      'cleaning first, and then parts, if they are to be had: what is worn where it turns can only be changed.',
  },
  'rocker.dead': {
    wrong: () => `${rocker} This one is broken, so what its pin feels goes no further.`,
    meanwhile: 'plain',
    repair: 'a part: the small lever is changed, once the machine is open.',
  },
  'rocker.worn': {
    wrong: () => `${rocker} This one is worn and loose, so part of the push is lost on the way.`,
    meanwhile: 'plain',
    repair: 'cleaning first, and then a part: the small lever is changed if it stays loose.',
  },
  'strip.seized': {
    wrong: () => `${strip} This one is stuck and does not move.`,
    meanwhile: 'plain',
    repair: 'cleaning: old oil has set hard. It is loosened along the whole bar and wiped off.',
  },
  'strip.over': {
    wrong: () => `${strip} This one is stuck in its forward place, as if the card asked for it all the time.`,
    meanwhile: 'plain',
    repair: 'cleaning: what holds the bar is found and taken out, and its spring is looked at.',
  },
  'strip.slow': {
    wrong: () =>
      `${strip} The oil on this one has grown thick, so it moves back too slowly after it was used.`,
    meanwhile: 'slowly',
    repair: 'cleaning: the thick oil is taken off the bar, and a very little thin oil is put on.',
  },
  'carriage.plain': {
    wrong: () =>
      'It is not set to knit a pattern: what presses the needles down and sorts them stands aside. Nothing is broken.',
    meanwhile: 'as it is',
    repair: 'no repair at all: the carriage is set to pattern.',
  },
  'catch.broken': {
    wrong: () =>
      'When the card asks for a needle, a small finger catches that needle and holds it down for a moment. The finger for this one needle is broken off. In plain knitting the needle works perfectly.',
    meanwhile: 'needle',
    repair:
      'a new long bar, if one is to be had. Talk it over first: one such needle can often be lived with.',
  },
  'needle.bent': {
    wrong: () =>
      'It is bent, so the small finger that should catch it when the card asks for it reaches past it.',
    meanwhile: 'needle',
    repair: 'a new needle, which is a small and cheap repair.',
  },
  'needle.gone': {
    wrong: () =>
      'Its foot has broken off: the small upright piece by which the carriage moves a needle. So it stays where it is and knits nothing.',
    meanwhile: 'leave',
    repair: 'a new needle. The piece that broke off is looked for and taken out.',
  },
  'presser.right.worn': {
    wrong: () => `${presser} For rows to the right it is worn and does not press far enough.`,
    meanwhile: 'plain',
    repair: 'cleaning first, and then a part: what presses is changed if its edge is worn.',
  },
  'presser.left.worn': {
    wrong: () => `${presser} For rows to the left it is worn and does not press far enough.`,
    meanwhile: 'plain',
    repair: 'cleaning first, and then a part: what presses is changed if its edge is worn.',
  },
  'needle.stiff': {
    wrong: () =>
      'It is stiff: after the carriage has pressed it down, it comes up again too slowly. Then the machine can take it for a needle that the card asked for.',
    meanwhile: 'slowly',
    repair: 'cleaning: the needle and its groove, or a new needle if it stays slow.',
  },
  'retainer.worn': {
    wrong: () =>
      'It is the padded bar that lies across all needles and holds them in place; many call it the sponge bar. Its padding has gone flat or hard, so needles come up too slowly.',
    meanwhile: 'slowly',
    repair: 'a part that wears on every machine: a new bar, or new padding.',
  },
  'gate.1.low': {
    wrong: () => `${gate} It hangs too low, so it may keep back needles that the card has asked for.`,
    meanwhile: 'plain',
    repair: 'a setting: its place is cleaned and its height is set.',
  },
  'gate.1.high': {
    wrong: () => `${gate} It stands too high, so needles may slip by that the card has not asked for.`,
    meanwhile: 'plain',
    repair: 'a setting: its place is cleaned and its height is set.',
  },
}

/** What the customer can do until then, in a sentence. */
export const meanwhileWords: Readonly<Record<Meanwhile, string>> = {
  leave:
    'Until it is repaired, leave the carriage where it is: a loose piece inside can break more when anything moves.',
  plain: 'Until it is repaired you can usually go on knitting plain, without the card.',
  needle:
    'Until it is repaired you can knit plain: in plain knitting that needle works perfectly, so leave it in use. In a pattern, place it where one line does not matter.',
  slowly: 'Until it is repaired you can usually go on knitting, with the carriage moved slowly and evenly.',
  card: 'Until it is repaired you can usually go on knitting plain, or with another card.',
  'as it is': 'The machine can usually be used as it is.',
}

/** What the customer is better not to do until then, in a sentence; empty where nothing is broken. */
export const avoidWords: Readonly<Record<Meanwhile, string>> = {
  leave:
    'Please do not push the carriage, do not feel for the piece among the needles, and do not open the machine.',
  plain: 'Please do not force the carriage if it stops, do not spray anything inside, and do not open it.',
  needle: 'Please do not bend the needle back, and do not take it out of use: that would leave a ladder.',
  slowly: 'Please do not hurry the carriage, do not spray anything inside, and do not open the machine.',
  card: 'Please do not knit on with the torn or filled card: a tear grows.',
  'as it is': '',
}
