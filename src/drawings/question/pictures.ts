import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Picture } from '../../lesson/question.ts'
import { listed } from '../../words/lists.ts'
import type { Paper } from '../shared/elements.ts'

/** How a needle is drawn: as in the figures, where it is and whether that was asked. */
export type NeedleLook = 'plain' | 'selected' | 'missed' | 'extra' | 'unmoved'

const stem = 'M7 3v34a3 3 0 0 0 6 0v-3'
const butt = 'M3 12h8v9H3z'

/** A needle from above, hook to the front; where it came out wrong, a dashed ghost is where it should be. */
export const needlePicture = (paper: Paper, mark: NeedleLook): SVGElement =>
  paper.svg('svg', { viewBox: '0 0 16 56', class: 'needle-picture', 'data-mark': mark }, [
    ...(mark === 'missed' || mark === 'extra' ? [paper.svg('path', { class: 'ghost', d: stem })] : []),
    paper.svg('g', { class: 'standing' }, [
      paper.svg('path', { class: 'stem', d: stem }),
      paper.svg('path', { class: 'butt', d: butt }),
    ]),
  ])

/** Things along the bed or the card in groups of eight, so that a strip's needles are in one place of each. */
export const inEights = (
  paper: Paper,
  things: readonly Node[],
  nameOf: (from: number, to: number) => string,
): HTMLElement[] => {
  const groups: HTMLElement[] = []
  for (let from = 0; from < things.length; from += dimensions.strips) {
    const some = things.slice(from, from + dimensions.strips)
    groups.push(
      paper.html('div', { class: 'eight' }, [
        paper.html('div', { class: 'eight-things' }, some),
        paper.html('span', { class: 'eight-name', 'aria-hidden': 'true' }, [
          nameOf(from, from + some.length - 1),
        ]),
      ]),
    )
  }
  return groups
}

/** R1 to R8, for the needles of a group. */
export const needleSpan =
  (first: number) =>
  (from: number, to: number): string =>
    `${needleName(toNeedle(first + from))} to ${needleName(toNeedle(first + to))}`

const markOf = ({ asked, came }: Extract<Picture, { kind: 'bed' }>, n: number): NeedleLook => {
  const out = came[n] ?? 'plain'
  if (out === 'unmoved') return 'unmoved'
  if (out === asked[n]) return out
  return out === 'selected' ? 'extra' : 'missed'
}

/** A question's picture. The bed's words are below it, so a screen reader needs no more than they say. */
export const pictureOf = (paper: Paper, picture: Picture): HTMLElement => {
  const title = paper.html('figcaption', {}, [picture.title])
  if (picture.kind === 'bed') {
    const needles = picture.came.map((_, n) => needlePicture(paper, markOf(picture, n)))
    return paper.html('figure', { class: 'seen' }, [
      title,
      paper.html(
        'div',
        { class: 'eights', 'aria-hidden': 'true' },
        inEights(paper, needles, needleSpan(picture.first)),
      ),
      paper.html('p', {}, [`On the bed: ${picture.words}.`]),
    ])
  }
  const columns = picture.holes.flatMap((hole, n) => (hole ? [String(n + 1)] : []))
  const cells = picture.holes.map((hole) =>
    paper.html('span', { class: 'cell', 'data-hole': hole ? 'hole' : 'none' }),
  )
  return paper.html('figure', { class: 'seen' }, [
    title,
    paper.html(
      'div',
      {
        class: 'eights holes-row',
        role: 'img',
        'aria-label': `Holes in ${columns.length === 1 ? 'column' : 'columns'} ${listed(columns)}`,
      },
      inEights(paper, cells, (from, to) => `${from + 1} to ${to + 1}`),
    ),
  ])
}
