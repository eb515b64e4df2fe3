import { withoutNotes } from './chapter-notes.ts'

/** Words read in a minute, an ordinary pace for plain prose. */
const wordsAMinute = 200

/** How long a chapter's text takes to read, in whole minutes; trying things out takes as long as one likes. */
export const minutesOf = (text: string): number => {
  const prose = withoutNotes(text).replace(/<[^>]*>|\{[^}]*\}/g, ' ')
  const words = prose.match(/[\p{L}\p{N}’'-]+/gu)?.length ?? 0
  return Math.max(1, Math.round(words / wordsAMinute))
}
