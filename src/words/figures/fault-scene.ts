import { needleName } from '../../mechanism/bed.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import { type Fault, partOfFault } from '../../mechanism/fault.ts'
import type { Needle } from '../../mechanism/indices.ts'
import { faultPhrase } from '../faults.ts'
import { listed } from '../lists.ts'
import { capital, partName } from '../parts.ts'
import { type NumberedPart, numberedParts } from '../numbered-parts.ts'
import { standpoint } from './standpoint.ts'

/** The places of the machine from which pictures of faults are taken. */
export type FaultPlace =
  | 'card'
  | 'hole'
  | 'pins'
  | 'leaf'
  | 'rockers'
  | 'sweep'
  | 'belt'
  | 'pawls'
  | 'lever'
  | 'mark'
  | 'carriage'
  | 'cams'
  | 'strips'
  | 'butts'
  | 'retainer'

/** The picture of a kind of fault for a page that learns only in the browser what is broken. */
export interface CasePicture {
  readonly address: string
  /** The fault that is in it, in words. */
  readonly example: string
  /** From where it is seen, and what is off. */
  readonly seen: string
  /** The view of the page of the parts in which the part is seen. */
  readonly view: string
}

const front = 'The front cover of the reader is off.'
const bed = 'The reader, the carriage and the deck are off.'
const under = 'The carriage is turned over, with the butts of some needles where they meet its cams.'

/** What is off in the pictures of each place. */
const offAt: Readonly<Record<FaultPlace, string>> = {
  card: 'The sweep and its belt are off.',
  hole: 'The sweep and its belt are off.',
  pins: front,
  leaf: front,
  rockers: front,
  sweep: front,
  belt: front,
  lever: 'This is the left end of the reader, outside its cheek.',
  mark: 'This is the right end of the bed: the carriage must pass the mark before it turns.',
  pawls: 'This is the right end of the reader, outside its cheek.',
  carriage: under,
  cams: under,
  strips: bed,
  butts: `${bed} The retainer bar is drawn out.`,
  retainer: bed,
}

/** What the broken part is called in the picture of its fault. */
export const brokenName = (fault: Fault): string => {
  const own: Partial<Record<FaultKindName, string>> = {
    'card.torn': 'torn hole',
    'card.blocked': 'blocked hole',
    'turn.twice': 'lever',
    'turn.short': 'turn mark',
  }
  const part = partName(partOfFault(fault)).replace(/^the /, '')
  return own[fault.kind] ?? (fault.kind === 'pin.over' ? `leaf spring of ${part.replace('pin ', '')}` : part)
}

/** From where the picture of a fault is seen, and what is off. */
export const faultStandpoint = (
  place: FaultPlace,
  view: { readonly turned: number; readonly raised: number },
): string => `${standpoint(view)} ${offAt[place]}`

/** What is under the picture of a fault: what is broken, from where it is seen, and what is off. */
export const faultCaption = (
  fault: Fault,
  place: FaultPlace,
  view: { readonly turned: number; readonly raised: number },
): string => `${faultPhrase(fault)}. ${faultStandpoint(place, view)}`

/** That a fault is drawn at another needle than its own, since only a stretch of the bed is. */
export const drawnElsewhere = (needle: Needle): string =>
  `It is drawn at ${needleName(needle)}, which has the same strip.`

/** The picture of a fault in words: its caption, the number of what is broken, and what else is named in it. */
export const describeFaultPicture = (
  caption: string,
  fault: Fault,
  broken: NumberedPart,
  seen: readonly NumberedPart[],
): string => {
  const others = seen
    .filter((name) => name !== broken)
    .map((name) => `${numberedParts[name].number} ${numberedParts[name].name}`)
  const beside = others.length > 0 ? ` Beside it: ${listed(others)}.` : ''
  return `${caption} ${capital(brokenName(fault))} has number ${numberedParts[broken].number}.${beside}`
}
