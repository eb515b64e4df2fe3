import { needlesOfStrip } from '../mechanism/bed.ts'
import { type Fault, indexKindsOf, makeFault } from '../mechanism/fault.ts'
import { contradict } from '../mechanism/fault-list.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { allColumns, allStrips, type Needle, slotOf, toStrip } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { stripColumns } from './frame.ts'
import type { Finding } from './finding.ts'
import { hypothesesOf } from './hypotheses.ts'
import { isKindByChance } from './kinds-by-chance.ts'
import { changedCode, changedSlot } from './packed-change.ts'
import { placeOfFault } from './place.ts'
import { type CardAndPasses, viewsOfQuery } from './query.ts'
import type { PartId } from './repairs.ts'
import { type Setting, settingOf, shownByAll } from './shown.ts'
import { isShown, showingsOf } from './showing.ts'
import { soundBeds } from './sound.ts'
import { letterOf, needlesAt } from './bed-needles.ts'

/** A part that may serve another machine: all that are wanted again but the card. */
export type ServingPart = Exclude<PartId, 'card'>

/** How many parts of a kind were shown right, of how many that a machine has. */
export interface SoundPart {
  readonly part: ServingPart
  /** Their numbers, from 1: those of columns, of strips, or of needles from the left; one for what there is once. */
  readonly right: readonly number[]
  readonly of: number
}

/** A place may be wrong with at most this chance if its part is to serve another machine. */
const mostWrong = 0.05

/** What must have shown at a part, had it been so, before it counts as right. */
const trials: Readonly<Record<ServingPart, readonly FaultKindName[]>> = {
  needle: ['needle.bent', 'needle.gone'],
  catch: ['catch.broken'],
  strip: ['strip.seized', 'strip.slow', 'strip.over'],
  pin: ['pin.low', 'pin.high'],
  rocker: ['rocker.dead'],
  presser: ['presser.right.worn', 'presser.left.worn'],
  belt: ['belt.timing', 'belt.slack'],
  pawl: ['pawl.right', 'pawl.left', 'pawl.double'],
  'retainer-bar': ['retainer.worn'],
}

/** What is tried at once, each at another part, so that no two reach one needle. */
interface Trial {
  readonly faults: readonly Fault[]
  /** The needles that a part of a number reaches. */
  readonly reaches: (number: number, setting: Setting) => readonly Needle[]
}

const faultAt = (kind: FaultKindName, ...indices: readonly number[]): Fault =>
  makeFault(kind, indices, faultKinds[kind].amount?.usual ?? null)

const stripOfColumn = (column: number): number => ((column - 1) % allStrips.length) + 1

/** By kind of fault: what is tried, and how many parts there are. */
const trialsOf = (kind: FaultKindName, needles: readonly Needle[]): { of: number; all: readonly Trial[] } => {
  const onStrip = (strip: number, { view }: Setting): readonly Needle[] =>
    needlesOfStrip(toStrip(strip), view, needles.length)
  const [indexed] = indexKindsOf(kind)
  if (indexed === 'needle')
    return {
      of: needles.length,
      all: [
        {
          faults: needles.map((needle) => faultAt(kind, needle)),
          reaches: (number) => [at(needles, number - 1)],
        },
      ],
    }
  if (indexed === 'strip')
    return {
      of: allStrips.length,
      all: [{ faults: allStrips.map((strip) => faultAt(kind, strip)), reaches: onStrip }],
    }
  if (indexed === 'column')
    return {
      of: allColumns.length,
      // Each strip has three columns, of which one is tried at a time.
      all: stripColumns(0).map((_, n) => ({
        faults: allStrips.map((strip) => faultAt(kind, at(stripColumns(strip - 1), n) + 1)),
        reaches: (column, setting) => onStrip(stripOfColumn(column), setting),
      })),
    }
  return { of: 1, all: [{ faults: [faultAt(kind)], reaches: () => needles }] }
}

const numberOf = (fault: Fault, needles: number): number => {
  const [index = 0] = fault.at
  return indexKindsOf(fault.kind)[0] === 'needle' ? slotOf(index, needles) + 1 : Math.max(1, index)
}

/**
 * What of a machine is shown sound enough to serve others: parts at places that are hardly wrong, whose faults would have
 * changed what was noted, put into the likeliest machine one by one. From outside nobody sees how worn they are.
 */
export const soundParts = (query: CardAndPasses, finding: Finding): SoundPart[] => {
  const [likeliest] = hypothesesOf(finding)
  const faults = (likeliest?.faults ?? []).filter(({ kind }) => !isKindByChance(kind))
  const beds = soundBeds()
  const needles = needlesAt(query)
  const settings = viewsOfQuery(query).map((view) =>
    settingOf(likeliest?.hasCard === false ? { ...view, card: null } : view, beds),
  )
  const isLookedAt = (pass: number, needle: Needle): boolean =>
    /^[spu]$/.test(letterOf(at(query.passes, pass).needles, needle))
  const codesWith = (some: readonly Fault[]): ReadonlyMap<Needle, number>[] =>
    shownByAll(some, needles, settings).map(
      ({ changed }) =>
        new Map(Array.from(changed, (one) => [at(needles, changedSlot(one)), changedCode(one)])),
    )
  const asItIs = codesWith(faults)
  const doubtful = new Set(finding.places.filter(({ wrong }) => wrong > mostWrong).map(({ place }) => place))
  const isFree = (fault: Fault): boolean =>
    !doubtful.has(placeOfFault(fault)) && !faults.some((one) => contradict(one, fault))
  const shownIn = ({ faults: tried, reaches }: Trial): number[] => {
    const own = tried.filter(isFree)
    const withThem = codesWith([...faults, ...own])
    const isDifferent = (pass: number, needle: Needle): boolean =>
      isLookedAt(pass, needle) && at(asItIs, pass).get(needle) !== at(withThem, pass).get(needle)
    return own
      .map((fault) => numberOf(fault, needles.length))
      .filter((number) =>
        settings.some((setting, pass) =>
          reaches(number, setting).some((needle) => isDifferent(pass, needle)),
        ),
      )
  }
  const shownBy = (kind: FaultKindName): number[] => {
    if (!isKindByChance(kind)) return trialsOf(kind, needles).all.flatMap(shownIn)
    const fault = faultAt(kind)
    const views = settings.map(({ view }) => view)
    return isFree(fault) && showingsOf([fault], { views, isLookedAt }).some(isShown) ? [1] : []
  }
  return (Object.keys(trials) as ServingPart[]).map((part) => {
    const [first = [], ...others] = trials[part].map(shownBy)
    const right = first.filter((number) => others.every((shown) => shown.includes(number)))
    return {
      part,
      right: right.sort((one, other) => one - other),
      of: trialsOf(at(trials[part], 0), needles).of,
    }
  })
}
