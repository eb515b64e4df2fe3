import { stripOfColumn } from '../../mechanism/bed.ts'
import { isPinSound, isRodSound, pinFeltWords, rodFeltWords } from '../../words/figures/hand-pin.ts'
import type { Label } from '../shared/labels.ts'
import type { HandPinView } from './view.ts'

const felt = (
  [x, y]: readonly [number, number],
  line: number,
  words: readonly string[],
  isSound: boolean,
): Label[] =>
  words.map((text, n) => ({
    look: n === 0 ? (isSound ? 'strong' : 'wrong') : '',
    x,
    y: y + n * line,
    text,
  }))

/** Every label of the figure. */
export const labelsOf = ({ layout, column, frame }: HandPinView): Label[] => {
  const { side, front, line, finger } = layout
  const { condition } = frame
  const isWide = layout.shape === 'wide'
  const top = isWide ? 22 : 13
  const second = isWide ? top : front.datum - finger * 8
  const strip = stripOfColumn(column)
  return [
    { look: 'title', x: side.title, y: top, text: `Pin ${column} from the side: press, let go` },
    { look: '', x: side.title, y: top + line, text: 'Card out (dashed). Nothing opened.' },
    { look: 'title', x: front.title, y: second, text: `From the front: push its front leg to the left` },
    { look: 'end', x: side.front - layout.finger * 1.2, y: side.datum - 12, text: isWide ? 'front leg' : '' },
    { look: '', x: side.back + finger * 3.2, y: side.datum - finger * 5, text: 'press' },
    { look: '', x: side.words[0], y: side.datum + 12, text: 'top plate' },
    { look: '', x: front.leg + finger * 5.2, y: front.datum - finger * 5.2, text: 'push' },
    { look: 'end', x: front.left - 6, y: front.datum + 9, text: isWide ? '' : 'top plate' },
    { look: 'end', x: front.left - 6, y: front.datum + 2.6 * front.perMm, text: isWide ? '' : 'rocker' },
    { look: 'end', x: front.left - 6, y: front.plate + 8, text: isWide ? '' : 'plate' },
    { look: 'end strong', x: front.left - 6, y: front.strip + 4.5, text: isWide ? '' : `strip ${strip}` },
    { look: '', x: front.right + 8, y: front.datum + 9, text: isWide ? 'top plate' : '' },
    { look: '', x: front.right + 8, y: front.datum + 2.6 * front.perMm, text: isWide ? 'rocker' : '' },
    { look: '', x: front.right + 8, y: front.plate + 8, text: isWide ? 'plate of the rods' : '' },
    { look: 'strong', x: front.left, y: front.strip + 26, text: isWide ? `strip ${strip}, in the bed` : '' },
    ...felt(side.words, line, pinFeltWords(condition, column), isPinSound(condition, column)),
    ...felt(front.words, line, rodFeltWords(condition, column), isRodSound(condition, column)),
  ]
}
