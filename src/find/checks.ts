import { wayOfPass, type Way } from '../mechanism/bed.ts'
import { everyHole } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { speeds } from './battery.ts'
import { rowDue, type View, viewsOf } from './view.ts'
import type { Case } from './case.ts'

/** The checks that may come next. */
export type CheckId =
  | 'next-row'
  | 'row-fast'
  | 'row-slow'
  | 'holes-right'
  | 'holes-left'
  | 'blank-right'
  | 'blank-fast'
  | 'no-card'
  | 'card'
  | 'stepping'
  | 'retainer'
  | 'needle'
  | 'swap-needle'
  | 'pins'
  | 'belt'
  | 'strips'
  | 'carriage'
  | 'cover'
  | 'reader'

interface Effort {
  readonly id: CheckId
  /** Common practice from memory, no source. */
  readonly minutes: number
  /** How much can be made worse by it: 1 where nothing is touched that can break. Common practice from memory. */
  readonly risk: number
  /** Whether a cover or the card reader comes off for it. */
  readonly opens: boolean
  /** Ids of the cautions that go with it. */
  readonly cautions: readonly string[]
}

/** A look at the bed after one more pass. */
export interface LookCheck extends Effort {
  /** The view it takes in a case; null where it makes none. */
  readonly view: (known: Case) => View | null
}

/** A look at parts, or a hand on them: it shows these kinds of fault and the part they are in, but not how much. */
export interface PartCheck extends Effort {
  readonly shows: readonly FaultKindName[]
}

const another = (row: number, way: Way, speed: number): View => ({
  card: [row],
  pass: way === 1 ? 1 : 2,
  speed,
  shift: null,
})

/** The view after the last one: the next row, the other way. */
const nextRow = ({ card, passes }: Case): View | null => {
  const last = viewsOf(card, passes).at(-1)
  return card && last ? { ...last, pass: last.pass + 1 } : null
}

/** The row noted last once more, the same way, at another speed. */
const lastRowAt =
  (speed: number) =>
  ({ card, passes }: Case): View | null => {
    const last = viewsOf(card, passes).at(-1)
    if (!card || !last) return null
    return viewsOf(card, [{ row: rowDue(last), way: wayOfPass(last.pass), speed }])[0]!
  }

const look = (
  id: CheckId,
  minutes: number,
  view: LookCheck['view'],
  cautions: readonly string[] = ['fingers'],
): LookCheck => ({ id, minutes, risk: 1, opens: false, cautions, view })

const lookChecks: readonly LookCheck[] = [
  look('next-row', 0.5, nextRow),
  look('row-fast', 1, lastRowAt(speeds.fast)),
  look('row-slow', 1, lastRowAt(speeds.slow)),
  look('holes-right', 2, () => another(everyHole, 1, dimensions.speed)),
  look('holes-left', 2, () => another(everyHole, -1, dimensions.speed)),
  look('blank-right', 2, () => another(0, 1, dimensions.speed)),
  look('blank-fast', 2, () => another(0, 1, speeds.fast)),
  look('no-card', 1, () => ({ card: null, pass: 1, speed: dimensions.speed, shift: null })),
]

const pins: readonly FaultKindName[] = ['pin.low', 'pin.high', 'pin.over']
const rockers: readonly FaultKindName[] = ['rocker.dead', 'rocker.worn']
const strips: readonly FaultKindName[] = ['strip.seized', 'strip.over', 'strip.slow']
const belt: readonly FaultKindName[] = ['belt.timing', 'belt.slack']

const partChecks: readonly PartCheck[] = [
  {
    id: 'card',
    minutes: 1,
    risk: 1,
    opens: false,
    cautions: [],
    shows: ['card.torn', 'card.blocked', 'card.side', 'card.skew', 'card.reversed'],
  },
  {
    id: 'stepping',
    minutes: 2,
    risk: 1,
    opens: false,
    cautions: ['fingers', 'force'],
    shows: ['card.locked', 'pawl.right', 'pawl.left', 'pawl.double'],
  },
  {
    id: 'retainer',
    minutes: 1,
    risk: 1.1,
    opens: false,
    cautions: ['hooks', 'fingers'],
    shows: ['retainer.worn'],
  },
  {
    id: 'needle',
    minutes: 2,
    risk: 1.1,
    opens: false,
    cautions: ['hooks'],
    shows: ['needle.gone', 'needle.stiff'],
  },
  {
    id: 'swap-needle',
    minutes: 4,
    risk: 1.3,
    opens: false,
    cautions: ['hooks', 'dust'],
    shows: ['needle.bent', 'needle.gone', 'needle.stiff'],
  },
  { id: 'pins', minutes: 3, risk: 1.2, opens: false, cautions: ['fingers', 'force'], shows: pins },
  { id: 'belt', minutes: 3, risk: 1.2, opens: false, cautions: ['unplug', 'fingers', 'notes'], shows: belt },
  {
    id: 'strips',
    minutes: 5,
    risk: 1.3,
    opens: false,
    cautions: ['unplug', 'force', 'hooks'],
    shows: strips,
  },
  {
    id: 'carriage',
    minutes: 6,
    risk: 1.5,
    opens: false,
    cautions: ['unplug', 'hooks', 'lifting'],
    shows: ['presser.right.worn', 'presser.left.worn', 'gate.1.low', 'gate.1.high'],
  },
  {
    id: 'cover',
    minutes: 20,
    risk: 3,
    opens: true,
    cautions: ['unplug', 'springs', 'old-plastic', 'notes'],
    shows: [...strips, ...belt, 'catch.broken', 'sweep.worn', 'pawl.right', 'pawl.left', 'pawl.double'],
  },
  {
    id: 'reader',
    minutes: 60,
    risk: 6,
    opens: true,
    cautions: ['reader', 'unplug', 'springs', 'old-plastic', 'notes'],
    shows: [...pins, ...rockers, 'sweep.worn', 'pawl.right', 'pawl.left', 'pawl.double'],
  },
]

/** Every check, the plainest first and the card reader last of all. */
export const checks: readonly (LookCheck | PartCheck)[] = [...lookChecks, ...partChecks]
