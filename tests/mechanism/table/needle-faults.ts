import type { Asked, Rule } from './rule.ts'

const none = (): boolean => false
const all = (): boolean => true
const asCard = ({ own }: Asked): boolean => own

const r3 = 102
const catchR3 = { stage: 'hold', part: 'catch.R3' } as const
const heldR3 = { stage: 'hold', part: 'needle.R3' } as const
const stiffR3 = { stage: 'gate', part: 'needle.R3' } as const
const right = { stage: 'hold', part: 'presser.right' } as const
const left = { stage: 'hold', part: 'presser.left' } as const
const gate = { stage: 'gate', part: 'gate.1' } as const
const retainer = { stage: 'gate', part: 'retainer' } as const

const neverR3 = ({ own, needle }: Asked): boolean => own && needle !== r3

/** The rows of the fault table from the catches to the gates. */
export const needleFaults: readonly Rule[] = [
  {
    id: 'carriage.plain',
    shows: 'selects nothing, either way',
    comes: none,
    stage: 'hold',
    part: 'carriage',
  },
  { id: 'catch.R3.broken', shows: 'never selects that needle', comes: neverR3, ...catchR3 },
  { id: 'needle.R3.bent', shows: 'never selects that needle', comes: neverR3, ...heldR3 },
  {
    id: 'needle.R3.gone',
    shows: 'leaves that needle unmoved',
    comes: ({ own, needle }) => (needle === r3 ? 'unmoved' : own),
    ...heldR3,
  },
  {
    id: 'needle.R3.stiff',
    shows: 'always selects that needle, when fast',
    comes: ({ own, needle }) => own || needle === r3,
    speed: 122,
    ...stiffR3,
  },
  { id: 'needle.R3.stiff', shows: 'does nothing when slow', comes: asCard, speed: 118, ...stiffR3 },
  {
    id: 'needle.R3.stiff=20',
    shows: 'is faster before it shows where the butt is less stiff',
    comes: ({ own, needle }) => own || needle === r3,
    speed: 305,
    ...stiffR3,
  },
  { id: 'retainer.worn=1000', shows: 'selects everything when very weak', comes: all, ...retainer },
  { id: 'retainer.worn=1', shows: 'does nothing when hardly worn', comes: asCard, ...retainer },
  {
    id: 'presser.right.worn=0.8',
    shows: 'selects nothing in passes to the right',
    comes: ({ own, way }) => own && way === -1,
    ...right,
  },
  { id: 'presser.right.worn=0.55', shows: 'does nothing while the dip is enough', comes: asCard, ...right },
  {
    id: 'presser.left.worn=0.65',
    shows: 'selects nothing in passes to the left',
    comes: ({ own, way }) => own && way === 1,
    ...left,
  },
  { id: 'gate.1.low=0.5', shows: 'stops the held butts too', comes: none, ...gate },
  { id: 'gate.1.low=0.4', shows: 'does nothing while it clears the held butts', comes: asCard, ...gate },
  { id: 'gate.1.high=0.5', shows: 'lets the free butts slip under', comes: all, ...gate },
  { id: 'gate.1.high=0.4', shows: 'does nothing while it meets the free butts', comes: asCard, ...gate },
]
