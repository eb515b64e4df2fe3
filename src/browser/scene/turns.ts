import type { View } from '../../drawings/scene/engine/camera.ts'
import { viewLimits } from '../../link/scene-view.ts'

/** What a key or a button does. */
export type TurnKey = 'left' | 'right' | 'up' | 'down' | 'in' | 'out' | 'back'

/** Which way each key turns. */
export const turnKeys: Readonly<Record<string, TurnKey>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  '+': 'in',
  '-': 'out',
  Home: 'back',
}

/** How far a key turns, and how far a hand that drags, in degrees. */
const step = 15
const degreesAPixel = 0.45

/** How much larger a key makes it. */
const larger = 1.25

/** How long the way from one view to another takes, in s. */
export const travelSeconds = 0.6

const clampTo = (value: number, [least, most]: readonly [number, number]): number =>
  Math.min(most, Math.max(least, value))

/** An angle as a view has it: over -180 to 180 degrees. */
const wrapped = (turned: number): number => turned - 360 * Math.ceil((turned - 180) / 360)

/** A view at the end of the shorter way round from another: its angle may be beyond half a turn. */
export const nearerWay = (from: View, to: View): View => ({
  ...to,
  turned: from.turned + wrapped(to.turned - from.turned),
})

/** A view with its angle as it is written. */
export const asWritten = (view: View): View => ({ ...view, turned: wrapped(view.turned) })

/** A view after a key; `home` is where it comes back to. */
export const turnedBy = (view: View, key: TurnKey, home: View): View => {
  const { turned, raised, zoom } = view
  switch (key) {
    case 'left':
      return { ...view, turned: wrapped(turned + step) }
    case 'right':
      return { ...view, turned: wrapped(turned - step) }
    case 'up':
      return { ...view, raised: clampTo(raised + step, viewLimits.raised) }
    case 'down':
      return { ...view, raised: clampTo(raised - step, viewLimits.raised) }
    case 'in':
      return { ...view, zoom: clampTo(zoom * larger, viewLimits.zoom) }
    case 'out':
      return { ...view, zoom: clampTo(zoom / larger, viewLimits.zoom) }
    case 'back':
      return home
  }
}

/** A view zoomed by a factor, such as two fingers give. */
export const zoomedBy = (view: View, factor: number): View => ({
  ...view,
  zoom: clampTo(view.zoom * factor, viewLimits.zoom),
})

/** A view after a drag by so many pixels from where it was taken hold of. */
export const draggedBy = (view: View, right: number, down: number): View => ({
  ...view,
  turned: wrapped(view.turned - right * degreesAPixel),
  raised: clampTo(view.raised + down * degreesAPixel, viewLimits.raised),
})
