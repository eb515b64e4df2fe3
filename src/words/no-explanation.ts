import { counted, needlesListed } from './lists.ts'

/** The advice where some notes are likelier slips than what the machine did. */
export interface DoubtfulNotesWords {
  readonly lead: string
  readonly why: string
  readonly otherwise: string
}

/** The advice about so many doubtful notes. `isRough`: the notes already count as rough, with slips. */
export const doubtfulNotesWords = (count: number, isRough: boolean): DoubtfulNotesWords => ({
  lead: `Look at the bed again before you open anything: ${counted(count, 'note')} ${count === 1 ? 'is' : 'are'} likelier a slip than what the machine did.`,
  why: 'One row noted under another’s number, or one pass noted the wrong way, is enough for many.',
  otherwise: [
    ...(isRough ? [] : ['If you marked in passing, say “roughly” beside the marks.']),
    'If they are right, something is wrong that this page does not know: mend what you find, and note a new pass.',
  ].join(' '),
})

/** The needles of a pass whose notes are doubtful: Row 1 to the right: R3 and R11. */
export const doubtWords = (pass: string, needles: readonly number[]): string =>
  `${pass}: ${needlesListed(needles)}.`
