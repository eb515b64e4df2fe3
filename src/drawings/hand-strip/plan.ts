import { stripFelt } from '../../mechanism/by-hand.ts'
import { allStrips, type Strip } from '../../mechanism/indices.ts'
import { lastOf } from '../../mechanism/lookup.ts'
import { fingerLines, handArrow } from '../shared/hand.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline } from '../shared/paths.ts'
import { stripY } from './layout.ts'
import type { HandStripView } from './view.ts'

/** How far a strip is to the right in the picture: the one at which the finger is, pushed. */
const shiftOf = ({ frame, layout, strip }: HandStripView, of: Strip): number => {
  const felt = stripFelt(frame.condition, of)
  return (of === strip ? felt.pushed : felt.after) * layout.perMm
}

/** Upper and lower edge of the bed's piece. */
const edges = ({ layout }: HandStripView): readonly [number, number] => [
  layout.first - layout.step,
  stripY(layout, lastOf(allStrips)) + layout.step,
]

/** The bed, open where the cover was, its end cut between the strips, and the cover that is off. */
export const bedLines = (view: HandStripView): Line[] => {
  const { layout } = view
  const { bed, broken, wall, half } = layout
  const [top, bottom] = edges(view)
  const slot = half + 2
  const middles = allStrips.map((strip) => stripY(layout, strip))
  const walls = [top, ...middles.map((y) => y + slot)].map((from, n) =>
    boxPath(bed - wall, from, bed, (middles[n] ?? bottom + slot) - slot),
  )
  const right = broken + half
  return [
    {
      look: 'hand-body',
      d: outline([
        [bed, top],
        [right, top],
        [right - half, top + (bottom - top) * 0.35],
        [right + half, top + (bottom - top) * 0.6],
        [right, bottom],
        [bed, bottom],
      ]),
    },
    { look: 'hand-wall', d: walls.join(''), hatch: 'cut' },
    {
      look: 'hand-off',
      d: boxPath(layout.end - half * 2.4, top - half, bed + wall * 0.6, bottom + half),
    },
  ]
}

/** The eight strips from above; where the one that is pushed was before. */
export const stripLines = (view: HandStripView): Line[] => {
  const { layout, strip } = view
  const { half, end, broken } = layout
  return allStrips.flatMap((one): Line[] => {
    const y = stripY(layout, one)
    const left = end + shiftOf(view, one)
    const isBroken = view.broken.has(`strip.${one}`)
    return [
      { look: 'hand-still', d: left > end ? boxPath(end, y - half, left, y + half) : '' },
      {
        look: `hand-part${one === strip ? ' felt' : ''}${isBroken ? ' broken' : ''}`,
        d: outline([
          [left, y - half],
          [broken, y - half],
          [broken - half / 2, y - half / 3],
          [broken + half / 2, y + half / 3],
          [broken, y + half],
          [left, y + half],
        ]),
        part: `strip.${one}`,
        ...(isBroken ? { hatch: 'broken' as const } : {}),
      },
    ]
  })
}

/** Where the arrow behind the finger begins and ends. */
export const arrowEnds = (view: HandStripView): readonly [number, number] => {
  const { layout, strip } = view
  const back = layout.end + shiftOf(view, strip) - layout.finger * 6.95
  return [back - layout.finger * 3.6, back]
}

/** The finger at the strip's end, and the way it pushes. */
export const handLines = (view: HandStripView): Line[] => {
  const { layout, strip } = view
  const y = stripY(layout, strip)
  const [from, to] = arrowEnds(view)
  return [
    ...fingerLines({ tip: [layout.end + shiftOf(view, strip) - 1, y], points: 0, half: layout.finger }),
    handArrow([from, y], [to, y], layout.finger * 0.75),
  ]
}
