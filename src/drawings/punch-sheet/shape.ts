/** How a line is drawn: where to cut, where pages join (dashed), and thin help lines. */
export type LineLook = 'cut' | 'join' | 'thin' | 'ruler'

/** A simple shape on a page, in mm from its upper left corner. */
export type SheetShape =
  | {
      readonly kind: 'circle'
      /** A ring where to punch, a dot where not. */
      readonly look: 'hole' | 'blank'
      readonly x: number
      readonly y: number
      readonly radius: number
      /** The place on the card, from 1, and whether it is there for the second time. */
      readonly row: number
      readonly column: number
      readonly isRepeat: boolean
    }
  | {
      readonly kind: 'line'
      readonly look: LineLook
      readonly x1: number
      readonly y1: number
      readonly x2: number
      readonly y2: number
    }
  | {
      readonly kind: 'text'
      readonly text: string
      /** On the base line, at its beginning, middle or end. */
      readonly x: number
      readonly y: number
      readonly size: number
      readonly anchor: 'start' | 'middle' | 'end'
    }

/** A line from one place to another, mm. */
export const line = (look: LineLook, x1: number, y1: number, x2: number, y2: number): SheetShape => ({
  kind: 'line',
  look,
  x1,
  y1,
  x2,
  y2,
})

/** Words on a page, mm. */
export const words = (
  text: string,
  x: number,
  y: number,
  size: number,
  anchor: 'start' | 'middle' | 'end' = 'start',
): SheetShape => ({ kind: 'text', text, x, y, size, anchor })
