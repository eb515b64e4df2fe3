import type { SeenPass } from '../../link/session.ts'
import { markedWords, passPhrase } from '../../words/finding.ts'

const indexesOf = (marks: readonly string[], mark: string): number[] =>
  marks.flatMap((other, index) => (other === mark ? [index] : []))

/** What was seen in a pass, in a line; `titleOf` gives a card of the site its title. */
export const passLine = (
  { card, row, way, speed, marks }: SeenPass,
  titleOf: (id: string) => string,
): string => {
  const title = card.kind === 'site' ? `, ${titleOf(card.id)}` : card.kind === 'own' ? ', own card' : ''
  const seen = markedWords(indexesOf(marks, 'w'), indexesOf(marks, 'u'), indexesOf(marks, 'n').length)
  return `${passPhrase(row, way, speed)}${title}: ${seen}.`
}
