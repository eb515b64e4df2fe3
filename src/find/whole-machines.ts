import { needleName } from '../mechanism/bed.ts'
import { allStrips } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { retainerMs } from './chances.ts'
import type { RankedMachine } from './finding.ts'
import type { Cause } from './place.ts'
import type { PossibleBed } from './close-search.ts'
import type { ColumnKind, StripBlock } from './blocks.ts'
import { stripColumns } from './frame.ts'
import type { WholeBed } from './strip-shares.ts'
import { possibleNeedles, possibleSlot } from './bed-needles.ts'

/** At most so many whole machines are named. */
const mostMachines = 20
/** So many are kept while they are put together. */
const mostKept = 40

type Causes = readonly (readonly Cause[])[]

/** One thing that a machine may have at a place, or not. */
interface Option {
  readonly causes: Causes
  readonly chance: number
}

const columnCauses = (column: number, kind: ColumnKind): Causes => {
  switch (kind) {
    case 'right':
      return []
    case 'dead':
      return [[`pin.${column}.low`, `rocker.${column}.dead`]]
    case 'high':
      return [[`pin.${column}.high`]]
    case 'over':
      return [[`pin.${column}.over`]]
    case 'sticky':
      return [[`pin.${column}.sticky=0.5`]]
    case 'other':
      return [['other']]
  }
}

const stripCauses = (strip: number, { strip: state, columns }: StripBlock): Causes => [
  ...(state === 'right' ? [] : [[`strip.${strip}.${state}`] as const]),
  ...stripColumns(strip - 1).flatMap((column, n) => columnCauses(column + 1, at(columns, n))),
]

/** Options with a smaller chance lead to no machine that is named. */
const least = 2e-3

/** The options that matter, by their weights, the likeliest first; `causesOf` gives the causes of the `n`th. */
const optionsOf = (weights: readonly number[], causesOf: (n: number) => Causes): Option[] => {
  const whole = weights.reduce((sum, weight) => sum + weight, 0)
  return weights
    .map((weight, n) => ({ n, chance: weight / whole }))
    .sort((one, other) => other.chance - one.chance)
    .filter(({ chance }, place) => place === 0 || chance > least)
    .map(({ n, chance }) => ({ causes: causesOf(n), chance }))
}

/** What may be so of each strip and each needle, one list for each. */
const slotsOf = ({ strips, needles, share }: WholeBed): Option[][] => {
  const slots = allStrips.map((strip) => {
    const blocks = at(strips, strip - 1)
    return optionsOf(
      blocks.map(({ weight }) => weight),
      (n) => stripCauses(strip, at(blocks, n)),
    )
  })
  for (const needle of possibleNeedles) {
    const name = needleName(needle)
    const causes: Causes[] = [
      [],
      [[`catch.${name}.broken`, `needle.${name}.bent`]],
      [[`needle.${name}.stiff`]],
      [[`needle.${name}.gone`]],
      [['other']],
    ]
    const wrong = [0, 1, 2, 3].map((way) => at(needles, possibleSlot(needle) * 4 + way))
    const right = Math.max(0, share - wrong.reduce((sum, chance) => sum + chance, 0))
    slots.push(optionsOf([right, ...wrong], (n) => at(causes, n)))
  }
  return slots
}

/** What may be so of a bed's bar and its pivots. */
const wideSlots = (bed: PossibleBed, loose: number): Option[][] => {
  const sound = bed.bars.find(({ retainer }) => retainer < 0)?.share ?? 0
  const bars = [...bed.bars].filter(({ retainer }) => retainer >= 0).sort((a, b) => b.share - a.share)
  return [
    optionsOf(bars[0] ? [sound, 1 - sound] : [sound], (n) =>
      n === 0 || !bars[0] ? [] : [[`retainer.worn=${at(retainerMs, bars[0].retainer)}`]],
    ),
    optionsOf([1 - loose, loose], (n) => (n === 0 ? [] : [['pivots.loose=0.4']])),
  ]
}

/** The likeliest machines with one option more, out of two lists that have their likeliest first. */
const withSlot = (machines: readonly Option[], slot: readonly Option[]): Option[] => {
  const found: Option[] = []
  /** By option: the likeliest machine that it was not put to yet. */
  const next = new Int32Array(slot.length)
  while (found.length < mostKept) {
    let [best, most] = [-1, -1]
    for (let n = 0; n < slot.length; n++) {
      const machine = machines[next[n]!]
      if (!machine) continue
      const chance = machine.chance * slot[n]!.chance
      if (chance > most || (chance === most && next[n]! < next[best]!)) [best, most] = [n, chance]
    }
    if (best < 0) break
    const { causes } = machines[next[best]!]!
    next[best]! += 1
    const more = slot[best]!.causes
    found.push({ causes: more.length > 0 ? [...causes, ...more] : causes, chance: most })
  }
  return found
}

/** The likeliest machines with one option of each list more. */
const withSlots = (start: readonly Option[], slots: readonly Option[][]): readonly Option[] => {
  let machines = start
  for (const slot of slots) {
    if (slot.length === 1 && slot[0]!.causes.length === 0) continue
    machines = withSlot(machines, slot)
  }
  return machines
}

/** What a bed's whole machines are made of. */
export interface BedMachines {
  readonly bed: PossibleBed
  readonly whole: WholeBed
  /** The bed's share of all that is possible, and within it the chance that its pivots are loose. */
  readonly share: number
  readonly loose: number
}

/** The likeliest whole machines, their places taken as independent of one another but for a strip and its columns. */
export const rankMachines = (beds: readonly BedMachines[]): RankedMachine[] => {
  const found = new Map<string, { faults: Causes; probability: number }>()
  // Beds that say the same of their strips and needles share what is made of these.
  const made = new Map<WholeBed, readonly Option[]>()
  for (const { bed, whole, share, loose } of beds) {
    let parts = made.get(whole)
    if (!parts) made.set(whole, (parts = withSlots([{ causes: [], chance: 1 }], slotsOf(whole))))
    const own = bed.state.causes.map(({ causes }) => causes)
    const machines = withSlots(
      parts.map(({ causes, chance }) => ({ causes: [...own, ...causes], chance: share * chance })),
      wideSlots(bed, loose),
    )
    for (const { causes, chance } of machines) {
      const key = causes
        .map((own) => own.join('|').replaceAll(/=[^|]*/g, ''))
        .sort()
        .join(' + ')
      const known = found.get(key)
      if (known) known.probability += chance
      else found.set(key, { faults: causes, probability: chance })
    }
  }
  const ranked = [...found.values()]
    .sort((one, other) => other.probability - one.probability)
    .slice(0, mostMachines)
  const rest = 1 - ranked.reduce((sum, { probability }) => sum + probability, 0)
  return [...ranked, { faults: null, probability: Math.max(0, rest) }]
}
