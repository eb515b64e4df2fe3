import type { Frame } from '../../mechanism/frame.ts'
import { placeIn } from '../../browser/pointer.ts'
import type { FigureView } from './figure-view.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { slideTo } from './slide-carriage.ts'

/** Lets a hand drag the carriage in the figures whose pictures have its way as an axis. */
export const dragInFigures = (stage: FigureView, store: MachineStore): void => {
  for (const svg of stage.root.querySelectorAll<SVGSVGElement>('.drawing:not([data-figure="chain"]) svg')) {
    let pointer: number | null = null
    /** The machine where the hand took hold: places are reckoned in that picture, however it moves under the hand. */
    let held: Frame = store.now().frame
    /** What the picture's place and the carriage's differ by there. */
    let offset = 0
    const placeOf = (event: PointerEvent): number | null => {
      const { x, y } = placeIn(svg, event)
      return stage.figure()?.placeAt?.(stage.shape(), x, y, held) ?? null
    }
    svg.addEventListener('pointerdown', (event) => {
      held = store.now().frame
      const place = event.button === 0 ? placeOf(event) : null
      if (place === null) return
      pointer = event.pointerId
      offset = place - held.x
      svg.setPointerCapture(event.pointerId)
    })
    svg.addEventListener('pointermove', (event) => {
      const place = pointer === event.pointerId ? placeOf(event) : null
      if (place !== null) slideTo(store, place - offset)
    })
    for (const end of ['pointerup', 'pointercancel'] as const)
      svg.addEventListener(end, () => {
        pointer = null
      })
  }
}
