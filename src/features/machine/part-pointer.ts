import { type PartHit, partAt } from '../../drawings/chain/part-at.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { positionIn } from '../../browser/pointer.ts'
import type { FigureView } from './figure-view.ts'
import type { PartTip } from './part-tip.ts'

/** A press of a pointer: what it met, and where, in pixels of the screen. */
interface Press {
  readonly hit: PartHit | null
  readonly x: number
  readonly y: number
}

/** How far a pointer may stray between press and release for a click, in pixels of the screen; further is a drag. */
const stray = 5

/**
 * Shows the tip of the part under a mouse, and pins it to the part that is clicked or tapped, unless `picked` says that
 * the pick was wanted elsewhere. Returns what was pressed last.
 */
export const pointAtParts = (
  view: FigureView,
  store: MachineStore,
  tip: PartTip,
  picked: (hit: PartHit) => boolean,
): (() => PartHit | null) => {
  let press: Press = { hit: null, x: 0, y: 0 }
  const hitOf = (event: MouseEvent): PartHit | null => {
    const { x, y } = positionIn(view.svg(), event)
    return partAt(view.layout(), view.from(), store.now().frame, x, y)
  }
  const follow = (event: PointerEvent): void => {
    if (event.pointerType !== 'mouse' || tip.shown()?.isPinned || view.root.dataset.dragging) return
    const hit = hitOf(event)
    if (hit) tip.show(hit.part, false)
    else tip.hide()
  }
  const pick = (event: MouseEvent): void => {
    const hit = hitOf(event)
    const isDrag = Math.hypot(event.clientX - press.x, event.clientY - press.y) > stray
    if (isDrag || !hit || hit.part !== press.hit?.part || picked(hit)) tip.hide()
    else tip.show(hit.part, true)
  }
  for (const svg of view.root.querySelectorAll<SVGSVGElement>('[data-figure="chain"] svg')) {
    svg.addEventListener('pointermove', follow)
    svg.addEventListener('pointerleave', () => {
      if (!tip.shown()?.isPinned) tip.hide()
    })
    svg.addEventListener('pointerdown', (event) => {
      press = { hit: hitOf(event), x: event.clientX, y: event.clientY }
    })
    svg.addEventListener('click', pick)
  }
  document.addEventListener('pointerdown', ({ target }) => {
    if (tip.shown()?.isPinned && target instanceof Node && !view.root.contains(target)) tip.hide()
  })
  return () => press.hit
}
