import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { at } from '../mechanism/lookup.ts'
import type { CautionId, Check } from './checks.ts'

/** What comes off the machine, or out of it, for a repair; what is further in comes later. */
export const openings = ['bar', 'carriage', 'cover', 'covers', 'reader'] as const
export type Opening = (typeof openings)[number]

/** How long it takes to take each off and put it back, in minutes. Common practice from memory, no source. */
export const openingMinutes: Readonly<Record<Opening, number>> = {
  bar: 3,
  carriage: 4,
  cover: 10,
  covers: 15,
  reader: 60,
}

/** The cautions that go with repairs, by their ids in the site's texts: cleaning adds three to those of the checks. */
export type RepairCaution = CautionId | 'oil' | 'plastics' | 'solvents'

/** What may have to be bought. */
export const partIds = [
  'card',
  'retainer-bar',
  'needle',
  'belt',
  'presser',
  'strip',
  'catch',
  'pawl',
  'pin',
  'rocker',
] as const
export type PartId = (typeof partIds)[number]

/** A part that a repair takes: one for all its places or one for each, for certain or perhaps. */
interface PartTaken {
  readonly part: PartId
  readonly per: 'repair' | 'place'
  readonly isSure: boolean
}

/** What to lay out. */
export const toolIds = [
  'lamp',
  'tweezers',
  'magnet',
  'screwdrivers',
  'punch',
  'feeler',
  'brush',
  'cloth',
  'solvent',
  'oil',
  'tray',
  'marker',
  'camera',
  'gloves',
  'glasses',
] as const
export type ToolId = (typeof toolIds)[number]

export const repairIds = [
  'settings',
  'card',
  'retainer',
  'needles',
  'belt',
  'carriage',
  'strips',
  'catches',
  'turn',
  'reader',
] as const
export type RepairId = (typeof repairIds)[number]

/** A way to work on the machine. */
export interface Repair {
  readonly id: RepairId
  /** The kinds of fault that it mends; `card.out` is no card in the reader. */
  readonly mends: readonly (FaultKindName | 'card.out')[]
  /** The work on the first place, without what has to be opened, and on each further one. Common practice from memory, no source. */
  readonly minutes: { readonly first: number; readonly further: number }
  readonly opens: readonly Opening[]
  /** How much can be made worse by it, as of checks. Common practice from memory, no source. */
  readonly risk: number
  readonly cautions: readonly RepairCaution[]
  readonly parts: readonly PartTaken[]
  readonly tools: readonly ToolId[]
}

/**
 * The one table of ways to work, what is done from outside first and the card reader last. Each kind of fault is mended
 * by one of them; wear by none. Minutes, risks and parts are common practice from memory, no source.
 */
export const repairs: readonly Repair[] = [
  {
    id: 'settings',
    mends: ['carriage.plain', 'belt.off', 'turn.twice', 'card.locked'],
    minutes: { first: 1, further: 1 },
    opens: [],
    risk: 1,
    cautions: [],
    parts: [],
    tools: [],
  },
  {
    id: 'card',
    mends: ['card.out', 'card.torn', 'card.blocked', 'card.side', 'card.skew', 'card.reversed'],
    minutes: { first: 10, further: 10 },
    opens: [],
    risk: 1,
    cautions: [],
    parts: [{ part: 'card', per: 'repair', isSure: false }],
    tools: ['lamp', 'punch'],
  },
  {
    id: 'retainer',
    mends: ['retainer.worn'],
    minutes: { first: 5, further: 5 },
    opens: ['bar'],
    risk: 1.1,
    cautions: ['hooks', 'dust', 'fingers'],
    parts: [{ part: 'retainer-bar', per: 'repair', isSure: true }],
    tools: ['gloves'],
  },
  {
    id: 'needles',
    mends: ['needle.bent', 'needle.gone', 'needle.stiff'],
    minutes: { first: 4, further: 2 },
    opens: ['bar'],
    risk: 1.3,
    cautions: ['hooks', 'dust', 'force'],
    parts: [{ part: 'needle', per: 'place', isSure: true }],
    tools: ['lamp', 'tweezers', 'magnet'],
  },
  {
    id: 'belt',
    mends: ['belt.timing', 'belt.slack'],
    minutes: { first: 20, further: 20 },
    opens: [],
    risk: 1.5,
    cautions: ['unplug', 'fingers', 'notes'],
    parts: [{ part: 'belt', per: 'repair', isSure: false }],
    tools: ['marker', 'camera', 'screwdrivers'],
  },
  {
    id: 'carriage',
    mends: ['presser.right.worn', 'presser.left.worn', 'gate.1.low', 'gate.1.high'],
    minutes: { first: 20, further: 10 },
    opens: ['carriage'],
    risk: 2,
    cautions: ['unplug', 'hooks', 'lifting', 'notes'],
    parts: [{ part: 'presser', per: 'repair', isSure: false }],
    tools: ['screwdrivers', 'feeler', 'camera', 'tray'],
  },
  {
    id: 'strips',
    mends: ['strip.seized', 'strip.slow', 'strip.over'],
    minutes: { first: 30, further: 5 },
    opens: ['cover'],
    risk: 2,
    cautions: ['unplug', 'force', 'hooks', 'solvents', 'plastics', 'oil'],
    parts: [],
    tools: ['screwdrivers', 'brush', 'cloth', 'solvent', 'oil', 'gloves', 'glasses'],
  },
  {
    id: 'catches',
    mends: ['catch.broken'],
    minutes: { first: 40, further: 10 },
    opens: ['cover', 'covers'],
    risk: 3,
    cautions: ['unplug', 'fingers', 'springs', 'old-plastic', 'notes'],
    parts: [
      { part: 'catch', per: 'place', isSure: true },
      { part: 'strip', per: 'repair', isSure: false },
    ],
    tools: ['screwdrivers', 'tweezers', 'tray', 'camera', 'glasses'],
  },
  {
    id: 'turn',
    mends: ['pawl.right', 'pawl.left', 'pawl.double', 'pawl.skips', 'pawl.jumps', 'turn.short'],
    minutes: { first: 30, further: 10 },
    opens: ['cover', 'covers'],
    risk: 2.5,
    cautions: ['unplug', 'fingers', 'springs', 'old-plastic', 'notes'],
    parts: [{ part: 'pawl', per: 'repair', isSure: false }],
    tools: ['screwdrivers', 'brush', 'oil', 'tray', 'camera', 'glasses'],
  },
  {
    id: 'reader',
    mends: [
      'pin.low',
      'pin.high',
      'pin.sticky',
      'pin.over',
      'sweep.worn',
      'rocker.dead',
      'rocker.worn',
      'pivots.loose',
    ],
    minutes: { first: 90, further: 5 },
    opens: ['cover', 'covers', 'reader'],
    risk: 6,
    cautions: ['reader', 'unplug', 'springs', 'old-plastic', 'notes', 'solvents', 'plastics', 'oil'],
    parts: [
      { part: 'pin', per: 'place', isSure: false },
      { part: 'rocker', per: 'place', isSure: false },
    ],
    tools: [
      'screwdrivers',
      'marker',
      'camera',
      'tray',
      'tweezers',
      'brush',
      'cloth',
      'solvent',
      'oil',
      'gloves',
      'glasses',
    ],
  },
]

/** The way to work of an id. */
export const repairOf = (id: RepairId): Repair => at(repairs, repairIds.indexOf(id))

const byKind: ReadonlyMap<string, RepairId> = new Map(
  repairs.flatMap(({ id, mends }) => mends.map((kind) => [kind, id] as const)),
)

/** The way to work that mends a kind of fault, or puts a card in where there is none. Throws where no way is known. */
export const repairOfKind = (kind: FaultKindName | 'card.out'): RepairId => {
  const id = byKind.get(kind)
  if (!id) throw new RangeError(`nothing is known to mend ${kind}`)
  return id
}

/** Everything that has to come off for some ways to work, what is further in last. */
export const openingsOf = (ids: readonly RepairId[]): Opening[] =>
  openings.filter((opening) => ids.some((id) => repairOf(id).opens.includes(opening)))

/** What the openings come to in the words of the checks. */
export const openedBy = (off: readonly Opening[]): Check['opened'] => {
  if (off.includes('reader')) return 'reader'
  if (off.includes('covers')) return 'covers'
  return off.includes('cover') ? 'one-cover' : 'nothing'
}
