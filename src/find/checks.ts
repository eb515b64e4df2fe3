import type { FaultKindName } from '../mechanism/fault-kinds.ts'

/** What has to come off the machine for a check. */
type Opened = 'nothing' | 'one-cover' | 'covers' | 'reader'

/** The cautions that go with checks, by their ids in the site's texts. */
export type CautionId =
  | 'dust'
  | 'fingers'
  | 'force'
  | 'hooks'
  | 'lifting'
  | 'notes'
  | 'old-plastic'
  | 'reader'
  | 'springs'
  | 'unplug'

interface Effort<Id extends string> {
  readonly id: Id
  /** Common practice from memory, no source. */
  readonly minutes: number
  /** The most minutes, where it may take much longer. Common practice from memory. */
  readonly mostMinutes?: number
  /** How much can be made worse by it: 1 where nothing is touched that can break. Common practice from memory. */
  readonly risk: number
  readonly opened: Opened
  readonly cautions: readonly CautionId[]
}

const passCheckIds = [
  'next-row',
  'row-again',
  'row-fast',
  'row-slow',
  'other-row',
  'holes-right',
  'holes-left',
  'blank-right',
  'blank-left',
  'no-card',
] as const
export type PassCheckId = (typeof passCheckIds)[number]

/** A look at the bed after one more pass, at any speed. */
interface PassCheck extends Effort<PassCheckId> {
  readonly kind: 'pass'
}

type PartCheckId =
  | 'settings'
  | 'card'
  | 'stepping'
  | 'retainer'
  | 'broken-piece'
  | 'needle'
  | 'swap-needle'
  | 'pins'
  | 'belt'
  | 'strips'
  | 'carriage'
  | 'cover'
  | 'reader'

/** A look at parts, or a hand on them: it shows these kinds of fault and the part they are in, but not how much. */
export interface PartCheck extends Effort<PartCheckId> {
  readonly kind: 'part'
  readonly shows: readonly (FaultKindName | 'card.out')[]
}

export type Check = PassCheck | PartCheck
export type CheckId = Check['id']

const passMinutes: Readonly<Record<PassCheckId, number>> = {
  'next-row': 0.5,
  'row-again': 1,
  'row-fast': 1,
  'row-slow': 1,
  'other-row': 1,
  'holes-right': 2,
  'holes-left': 2,
  'blank-right': 2,
  'blank-left': 2,
  'no-card': 1,
}

/** What of the minutes of a pass with another card goes to putting that card in. */
export const minutesForCard = 1

const passChecks = passCheckIds.map((id): PassCheck => ({
  kind: 'pass',
  id,
  minutes: passMinutes[id],
  risk: 1,
  opened: 'nothing',
  cautions: ['fingers'],
}))

const pins: readonly FaultKindName[] = ['pin.low', 'pin.high', 'pin.sticky', 'pin.over']
const rockers: readonly FaultKindName[] = ['rocker.dead', 'rocker.worn', 'pivots.loose']
const strips: readonly FaultKindName[] = ['strip.seized', 'strip.over', 'strip.slow']
const belt: readonly FaultKindName[] = ['belt.off', 'belt.timing', 'belt.slack']

/** The checks by eye or hand, without a pass. */
export const partChecks: readonly PartCheck[] = [
  {
    kind: 'part',
    id: 'settings',
    minutes: 0.5,
    risk: 1,
    opened: 'nothing',
    cautions: [],
    shows: ['carriage.plain', 'belt.off', 'turn.twice', 'card.locked'],
  },
  {
    kind: 'part',
    id: 'card',
    minutes: 1,
    risk: 1,
    opened: 'nothing',
    cautions: [],
    shows: ['card.out', 'card.torn', 'card.blocked', 'card.side', 'card.skew', 'card.reversed'],
  },
  {
    kind: 'part',
    id: 'stepping',
    minutes: 2,
    risk: 1,
    opened: 'nothing',
    cautions: ['fingers', 'force'],
    shows: [
      'card.locked',
      'turn.twice',
      'pawl.right',
      'pawl.left',
      'pawl.double',
      'pawl.skips',
      'pawl.jumps',
    ],
  },
  {
    kind: 'part',
    id: 'retainer',
    minutes: 3,
    risk: 1.1,
    opened: 'nothing',
    cautions: ['hooks', 'dust', 'fingers'],
    shows: ['retainer.worn'],
  },
  {
    kind: 'part',
    id: 'broken-piece',
    minutes: 2,
    risk: 1,
    opened: 'nothing',
    cautions: ['hooks', 'force'],
    shows: ['needle.gone'],
  },
  {
    kind: 'part',
    id: 'needle',
    minutes: 2,
    risk: 1.1,
    opened: 'nothing',
    cautions: ['hooks', 'fingers'],
    shows: ['needle.gone', 'needle.stiff'],
  },
  {
    kind: 'part',
    id: 'swap-needle',
    minutes: 4,
    risk: 1.3,
    opened: 'nothing',
    cautions: ['hooks', 'dust'],
    shows: ['needle.bent', 'needle.gone', 'needle.stiff'],
  },
  {
    kind: 'part',
    id: 'pins',
    minutes: 3,
    risk: 1.2,
    opened: 'nothing',
    cautions: ['fingers', 'force'],
    shows: pins,
  },
  {
    kind: 'part',
    id: 'belt',
    minutes: 3,
    risk: 1.2,
    opened: 'nothing',
    cautions: ['unplug', 'fingers', 'notes'],
    shows: belt,
  },
  {
    kind: 'part',
    id: 'strips',
    minutes: 5,
    risk: 1.3,
    opened: 'one-cover',
    cautions: ['unplug', 'force', 'hooks'],
    shows: strips,
  },
  {
    kind: 'part',
    id: 'carriage',
    minutes: 6,
    risk: 1.5,
    opened: 'nothing',
    cautions: ['unplug', 'hooks', 'lifting'],
    shows: ['presser.right.worn', 'presser.left.worn', 'gate.1.low', 'gate.1.high'],
  },
  {
    kind: 'part',
    id: 'cover',
    minutes: 20,
    risk: 3,
    opened: 'covers',
    cautions: ['unplug', 'fingers', 'springs', 'old-plastic', 'notes'],
    shows: [...strips, ...belt, 'catch.broken', 'sweep.worn', 'pawl.right', 'pawl.left', 'pawl.double'],
  },
  {
    kind: 'part',
    id: 'reader',
    minutes: 90,
    mostMinutes: 120,
    risk: 6,
    opened: 'reader',
    cautions: ['reader', 'unplug', 'springs', 'old-plastic', 'notes'],
    shows: [...pins, ...rockers, 'sweep.worn', 'pawl.right', 'pawl.left', 'pawl.double'],
  },
]

/**
 * The one table of checks, the plainest first and the card reader last of all: the search, the quiz, the chart of faults
 * and the check list read it. Minutes, risks and what comes off are common practice from memory, no source. Strips are reached with the plug out and one cover off.
 */
export const checks: readonly Check[] = [...passChecks, ...partChecks]

const checksById: ReadonlyMap<string, Check> = new Map(checks.map((check) => [check.id, check]))

/** Whether a text is the id of a check. */
export const isCheckId = (text: string): text is CheckId => checksById.has(text)

/** The check of an id. Throws where there is none. */
export const checkOf = (id: CheckId): Check => {
  const check = checksById.get(id)
  if (!check) throw new RangeError(`there is no check ${id}`)
  return check
}

/** Whether anything has to come off the machine for a check. */
export const opensMachine = ({ opened }: Pick<Check, 'opened'>): boolean => opened !== 'nothing'
