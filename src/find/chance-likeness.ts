import type { Card } from '../mechanism/card.ts'
import type { Fault } from '../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { at } from '../mechanism/lookup.ts'
import type { Pass } from '../mechanism/pass.ts'
import { exampleOf, faultAbout, type Look, lookAt, standardLooks } from './battery.ts'
import { pivotChances, retainerMs, stickyChances } from './chances.ts'
import { type KindByChance, kindsByChance } from './kinds-by-chance.ts'
import { lettersOf } from './bed-letters.ts'

/** On how many machines, with the seeds from 1 on, each amount of a fault that goes by chance is tried. */
export const machinesTried = 50

/** Another kind of fault that gives the same bed, on some of the machines tried, in the look that first shows this one. */
export interface ChanceLikeness {
  readonly kind: FaultKindName
  /** On how many machines it does. */
  readonly machines: number
  /** On how many of them a later look parts the two. */
  readonly parted: number
  /** The look that does so most often; null where none does. */
  readonly apart: Look | null
}

/** A fault that goes by chance, at one amount, on all the machines tried. */
export interface Tried {
  readonly fault: Fault
  /** On how many machines some look shows it. */
  readonly shown: number
  readonly alike: readonly ChanceLikeness[]
}

const amounts: Readonly<Record<KindByChance, readonly number[]>> = {
  'pin.sticky': stickyChances.map(({ share }) => share),
  'pivots.loose': pivotChances.map(({ mm }) => mm).filter((mm) => mm > 0),
  'retainer.worn': retainerMs,
}

const kinds = Object.keys(faultKinds) as FaultKindName[]

/** Where a machine first shows its fault: the look's place among the standard ones, and its pass. */
const firstLook = (fault: Fault, pattern: Card, seed: number): { n: number; pass: Pass } | null => {
  for (const [n, look] of standardLooks.entries()) {
    const pass = lookAt([fault], look, pattern, seed)
    if (pass.departures.length > 0) return { n, pass }
  }
  return null
}

/** The kinds that give the same bed in that look, about its first wrong needle, each with the first look that parts them. */
const alikeOn = (
  fault: Fault,
  pattern: Card,
  seed: number,
  first: { n: number; pass: Pass },
): { kind: FaultKindName; apart: Look | undefined }[] => {
  const own = lettersOf(first.pass)
  const { needle } = at(first.pass.departures, 0)
  return kinds.flatMap((kind) => {
    if (kind === fault.kind) return []
    const other = faultAbout(kind, needle, first.pass.row ?? 1)
    const bed = (one: Fault, look: Look): string => lettersOf(lookAt([one], look, pattern, seed))
    if (bed(other, at(standardLooks, first.n)) !== own) return []
    return [{ kind, apart: standardLooks.find((look) => bed(other, look) !== bed(fault, look)) }]
  })
}

const mostCommon = (looks: readonly Look[]): Look | null => {
  const counts = standardLooks.map((look) => looks.filter((one) => one === look).length)
  const most = Math.max(...counts)
  return most === 0 ? null : at(standardLooks, counts.indexOf(most))
}

const tried = (fault: Fault, pattern: Card): Tried => {
  const all: { kind: FaultKindName; apart: Look | undefined }[] = []
  let shown = 0
  for (let seed = 1; seed <= machinesTried; seed++) {
    const first = firstLook(fault, pattern, seed)
    if (!first) continue
    shown++
    all.push(...alikeOn(fault, pattern, seed, first))
  }
  const alike = kinds.flatMap((kind): ChanceLikeness[] => {
    const own = all.filter((one) => one.kind === kind)
    const looks = own.flatMap(({ apart }) => (apart ? [apart] : []))
    return own.length === 0
      ? []
      : [{ kind, machines: own.length, parted: looks.length, apart: mostCommon(looks) }]
  })
  return { fault, shown, alike }
}

/**
 * What every kind of fault that goes by chance is confused with, amount by amount: each is tried on as many machines as
 * there are seeds, in the standard looks. `pattern` is the patterned card's rows. It takes about two seconds.
 */
export const triedByChance = (pattern: Card): Tried[] =>
  kindsByChance.flatMap((kind) => amounts[kind].map((amount) => tried(exampleOf(kind, amount), pattern)))
