import type { CardGrid } from './grid.ts'
import type { HolePosition } from './grid-rows.ts'

/** Rows that the Page keys move by. */
const page = 8

/** Where a key leads from a place; null for other keys. Row 1 is at the bottom. */
const placeAfter = (key: string, isWhole: boolean, { row, column }: HolePosition): HolePosition | null => {
  switch (key) {
    case 'ArrowUp':
      return { row: row + 1, column }
    case 'ArrowDown':
      return { row: row - 1, column }
    case 'ArrowLeft':
      return { row, column: column - 1 }
    case 'ArrowRight':
      return { row, column: column + 1 }
    case 'PageUp':
      return { row: row + page, column }
    case 'PageDown':
      return { row: row - page, column }
    case 'Home':
      return { row: isWhole ? Infinity : row, column: 1 }
    case 'End':
      return { row: isWhole ? 1 : row, column: Infinity }
    default:
      return null
  }
}

/** Arrows, Home, End and Page keys move the place; Space and Enter punch or fill it. */
export const moveByKeys = (grid: CardGrid, moved: () => void, punch: () => void): void => {
  grid.element.addEventListener('keydown', (event) => {
    if (event.altKey || event.metaKey) return
    if (event.key === ' ' || event.key === 'Enter') {
      event.preventDefault()
      if (!event.repeat) punch()
      return
    }
    const place = placeAfter(event.key, event.ctrlKey, grid.place())
    if (!place) return
    event.preventDefault()
    grid.choose(place)
    grid.reveal()
    moved()
  })
}
