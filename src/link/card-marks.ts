import { quote } from './troubles.ts'

/** Marks that people write for a hole. */
const holes = new Set('oOxX#*1×✕●■⬤•⚫█▪◼◾⬛')
/** Marks for none that can't be meant as a hole. The space counts only in texts that have no other. */
const blanks = new Set('.-_·– ')
/** Marks for none that some people write for a hole: they are holes where the text has no other mark for one. */
const hollow = new Set('0□○◯⚪▫◻◽⬜▢')

/** Whether a text's mark means a hole, for none (an empty cell too), or for neither. */
type MarkMeaning = 'hole' | 'none' | 'unknown'

/** How the marks of one text are to be read, and what there is to say about it. */
export interface MarkMeanings {
  readonly meaning: (mark: string) => MarkMeaning
  readonly remarks: readonly string[]
  /** Whether a `0` may be a slip for an `o`. */
  readonly isZeroDoubtful: boolean
}

/** Whether a character is any mark at all. */
export const isMark = (mark: string): boolean => holes.has(mark) || blanks.has(mark) || hollow.has(mark)

/** Whether a text has a mark for no hole other than the space. */
export const hasVisibleBlank = (text: string): boolean =>
  Array.from(text).some((mark) => mark !== ' ' && (blanks.has(mark) || hollow.has(mark)))

const listed = (marks: readonly string[]): string => marks.map(quote).join(' and ')

/** Finds how a text's marks are meant from all that it uses. */
export const marksOf = (used: ReadonlySet<string>): MarkMeanings => {
  const sure = [...used].filter((mark) => holes.has(mark))
  const open = [...used].filter((mark) => hollow.has(mark))
  const hasBlank = [...used].some((mark) => blanks.has(mark) || mark === '')
  const areOpenHoles = sure.length === 0 && hasBlank && open.length > 0
  const hasLetter = used.has('o') || used.has('O')
  const remarks: string[] = []
  if (areOpenHoles) {
    const verb = open.length > 1 ? 'are' : 'is'
    remarks.push(`There is no other mark for a hole, so ${listed(open)} ${verb} read as one.`)
  } else if (used.has('0') && hasLetter && !hasBlank)
    remarks.push(`“0” is read as no hole and ${quote(used.has('o') ? 'o' : 'O')} as a hole.`)
  if (sure.length > 1 && !hasBlank && open.length === 0)
    remarks.push(`Every mark here means a hole: ${listed(sure)}. Write “.” where there is none.`)
  return {
    meaning: (mark) => {
      if (holes.has(mark) || (areOpenHoles && hollow.has(mark))) return 'hole'
      return mark === '' || blanks.has(mark) || hollow.has(mark) ? 'none' : 'unknown'
    },
    remarks,
    isZeroDoubtful: used.has('0') && hasLetter && hasBlank,
  }
}
