import { dimensions } from '../../mechanism/dimensions.ts'
import { withUnit } from '../../words/lists.ts'

/** Width and height of the papers, mm. The last is as much as both the others hold. */
export const papers = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
  'A4 or Letter': { width: 210, height: 279.4 },
} as const

export type PaperName = keyof typeof papers

/** What a card measures, in mm but for the overlap. */
export interface SheetSettings {
  readonly columnPitch: number
  readonly rowPitch: number
  /** From the middle of the outer holes to the card's edges. */
  readonly margin: number
  /** How many of the first rows come again at the end, so that the card can be joined to a loop. */
  readonly overlap: number
  readonly paper: PaperName
}

/** Common practice, from memory: the page says to measure one's own card. */
export const usualSheet: SheetSettings = {
  columnPitch: 4.5,
  rowPitch: 5,
  margin: 15,
  overlap: 2,
  paper: 'A4',
}

/** Card left between two holes at the least, mm. */
const leastBridge = 0.5

/** Least and most of each setting, in mm, of the overlap in rows. */
export const sheetRanges = {
  columnPitch: [dimensions.hole + leastBridge, 10],
  rowPitch: [dimensions.hole + leastBridge, 12],
  margin: [3, 40],
  overlap: [0, 10],
} as const

const names = {
  columnPitch: 'distance from column to column',
  rowPitch: 'distance from row to row',
  margin: 'margin',
  overlap: 'overlap',
} as const

/** What no printer prints, mm. */
export const edge = 10

/** Room for row numbers left of the card, mm. */
const numbersRoom = 11

/** The part of a paper that the card may take, mm: the rest holds the notes above and the ruler below. */
export const bodyOf = (paper: PaperName): { left: number; right: number; top: number; bottom: number } => ({
  left: edge + numbersRoom,
  right: papers[paper].width - edge,
  top: 38,
  bottom: papers[paper].height - 28,
})

/** A card's width, mm. */
export const cardWidth = ({ columnPitch, margin }: SheetSettings): number =>
  (dimensions.columns - 1) * columnPitch + 2 * margin

/** A length for a sentence, mm. */
export const length = (mm: number): number => Math.round(10 * mm) / 10

/** One sentence about settings that give no sheet; null where they do. */
export const sheetTrouble = (settings: SheetSettings): string | null => {
  for (const key of ['columnPitch', 'rowPitch', 'margin', 'overlap'] as const) {
    const [least, most] = sheetRanges[key]
    const value = settings[key]
    if (key === 'overlap' && !Number.isInteger(value)) return 'The overlap must be a whole number of rows.'
    if (!(value >= least && value <= most))
      return `The ${names[key]} must be ${least} to ${key === 'overlap' ? `${most} rows` : withUnit(most, 'mm')}.`
  }
  const { left, right } = bodyOf(settings.paper)
  const width = cardWidth(settings)
  return width <= right - left
    ? null
    : `With these measures the card is ${withUnit(length(width), 'mm')} wide, but ${settings.paper} paper leaves ${withUnit(length(right - left), 'mm')} for it.`
}
