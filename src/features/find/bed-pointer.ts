import type { BedGrid } from './bed-grid.ts'

/** Begins with a needle; returns what to do with each needle that the pointer comes to after it. */
export type StartDrag = (needle: number, isRange: boolean) => (to: number) => void

/** A press marks a needle, and a drag the needles on the way. */
export const bindPointer = (grid: BedGrid, start: StartDrag): void => {
  bindMouse(grid, start)
  // A finger may be about to scroll: it marks once it is lifted, or once it has moved along the line.
  bindTouch(grid, start)
}

const bindMouse = (grid: BedGrid, start: StartDrag): void => {
  let drag: ((to: number) => void) | null = null
  const end = (): void => {
    drag = null
  }
  grid.root.addEventListener('pointerdown', (event) => {
    const needle = grid.needleAt(event.target)
    if (needle === null || event.button !== 0 || event.pointerType === 'touch') return
    event.preventDefault()
    drag = start(needle, event.shiftKey)
    grid.root.setPointerCapture(event.pointerId)
  })
  grid.root.addEventListener('pointermove', (event) => {
    if (!drag) return
    const to = grid.needleAt(document.elementFromPoint(event.clientX, event.clientY))
    if (to !== null) drag(to)
  })
  grid.root.addEventListener('pointerup', end)
  grid.root.addEventListener('pointercancel', end)
}

/** How far a finger moves sideways, in pixels, before it drags. */
const slack = 12

const bindTouch = (grid: BedGrid, start: StartDrag): void => {
  let first: { needle: number; x: number; drag: ((to: number) => void) | null } | null = null
  grid.root.addEventListener('pointerdown', (event) => {
    const needle = grid.needleAt(event.target)
    if (event.pointerType === 'touch' && needle !== null) first = { needle, x: event.clientX, drag: null }
  })
  grid.root.addEventListener('pointermove', (event) => {
    if (!first) return
    if (!first.drag && Math.abs(event.clientX - first.x) > slack) first.drag = start(first.needle, false)
    const to = grid.needleAt(document.elementFromPoint(event.clientX, event.clientY))
    if (to !== null) first.drag?.(to)
  })
  grid.root.addEventListener('pointerup', () => {
    if (first && !first.drag) start(first.needle, false)
    first = null
  })
  grid.root.addEventListener('pointercancel', () => {
    first = null
  })
}
