import type { PartHit } from '../../drawings/chain/part-at.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { Breaker } from './breaker.ts'
import { faultsOfPart } from './faults-of-part.ts'
import type { FigureView } from './figure-view.ts'
import { walkPartsByKeys } from './part-keys.ts'
import { pointAtParts } from './part-pointer.ts'
import { createPartTip } from './part-tip.ts'

/**
 * Names a part under the pointer, under a finger or under the arrow keys, says what it is doing now, and lets it be
 * broken.
 */
export const inspectParts = (view: FigureView, store: MachineStore, breaker: Breaker): void => {
  const tip = createPartTip(view, store, (part) => {
    const hit = pressed()
    // A press also knows which hole of the card it met.
    breaker.open(hit?.part === part ? hit : { part })
  })
  const pressed: () => PartHit | null = pointAtParts(view, store, tip, breaker.picked)
  document.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') tip.hide()
  })
  walkPartsByKeys(view, tip, (part) => {
    if (!breaker.picked({ part }) && faultsOfPart(part).length > 0) breaker.open({ part })
  })
}
