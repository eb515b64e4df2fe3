import { pinFelt } from '../../mechanism/by-hand.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { fingerLines, handArrow } from '../shared/hand.ts'
import { springUp } from '../shared/detail/profile.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, px } from '../shared/paths.ts'
import type { HandPinView } from './view.ts'

/** How far below its tips the wire is bent back, in mm, and how far below the top plate the reader's floor is. */
const [bend, floor] = [4.8, 7.4] as const

/** The outline of a wire bent like a U, its tips at a height in mm above the top plate. */
const wire = ({ layout }: HandPinView, height: number): string => {
  const { front, back, datum, perMm } = layout.side
  const r = (dimensions.pin / 2) * perMm
  const y = (mm: number): number => px(datum - mm * perMm)
  const [tip, foot] = [y(height - dimensions.pin / 2), y(height - bend)]
  const leg = (x: number): string => `V${tip}A${px(r)},${px(r)} 0 0 1 ${px(x + r)},${tip}`
  const [outer, inner] = [(back - front) / 2 + r, (back - front) / 2 - r]
  return (
    `M${px(front - r)},${foot}${leg(front)}V${foot}A${px(inner)},${px(inner)} 0 0 0 ${px(back - r)},${foot}` +
    `${leg(back)}V${foot}A${px(outer)},${px(outer)} 0 0 1 ${px(front - r)},${foot}Z`
  )
}

/** The pin from the side, pressed down by a finger on its back leg; where it was before; plate, spring and floor. */
export const sideLines = (view: HandPinView): Line[] => {
  const { layout, column } = view
  const { front, back, datum, perMm } = layout.side
  const felt = pinFelt(view.frame.condition, column)
  const y = (mm: number): number => datum - mm * perMm
  const r = (dimensions.pin / 2 + 0.25) * perMm
  const thick = 0.45 * perMm
  const middle = (front + back) / 2
  const plates: [number, number][] = [
    [front - 2.6 * perMm, front - r],
    [front + r, back - r],
    [back + r, back + 1.6 * perMm],
  ]
  const isBroken = view.broken.has(`pin.${column}`)
  const bottom = y(felt.pressed - bend) + (back - front) / 2 + (dimensions.pin / 2) * perMm
  return [
    {
      look: 'hand-off',
      d: `M${px(back - 2 * perMm)},${px(y(dimensions.pinLow + 0.18))}H${px(back + 3.2 * perMm)}`,
    },
    {
      look: 'hand-wall',
      d: plates.map(([x0, x1]) => boxPath(x0, datum, x1, datum + thick)).join(''),
      hatch: 'cut',
    },
    {
      look: 'hand-line',
      d: springUp({ x: middle, rest: 0, along: perMm, up: 1 }, -(bottom + floor * 4), -bottom, 0.8),
    },
    {
      look: 'hand-wall',
      d: boxPath(front - perMm, bottom + floor * 4, back + perMm, bottom + floor * 4 + thick),
      hatch: 'cut',
    },
    { look: 'hand-still', d: felt.before > felt.pressed ? wire(view, felt.before) : '' },
    {
      look: `hand-part felt${isBroken ? ' broken' : ''}`,
      d: wire(view, felt.pressed),
      part: `pin.${column}`,
      ...(isBroken ? { hatch: 'broken' as const } : {}),
    },
    ...fingerLines({ tip: [back, y(felt.pressed) - 1], points: 90, half: layout.finger }),
    handArrow(
      [back + layout.finger * 2.1, y(felt.pressed) - layout.finger * 4.6],
      [back + layout.finger * 2.1, y(felt.pressed) - layout.finger * 1.2],
      layout.finger * 0.7,
    ),
  ]
}
