import { needleName } from '../../mechanism/bed.ts'
import { allStrips } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { actWords, acts, isStripSound, stripFeltWords } from '../../words/figures/hand-strip.ts'
import { inLines, type Label, linesAt } from '../shared/labels.ts'
import { stripY } from './layout.ts'
import { arrowEnds } from './plan.ts'
import type { HandStripView } from './view.ts'

/** The strips' numbers, and beside them what a hand feels. */
const stripLabels = ({ layout, frame, strip }: HandStripView): Label[] =>
  allStrips.flatMap((one) => {
    const y = stripY(layout, one) + 4.5
    const isSound = isStripSound(frame.condition, one)
    const look = `${isSound ? '' : 'wrong'}${one === strip ? ' strong' : ''}`
    return [
      { look: 'over strong', x: layout.bed + (layout.shape === 'wide' ? 14 : 8), y, text: String(one) },
      { look, x: layout.words, y, text: stripFeltWords(frame.condition, one) },
    ]
  })

const headings = (view: HandStripView): Label[] => {
  const { layout, strip } = view
  const isWide = layout.shape === 'wide'
  const top = isWide ? 22 : 13
  const y = stripY(layout, strip)
  const [from, to] = arrowEnds(view)
  const push = isWide
    ? { look: 'strong end', x: from - 8, y: y + 4.5, text: 'push' }
    : { look: 'strong middle', x: (from + to) / 2, y: y - layout.finger * 1.2, text: 'push' }
  return isWide
    ? [
        { look: 'title', x: 0, y: top, text: 'From above, at the end of the bed' },
        { look: '', x: 0, y: top + 20, text: 'Plug out. One cover off (dashed).' },
        { look: 'title', x: layout.words, y: top, text: 'Pushed along the bed, and let go' },
        push,
      ]
    : [{ look: 'title', x: 0, y: top, text: 'From above: plug out, one cover off (dashed)' }, push]
}

/** What is done in each picture of a butt, and what follows. */
const actLabels = ({ layout, frame, strip, needle }: HandStripView): Label[] => {
  if (needle === null) return []
  const { lefts, top, words } = layout.acts
  const isWide = layout.shape === 'wide'
  const lead = isWide
    ? `From the front: strip ${strip} held over, and the butt of ${needleName(needle)}`
    : `Strip ${strip} held over, butt of ${needleName(needle)}, from the front`
  return [
    { look: 'title', x: 0, y: top - 10, text: lead },
    ...acts.flatMap((act, n) => {
      const [what, follows] = actWords(frame.condition, strip, needle, act)
      const lines = [
        ...inLines(what, isWide ? 18 : 15).map((text) => ({ look: 'strong', text })),
        ...inLines(follows, isWide ? 22 : 15).map((text) => ({ look: '', text })),
      ]
      return linesAt([at(lefts, n) + words.x, top + words.y], words.step, lines)
    }),
  ]
}

/** Every label of the figure. */
export const labelsOf = (view: HandStripView): Label[] => [
  ...headings(view),
  ...stripLabels(view),
  ...actLabels(view),
]
