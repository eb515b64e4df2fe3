import { oilCard, type OilCard } from '../find/oil-card.ts'
import { testCard, type TestCard } from '../find/test-card.ts'
import { partedTogether, type PartedCount } from '../find/together-parted.ts'
import type { SeenPass } from '../link/session.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { testCardPasses, testCardSession } from '../link/test-card-session.ts'

/** The site's test card, computed while the site is built. */
export const siteTestCard: TestCard = testCard()

/** The passes to look at, in their order, with no needle noted yet. */
export const testPasses: readonly SeenPass[] = testCardPasses(siteTestCard.dictionary.views)

/** The link's text of a search that waits for these passes. */
export const testSession: string = testCardSession(testPasses)

/** How many pairs and triples of places within a strip the card parts from each of their parts. */
export const partedAtOnce: readonly PartedCount[] = [2, 3].flatMap((count) =>
  partedTogether(siteTestCard.dictionary.views, count),
)

/** The card that parts slow strips from seized ones, and a search that waits for its passes. */
export const siteOilCard: OilCard = oilCard()
export const oilSession: string = testCardSession(
  testCardPasses(siteOilCard.passes.map(({ row, speed }) => ({ card: siteOilCard.card, pass: row, speed }))),
)

/** Kinds of fault that stay together in some classes, and in how many. */
export interface Together {
  readonly kinds: readonly FaultKindName[]
  readonly classes: number
}

/** What the card can't part, by kinds: the most classes first. */
export const together = (): Together[] => {
  const found = new Map<string, { kinds: FaultKindName[]; classes: number }>()
  for (const members of siteTestCard.classes) {
    if (members.length < 2) continue
    const kinds = [...new Set(members.map(({ fault }) => fault.kind))]
    const key = kinds.join()
    const known = found.get(key)
    found.set(key, { kinds, classes: (known?.classes ?? 0) + 1 })
  }
  return [...found.values()].sort((one, other) => other.classes - one.classes)
}
