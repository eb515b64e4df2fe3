import type { CardGrid } from './grid.ts'
import type { HolePosition } from './grid-rows.ts'

/** What the hand does to the card. */
export interface Hand {
  readonly isHole: (place: HolePosition) => boolean
  /** Punches or fills places. */
  readonly paint: (places: readonly HolePosition[], isHole: boolean) => void
  /** A finger chose a row. */
  readonly touched: () => void
}

/** The places on the way from one to another, without the first: a quick hand skips some. */
export const placesBetween = (from: HolePosition, to: HolePosition): HolePosition[] => {
  const steps = Math.max(Math.abs(to.row - from.row), Math.abs(to.column - from.column))
  return Array.from({ length: steps }, (_, n) => {
    const share = (n + 1) / steps
    return {
      row: Math.round(from.row + share * (to.row - from.row)),
      column: Math.round(from.column + share * (to.column - from.column)),
    }
  })
}

/**
 * Mouse and pen punch or fill where they press, and go on so while they are dragged. A finger is too broad for that: its
 * tap chooses the place, and its drag scrolls.
 */
export const paintByPointer = (grid: CardGrid, hand: Hand): void => {
  let stroke: { isHole: boolean; last: HolePosition } | null = null
  let isTouch = false
  grid.element.addEventListener('pointerdown', (event) => {
    isTouch = event.pointerType === 'touch'
    const place = grid.placeOf(event.target)
    if (isTouch || event.button !== 0 || !place) return
    const isHole = !hand.isHole(place)
    stroke = { isHole, last: place }
    grid.element.setPointerCapture(event.pointerId)
    grid.element.focus({ preventScroll: true })
    grid.choose(place)
    hand.paint([place], isHole)
  })
  grid.element.addEventListener('pointermove', (event) => {
    if (!stroke) return
    const place = grid.placeAt(event.clientX, event.clientY)
    const way = placesBetween(stroke.last, place)
    if (way.length === 0) return
    stroke.last = place
    grid.choose(place)
    hand.paint(way, stroke.isHole)
  })
  for (const end of ['pointerup', 'pointercancel'])
    grid.element.addEventListener(end, () => {
      stroke = null
    })
  grid.element.addEventListener('click', (event) => {
    const place = isTouch ? grid.placeOf(event.target) : null
    if (!place) return
    grid.choose(place)
    hand.touched()
  })
}
