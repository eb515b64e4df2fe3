import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { howCommon, sharesOfCauses } from './how-common.ts'
import { type Cause, kindOfCause } from './place.ts'

/**
 * What a repairer has seen herself: on how many finished machines each kind of fault was confirmed. A machine counts a
 * kind once, however many strips or needles had it; kinds that are left out were never seen.
 */
export type Experience = Readonly<Partial<Record<FaultKindName, number>>>

/** How many finds common practice counts for beside her own: with as many of her own, both weigh the same. From no source. */
export const practiceFinds = 40

const isKind = (kind: string): kind is FaultKindName => kind in faultKinds

const kinds = Object.keys(howCommon).filter(isKind)
const common = kinds.reduce((sum, kind) => sum + howCommon[kind], 0)

/** The finds of an experience in all. */
export const findsOf = (experience: Experience): number =>
  kinds.reduce((sum, kind) => sum + (experience[kind] ?? 0), 0)

/** The share of a kind among all finds by common practice, 0 to 1. */
export const commonShare = (kind: FaultKindName): number => howCommon[kind] / common

/**
 * How many times as common a kind is as in common practice: the mean of a Dirichlet distribution whose prior counts are
 * common practice's shares of `practiceFinds`, over those shares. Just 1 where nothing was ever found.
 *
 * @example experienceFactor({ 'strip.seized': 4 }, 'strip.seized') // more than 1
 */
export const experienceFactor = (experience: Experience, kind: FaultKindName): number =>
  (practiceFinds + (experience[kind] ?? 0) / commonShare(kind)) / (practiceFinds + findsOf(experience))

/** A kind of fault with her finds, and its share among all finds without and with them. */
export interface ExperiencedKind {
  readonly kind: FaultKindName
  readonly finds: number
  readonly common: number
  /** The mean of the Dirichlet distribution; those of all kinds add up to 1. */
  readonly share: number
}

/** Every kind, those that she has found first, then the commonest first. */
export const experienceTable = (experience: Experience): ExperiencedKind[] =>
  kinds
    .map((kind) => ({
      kind,
      finds: experience[kind] ?? 0,
      common: commonShare(kind),
      share: commonShare(kind) * experienceFactor(experience, kind),
    }))
    .sort((one, other) => other.finds - one.finds || other.share - one.share)

/** What an experience changes of causes that no look from outside distinguishes. */
export interface ExperienceOfCauses {
  /** By which factor it multiplies the chance of a way that has one of these causes; 1 without experience. */
  readonly factor: (causes: readonly Cause[]) => number
  /** How these causes share a way before a hand was there: equally, or by practice where experience counts. */
  readonly shares: (causes: readonly Cause[]) => readonly number[]
}

/** The same for a query; without experience all stays as it is. */
export const experienceOfCauses = (experience: Experience): ExperienceOfCauses => {
  if (findsOf(experience) === 0) return { factor: () => 1, shares: (causes) => causes.map(() => 1) }
  const byKind = new Map(kinds.map((kind) => [kind, experienceFactor(experience, kind)]))
  const factorOf = (cause: Cause): number => {
    const kind = kindOfCause(cause)
    return kind === null || kind === 'card.out' ? 1 : (byKind.get(kind) ?? 1)
  }
  const factor = (causes: readonly Cause[]): number =>
    sharesOfCauses(causes).reduce((sum, share, n) => sum + share * factorOf(causes[n]!), 0)
  return { factor, shares: sharesOfCauses }
}

/** The experience of finished machines, each with the kinds of what it turned out to be. */
export const experienceFrom = (machines: readonly (readonly FaultKindName[])[]): Experience => {
  const found = machines.flatMap((own) => [...new Set(own)])
  return Object.fromEntries([...Map.groupBy(found, (kind) => kind)].map(([kind, all]) => [kind, all.length]))
}
