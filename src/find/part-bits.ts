import { errorOf } from './by-hand.ts'
import type { PartCheck } from './checks.ts'
import { type Component, needleCausesOf } from './components.ts'
import { at } from '../mechanism/lookup.ts'
import type { Settled, Weighing } from './pass-bits.ts'
import { type Cause, kindOfCause } from './place.ts'
import { noisyBits } from './shared-bits.ts'

/** Checks of one needle at a time: what they settle is what they settle of the needle most in doubt. */
const ofOneNeedle: ReadonlySet<string> = new Set<PartCheck['id']>(['needle', 'swap-needle'])

const isShown = ({ shows }: PartCheck, cause: Cause): boolean => {
  const kind = kindOfCause(cause)
  return kind !== null && shows.includes(kind)
}

/** What a check shows of what is wrong, as a text. */
const answerOf = (check: PartCheck, causes: readonly Cause[]): string =>
  causes
    .filter((cause) => isShown(check, cause))
    .map((cause) => cause.replace(/=.*/, ''))
    .join(' ')

const ofComponent = (check: PartCheck, { labels, causes }: Component): number => {
  const answers = causes.map((own) => answerOf(check, own))
  const shares = new Map<string, number>()
  for (const label of labels) {
    const answer = at(answers, label)
    shares.set(answer, (shares.get(answer) ?? 0) + 1)
  }
  return noisyBits([...shares.values()], errorOf(check.id))
}

/** Chance that a check finds something wrong that reaches the whole bed. */
export const findsWide = (check: PartCheck, { components }: Pick<Weighing, 'components'>): number => {
  const [wide] = components
  if (!wide) return 0
  const finds = wide.causes.map((own) => answerOf(check, own) !== '')
  return wide.labels.filter((label) => finds[label]).length / wide.labels.length
}

/** What a look at parts, or a hand on them, would settle, in bits, with its own chance of error. */
export const bitsOfPart = (check: PartCheck, { components, needles }: Weighing): Settled => {
  const byNeedle = needles.map((needle) => {
    const shown = needleCausesOf(needle)
      .filter(([cause]) => isShown(check, cause))
      .map(([, chance]) => chance)
    return noisyBits([1 - shown.reduce((sum, chance) => sum + chance, 0), ...shown], errorOf(check.id))
  })
  const ofNeedles = ofOneNeedle.has(check.id)
    ? Math.max(0, ...byNeedle)
    : byNeedle.reduce((sum, bits) => sum + bits, 0)
  const [wide = 0, ...strips] = components.map((component) => ofComponent(check, component))
  return { wide, all: strips.reduce((sum, bits) => sum + bits, wide + ofNeedles) }
}
