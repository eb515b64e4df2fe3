import { fingerLines, handArrow } from '../shared/hand.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline, px } from '../shared/paths.ts'
import type { FigureView } from '../shared/view.ts'
import type { HandBarLayout } from './layout.ts'

/** The bed from above, broken off at the left, with its needles; the bar over them, drawn out at the end. */
export const planLines = ({ layout, broken }: FigureView<HandBarLayout>): Line[] => {
  const { left, end, top, bottom, pitch, bar, half, out } = layout.plan
  const needles = Array.from(
    { length: Math.floor((end - left - pitch) / pitch) },
    (_, n) => left + pitch * (n + 1),
  )
  const isBroken = broken.has('retainer')
  const [from, to] = [left + out + pitch * 2, end + out]
  const deck = top + (bar - half - top) * 0.7
  return [
    {
      look: 'hand-body',
      d: outline([
        [end, top],
        [end, bottom],
        [left + half, bottom],
        [left, top + (bottom - top) * 0.6],
        [left + half, top + (bottom - top) * 0.35],
        [left + half, top],
      ]),
    },
    { look: 'hand-line', d: needles.map((x) => `M${px(x)},${deck}V${bottom + half * 0.7}`).join('') },
    {
      look: `hand-part felt${isBroken ? ' broken' : ''}`,
      d: boxPath(from, bar - half, to, bar + half),
      part: 'retainer',
      ...(isBroken ? { hatch: 'broken' as const } : {}),
    },
    { look: 'hand-still', d: boxPath(left + pitch, bar - half, from, bar + half) },
    { look: 'hand-wall', d: boxPath(left + half, top, end, deck), hatch: 'cut' },
  ]
}

/** Two fingers that hold the bar's end from both sides, and the way that they draw it. */
export const planHand = ({ layout }: FigureView<HandBarLayout>): Line[] => {
  const { end, bar, half, out } = layout.plan
  const { finger } = layout
  const grip = end + out - finger * 1.4
  return [
    ...fingerLines({ tip: [grip, bar - half], points: 110, half: finger }),
    ...fingerLines({ tip: [grip, bar + half], points: 250, half: finger }),
    handArrow([end + out + finger * 0.8, bar], [end + out + finger * 5.2, bar], finger * 0.8),
  ]
}
