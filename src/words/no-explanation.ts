import { needlesListed } from './lists.ts'

/** The advice where nothing explains what was noted: what to do, the nearest explanation, and what else it may be. */
export interface NoExplanationWords {
  readonly lead: string
  readonly nearest: string
  readonly otherwise: string
}

/** The advice beside the nearest explanation, by its title. `isRough`: the notes already count as rough, with slips. */
export const noExplanationWords = (nearest: string, isRough: boolean): NoExplanationWords => ({
  lead: 'Look at the bed again before you open anything. One row noted under another’s number, or one pass noted the wrong way, is enough, and nothing explains it.',
  nearest: `The nearest explanation: ${nearest}. These needles don’t fit.`,
  otherwise: [
    ...(isRough ? [] : ['If you marked in passing, say “roughly” beside the marks.']),
    'If they are right, more than two parts are at fault, or something that this page does not know: mend what you find, and note a new pass.',
  ].join(' '),
})

/** The needles of a pass that speak against the nearest explanation: Row 1 to the right: R3 and R11. */
export const doubtWords = (pass: string, needles: readonly number[]): string =>
  `${pass}: ${needlesListed(needles)}.`
