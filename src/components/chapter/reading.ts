/** Words read in a minute by somebody who looks at drawings between them. */
const wordsAMinute = 170

/** How long a chapter takes, in whole minutes, from its text; looking and trying included by half a minute a step. */
export const minutesOf = (text: string): number => {
  const steps = text.match(/<Step\b/g)?.length ?? 0
  const prose = text.replace(/<[^>]*>|\{[^}]*\}/g, ' ')
  const words = prose.match(/[\p{L}\p{N}’'-]+/gu)?.length ?? 0
  return Math.max(1, Math.round(words / wordsAMinute + steps / 4))
}
