import { speeds } from '../../find/battery.ts'
import type { Answer, CourseMessage } from '../../find/messages.ts'
import { passesMinutes } from '../../find/pass-time.ts'
import { placeOfFault } from '../../find/place.ts'
import { type CardAndPasses, isSameCard } from '../../find/query.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { advisedWords, alikeWords, costWords, provedWords } from '../../words/best-course.ts'
import { passPhrase } from '../../words/finding.ts'
import { finderWords } from '../../words/practice.ts'
import { element } from '../../browser/dom.ts'

const passesList = ({ card: own, passes }: Pick<CardAndPasses, 'card' | 'passes'>): HTMLElement =>
  element(
    'ol',
    {},
    passes.map(({ card, row, way, speed }) => {
      const name =
        card === null || isSameCard(card, own) ? '' : card[0] === 0 ? 'Blank card: ' : 'Card of all holes: '
      const slowly = speed > speeds.ordinary ? ', once a slow pass has run freely' : ''
      return element('li', {}, [`${name}${passPhrase(row, way, speed)}${slowly}`])
    }),
  )

/** What the page says of a course once the answer is out: the best one to a single fault, or the page's own to several. */
export const courseParts = (
  { best, advised }: CourseMessage,
  faults: readonly Fault[],
  answers: readonly Answer[],
): HTMLElement[] => {
  // A course begins with the card in question.
  const card = advised.passes[0]?.card ?? null
  const minutes = passesMinutes({ card, passes: advised.passes })
  if (best) {
    const least = passesMinutes({ card, passes: best.passes })
    const words = [
      provedWords(best.isProved),
      alikeWords(best.alike),
      advisedWords(advised.passes.length, minutes, least),
    ]
    return [
      element('p', {}, [`The best course: ${costWords(best.passes.length, least)}.`]),
      passesList({ card, passes: best.passes }),
      ...words.filter(Boolean).map((sentence) => element('p', {}, [sentence])),
    ]
  }
  const truths = faults.map(placeOfFault)
  const namedBy = (places: readonly string[]): number =>
    truths.filter((truth) => places.includes(truth)).length
  const likely = answers.flatMap(({ place, probability }) => (place && probability > 0.5 ? [place] : []))
  return [
    element('p', {}, [
      finderWords(
        truths.length,
        namedBy(likely),
        costWords(advised.passes.length, minutes),
        namedBy(advised.places),
      ),
    ]),
    passesList({ card, passes: advised.passes }),
  ]
}
