import { dimensions } from '../mechanism/dimensions.ts'
import { type Fault, faultId } from '../mechanism/fault.ts'
import type { Case } from './case.ts'
import { type CheckId, checks, type LookCheck, type PartCheck } from './checks.ts'
import { type Dictionary, dictionaryOf, type Entry, shownKey } from './dictionary.ts'
import { codes } from './outcome.ts'
import { weightsOf } from './priors.ts'
import type { Suspect } from './rank.ts'
import { type Setting, type Shown, shownByAll } from './shown.ts'

/** A check with what it would settle. */
export interface Next {
  readonly check: CheckId
  /** How much it tells on average about which fault it is, in bits. */
  readonly bits: number
  readonly minutes: number
  readonly opens: boolean
  readonly cautions: readonly string[]
}

/** One thing that may be so, with its probability: faults at once, none of them, or something unknown (null). */
export interface Hypothesis {
  readonly entries: readonly Entry[] | null
  readonly probability: number
}

/** Suspects less likely than this, and ways of theirs, are left out: they hardly change what a check tells. */
const least = { suspect: 1e-4, way: 1e-6 } as const

/** The suspects taken apart: every way in which each may be so, by how common its faults are. */
export const hypothesesOf = ({ entries }: Dictionary, suspects: readonly Suspect[]): Hypothesis[] => {
  const weights = weightsOf(entries)
  const weightOf = new Map(entries.map((entry, n) => [entry, weights[n]!]))
  const all = suspects
    .filter(({ probability }) => probability >= least.suspect)
    .flatMap(({ is, ways, probability }): Hypothesis[] => {
      if (is !== 'faults') return [{ entries: is === 'sound' ? [] : null, probability }]
      const shares = ways.map((way) => way.reduce((share, entry) => share * weightOf.get(entry)!, 1))
      const whole = shares.reduce((sum, share) => sum + share, 0)
      return ways.map((way, n) => ({ entries: way, probability: (probability * shares[n]!) / whole }))
    })
    .filter(({ probability }) => probability >= least.way)
  const sum = all.reduce((total, { probability }) => total + probability, 0)
  return all.map(({ entries: way, probability }) => ({ entries: way, probability: probability / sum }))
}

/** Entropy in bits of shares, which need not add up to 1. */
export const entropy = (shares: Iterable<number>): number => {
  const all = [...shares].filter((share) => share > 0)
  const whole = all.reduce((sum, share) => sum + share, 0)
  return all.reduce((bits, share) => bits - (share / whole) * Math.log2(share / whole), 0)
}

/**
 * How much an answer tells about hypotheses, in bits: as each hypothesis settles its answer, that is the entropy of the
 * answers. Slips in noting the answer are left out, so it is the most that the check can tell.
 */
export const bitsOf = (hypotheses: readonly Hypothesis[], answers: readonly string[]): number => {
  const shares = new Map<string, number>()
  for (const [n, { probability }] of hypotheses.entries())
    shares.set(answers[n]!, (shares.get(answers[n]!) ?? 0) + probability)
  return entropy(shares.values())
}

/** What a hand or an eye on the parts finds: which part, and what it does, but not how much. */
const partAnswer = ({ shows }: PartCheck, entries: readonly Entry[] | null): string =>
  (entries ?? [])
    .filter(({ fault }) => shows.includes(fault.kind))
    .map(({ fault }) => faultId({ ...fault, amount: null }))
    .sort()
    .join(' ')

/** So many needles late, on average, are seen to be scattered; fewer look like a sound bed. */
const scattered = 3

const lookAnswer = ({ changed, chance }: Shown, { sound }: Setting): string => {
  const plain = sound.codes.reduce((count, code) => count + (code === codes.plain ? 1 : 0), 0)
  return shownKey([{ changed, chance: 0 }]) + (chance * plain >= scattered ? ' scattered' : '')
}

const allNeedles = Array.from({ length: dimensions.needles }, (_, index) => index)

/** What two or more faults show together: worked out with the whole model, with what chance one of them brings. */
const shownOf = (faults: readonly Fault[], chance: number, setting: Setting): Shown => {
  const firm = faults.filter(({ kind }) => kind !== 'retainer.worn')
  const [shown] = shownByAll(firm, allNeedles, [setting])
  return { changed: shown!.changed, chance }
}

/** The answers of all looks, by check: a text for each hypothesis. */
const lookAnswers = (
  known: Case,
  looks: readonly LookCheck[],
  hypotheses: readonly Hypothesis[],
): Map<LookCheck, string[]> => {
  const views = looks.flatMap((check) => check.view(known) ?? [])
  const taken = looks.filter((check) => check.view(known) !== null)
  const faults = [...new Set(hypotheses.flatMap(({ entries }) => (entries ?? []).map(({ fault }) => fault)))]
  const { settings, entries: found } = dictionaryOf(views, faults)
  const shownBy = new Map(found.map(({ fault, shown }) => [fault, shown]))
  return new Map(
    taken.map((check, n) => {
      const setting = settings[n]!
      const answers = hypotheses.map(({ entries }) => {
        if (!entries) return 'something else'
        if (entries.length === 0) return ''
        const own = entries.map(({ fault }) => shownBy.get(fault)![n]!)
        const chance = Math.max(...own.map((shown) => shown.chance))
        return own.length === 1
          ? lookAnswer(own[0]!, setting)
          : lookAnswer(
              shownOf(
                entries.map(({ fault }) => fault),
                chance,
                setting,
              ),
              setting,
            )
      })
      return [check, answers]
    }),
  )
}

/** Bits below this are no reason for a check. */
const worthwhile = 0.005

interface Rated {
  readonly check: LookCheck | PartCheck
  readonly bits: number
  /** Whether it would show the likeliest fault itself. */
  readonly confirms: boolean
}

const ease = ({ check, bits }: Rated): number => bits / check.minutes / check.risk
const riskOfOpening = ({ check }: Rated): number => (check.opens ? check.risk : 0)

/** Checks that tell something; where nothing is left to tell, those that find the likeliest fault by hand or eye. */
const worthTaking = (rated: readonly Rated[]): Rated[] => {
  const telling = rated.filter(({ bits }) => bits >= worthwhile)
  return telling.length > 0 ? telling : rated.filter(({ confirms }) => confirms)
}

/**
 * The checks worth taking, best first: by the bits that each would settle for its minutes and its risk. Whatever opens
 * the machine comes after all that doesn't, and the card reader last of all.
 */
export const nextChecks = (known: Case, dictionary: Dictionary, suspects: readonly Suspect[]): Next[] => {
  const hypotheses = hypothesesOf(dictionary, suspects)
  const looks = checks.filter((check): check is LookCheck => 'view' in check)
  const looked = lookAnswers(known, looks, hypotheses)
  const rated = checks.flatMap((check): Rated[] => {
    const isLook = 'view' in check
    const answers = isLook ? looked.get(check) : hypotheses.map(({ entries }) => partAnswer(check, entries))
    if (!answers) return []
    return [{ check, bits: bitsOf(hypotheses, answers), confirms: !isLook && answers[0] !== '' }]
  })
  return worthTaking(rated)
    .sort((one, other) => riskOfOpening(one) - riskOfOpening(other) || ease(other) - ease(one))
    .map(({ check: { id, minutes, opens, cautions }, bits }) => ({
      check: id,
      bits,
      minutes,
      opens,
      cautions,
    }))
}
