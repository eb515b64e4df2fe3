import { stripOfColumn } from '../../mechanism/bed.ts'
import { isPinSound, isRodSound, pinFeltWords, rodFeltWords } from '../../words/figures/hand-pin.ts'
import { inLines, type Label, linesAt } from '../shared/labels.ts'
import type { PicturePoint } from '../shared/paths.ts'
import type { HandPinView } from './view.ts'

/** What a hand feels, in lines of at most so many letters: first what it is, then what follows. */
const felt = (
  from: PicturePoint,
  step: number,
  [what, follows]: readonly [string, string],
  isSound: boolean,
  most: number,
): Label[] =>
  linesAt(from, step, [
    ...inLines(what, most).map((text) => ({ look: isSound ? 'strong' : 'wrong', text })),
    ...inLines(follows, most).map((text) => ({ look: '', text })),
  ])

/** The names of what is seen, where there is room for them. */
const names = ({ layout: { side, front, finger }, column }: HandPinView): Label[] => [
  { look: 'end', x: side.front - finger * 1.6, y: side.datum - 12, text: 'front leg' },
  { look: '', x: side.words[0], y: side.datum + 12, text: 'top plate' },
  { look: '', x: front.right + 8, y: front.datum + 9, text: 'top plate' },
  { look: '', x: front.leg + finger * 2.4, y: front.datum + 2.6 * front.perMm, text: 'rocker' },
  { look: '', x: front.right + 8, y: front.plate + 8, text: 'plate of the rods' },
  { look: 'strong', x: front.left, y: front.strip + 28, text: `strip ${stripOfColumn(column)}, in the bed` },
]

/** The same where there is little room: only the strip is named. */
const fewNames = ({ layout: { front }, column }: HandPinView): Label[] => [
  { look: 'strong', x: front.left, y: front.strip + 20, text: `strip ${stripOfColumn(column)}` },
]

/** Every label of the figure. */
export const labelsOf = (view: HandPinView): Label[] => {
  const { layout, column, frame } = view
  const { side, front, line, finger } = layout
  const { condition } = frame
  const isWide = layout.shape === 'wide'
  const top = isWide ? 22 : 13
  return [
    {
      look: 'title',
      x: side.title,
      y: top,
      text: isWide ? `Pin ${column} from the side: press, let go` : `Pin ${column}: press, let go`,
    },
    { look: '', x: side.title, y: top + line, text: 'Card out (dashed). Nothing opened.' },
    {
      look: 'title',
      x: front.title,
      y: top,
      text: isWide ? 'From the front: push its front leg to the left' : 'From the front: push it left',
    },
    { look: '', x: side.back + finger * 3.1, y: side.datum - finger * 5, text: isWide ? 'press' : '' },
    { look: '', x: front.leg + finger * 5, y: front.datum - finger * 5.2, text: isWide ? 'push' : '' },
    ...(isWide ? names(view) : fewNames(view)),
    ...felt(
      side.words,
      line,
      pinFeltWords(condition, column),
      isPinSound(condition, column),
      isWide ? 30 : 20,
    ),
    ...felt(
      front.words,
      line,
      rodFeltWords(condition, column),
      isRodSound(condition, column),
      isWide ? 40 : 27,
    ),
  ]
}
