import { needleName } from '../mechanism/bed.ts'
import { allNeedles, allStrips } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { retainerMs } from './chances.ts'
import type { RankedMachine } from './finding.ts'
import type { Cause } from './place.ts'
import type { PossibleBed } from './close-search.ts'
import type { ColumnKind, StripBlock } from './blocks.ts'
import { stripColumns } from './frame.ts'
import type { WholeBed } from './strip-shares.ts'

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

const optionsOf = (options: readonly Option[]): Option[] => {
  const whole = options.reduce((sum, { chance }) => sum + chance, 0)
  return options
    .map(({ causes, chance }) => ({ causes, chance: chance / whole }))
    .sort((one, other) => other.chance - one.chance)
    .filter(({ chance }, n) => n === 0 || chance > least)
}

/** What may be so of each strip and each needle, one list for each. */
const slotsOf = ({ strips, needles, share }: WholeBed): Option[][] => {
  const slots = allStrips.map((strip) =>
    optionsOf(
      at(strips, strip - 1).map((block) => ({ causes: stripCauses(strip, block), chance: block.weight })),
    ),
  )
  for (const needle of allNeedles) {
    const name = needleName(needle)
    const causes: Causes[] = [
      [[`catch.${name}.broken`, `needle.${name}.bent`]],
      [[`needle.${name}.stiff`]],
      [[`needle.${name}.gone`]],
      [['other']],
    ]
    const wrong = causes.map((own, n) => ({ causes: own, chance: at(needles, needle * 4 + n) }))
    const right = Math.max(0, share - wrong.reduce((sum, { chance }) => sum + chance, 0))
    slots.push(optionsOf([{ causes: [], chance: right }, ...wrong]))
  }
  return slots
}

/** What may be so of a bed's bar and its pivots. */
const wideSlots = (bed: PossibleBed, loose: number): Option[][] => {
  const sound = bed.bars.find(({ retainer }) => retainer < 0)?.share ?? 0
  const bars = [...bed.bars].filter(({ retainer }) => retainer >= 0).sort((a, b) => b.share - a.share)
  return [
    optionsOf([
      { causes: [], chance: sound },
      ...(bars[0]
        ? [{ causes: [[`retainer.worn=${at(retainerMs, bars[0].retainer)}` as const]], chance: 1 - sound }]
        : []),
    ]),
    optionsOf([
      { causes: [], chance: 1 - loose },
      { causes: [['pivots.loose=0.4']], chance: loose },
    ]),
  ]
}

/** The likeliest machines with one option of each list more. */
const withSlots = (start: readonly Option[], slots: readonly Option[][]): readonly Option[] => {
  let machines = start
  for (const slot of slots) {
    if (slot.length === 1 && slot[0]!.causes.length === 0) continue
    machines = machines
      .flatMap((machine) =>
        slot.map((option) => ({ machine, option, chance: machine.chance * option.chance })),
      )
      .sort((one, other) => other.chance - one.chance)
      .slice(0, mostKept)
      .map(({ machine, option: { causes }, chance }) => ({
        causes: causes.length > 0 ? [...machine.causes, ...causes] : machine.causes,
        chance,
      }))
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
