import { followDrags } from '../../browser/pointer.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { FigureView } from './figure-view.ts'
import { slideTo } from './slide-carriage.ts'

/** Lets a hand drag the carriage in the figures that have the carriage's way as an axis. */
export const dragInFigures = (view: FigureView, store: MachineStore): void => {
  for (const svg of view.root.querySelectorAll<SVGSVGElement>('.drawing:not([data-figure="chain"]) svg'))
    followDrags(svg, (x, y) => {
      // Positions are read in the picture that the hand took hold of, however it moves under the hand.
      const { frame } = store.now()
      const positionAt = (toX: number, toY: number): number | null =>
        view.figure()?.placeAt?.(view.shape(), toX, toY, frame) ?? null
      const position = positionAt(x, y)
      if (position === null) return null
      const offset = position - frame.x
      return {
        move: (toX, toY) => {
          const to = positionAt(toX, toY)
          if (to !== null) slideTo(store, to - offset)
        },
      }
    })
}
