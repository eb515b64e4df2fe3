import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { exampleOf, lookAt, standardLooks } from '@/find/battery.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { likenesses } from '@/find/likeness.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'

const pattern = cardLibrary(cardsFolder).cards.get('harbour-star')!
const kinds = Object.keys(faultKinds) as FaultKindName[]

test('whatever no look parts gives the same bed in every look, and the other way round', () => {
  const all = new Map(kinds.map((kind) => [kind, likenesses(kind, pattern)]))
  const beds = new Map(
    kinds.map((kind) => [
      kind,
      standardLooks.map((look) => lettersOf(lookAt([exampleOf(kind)], look, pattern))),
    ]),
  )
  for (const kind of kinds)
    for (const likeness of all.get(kind)!) {
      const same = beds.get(kind)!.every((bed, n) => bed === beds.get(likeness.kind)![n])
      expect(same, `${kind} and ${likeness.kind}`).toBe(likeness.apart === null)
      if (same) expect(all.get(likeness.kind)).toContainEqual({ kind, apart: null })
    }
})
