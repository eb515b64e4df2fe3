import { at } from '../../mechanism/lookup.ts'
import { type Padding, paddingOf, paddings } from '../../words/figures/hand-bar.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline, type PicturePoint } from '../shared/paths.ts'
import type { FigureView } from '../shared/view.ts'
import type { HandBarLayout } from './layout.ts'

/** How thick each padding is drawn, and how far above the needle it ends: a tired one no longer reaches it. */
const shapes: Readonly<Record<Padding, { readonly thick: number; readonly gap: number }>> = {
  sound: { thick: 30, gap: 0 },
  tired: { thick: 11, gap: 19 },
}

/** Where the section's drawing is in its frame: the needle's upper side, and the bar's two sides. */
const [needleTop, barLeft, barRight] = [96, 46, 104] as const

const sectionLines = (
  { layout, frame }: FigureView<HandBarLayout>,
  padding: Padding,
  left: number,
): Line[] => {
  const { top, width, height, scale } = layout.sections
  const { thick, gap } = shapes[padding]
  const x = (value: number): number => left + 8 + value * scale
  const y = (value: number): number => top + 4 + value * scale
  const bottom = needleTop - gap
  const isNow = paddingOf(frame.condition) === padding
  const points = (list: readonly PicturePoint[]): string => outline(list.map(([a, b]) => [x(a), y(b)]))
  return [
    {
      look: `still-frame${isNow ? ' now' : ''}`,
      d: `M${left},${top}h${width}v${height}h${-width}Z`,
    },
    { look: 'hand-wall', d: boxPath(x(0), y(needleTop + 9), x(150), y(needleTop + 34)), hatch: 'cut' },
    {
      look: 'hand-part',
      d: points([
        [4, needleTop],
        [140, needleTop],
        [147, needleTop - 8],
        [150, needleTop - 5],
        [143, needleTop + 5],
        [4, needleTop + 5],
      ]),
    },
    {
      look: `hand-padding ${padding}`,
      d:
        padding === 'sound'
          ? boxPath(x(barLeft + 4), y(bottom - thick), x(barRight - 4), y(bottom))
          : points([
              [barLeft + 4, bottom - thick],
              [barRight - 4, bottom - thick],
              [barRight - 4, bottom - 3],
              [barRight - 16, bottom],
              [barRight - 28, bottom - 4],
              [barLeft + 18, bottom - 1],
              [barLeft + 4, bottom - 5],
            ]),
      part: 'retainer',
    },
    {
      look: 'hand-part felt',
      d: points([
        [barLeft, 50],
        [barRight, 50],
        [barRight, 78],
        [barRight - 4, 78],
        [barRight - 4, 56],
        [barLeft + 4, 56],
        [barLeft + 4, 78],
        [barLeft, 78],
      ]),
    },
  ]
}

/** The bar in section over a needle, with sound and with tired padding; this machine's own is framed. */
export const sectionsLines = (view: FigureView<HandBarLayout>): Line[] =>
  paddings.flatMap((padding, n) => sectionLines(view, padding, at(view.layout.sections.lefts, n)))
