import type { BedMarks, NeedleMark } from '../../link/bed-marks.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import { type Needle, needleAtSlot } from '../../mechanism/indices.ts'
import { checkWords } from '../../words/checks.ts'
import { faultPhrase } from '../../words/faults.ts'
import { markedWords, passPhrase } from '../../words/finding.ts'

const needlesWith = (marks: BedMarks, mark: NeedleMark): Needle[] =>
  marks.flatMap((other, slot) => (other === mark ? [needleAtSlot(slot, marks.length)] : []))

/** How a bed was marked, in a phrase of counts. */
export const seenWords = (marks: BedMarks): string =>
  markedWords(needlesWith(marks, 'w'), needlesWith(marks, 'u'), needlesWith(marks, 'n').length)

/** What was seen in a pass, in a line; `titleOf` gives a card of the site its title. */
const passLine = ({ card, row, way, speed, marks }: SeenPass, titleOf: (id: string) => string): string => {
  const title = card.kind === 'site' ? `, ${titleOf(card.id)}` : card.kind === 'own' ? ', own card' : ''
  return `${passPhrase(row, way, speed)}${title}: ${seenWords(marks)}.`
}

const checkName = (check: string): string =>
  Object.hasOwn(checkWords, check) ? checkWords[check as keyof typeof checkWords] : check

/** What was looked at, passes and checks by hand, a line each. */
export const checkedLines = (
  { passes, checked }: Pick<Session, 'passes' | 'checked'>,
  titleOf: (id: string) => string,
): string[] => [
  ...passes.map((pass) => passLine(pass, titleOf)),
  ...checked.map(
    ({ check, found }) => `${checkName(check)} ${found ? `${faultPhrase(found)}.` : 'All sound there.'}`,
  ),
]
