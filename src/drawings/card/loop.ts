import { measureOfColumn } from '../../mechanism/indices.ts'
import { hatch } from '../shared/definitions.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { drumRadius } from './ends.ts'
import { type EndPlace, perMm, rowSpacing } from './layout.ts'
import type { CardView } from './view.ts'

/** The card lies this much outside the drum, in pixels. */
const onDrum = 1.5
const radius = drumRadius + onDrum

/** Where the loop is bent over at its top, from the drum's axis: its length is a whole number of rows. */
const loopTop = -173.2
const arc = (x: number, y: number): string => `A${radius},${radius} 0 0 0 ${px(x)},${px(y)}`

/** The card's way: from under the drum, where the pins read it, up behind, over the top and down in front. */
const loop = {
  path: `M0,${radius}${arc(radius, 0)}V${loopTop}${arc(-radius, loopTop)}V0${arc(0, radius)}Z`,
  toReading: 0,
}

/** The same broken off above, and its length in pixels from its beginning in front to the row being read. */
const openTop = -58
const open = {
  path: `M${-radius},${openTop}V0${arc(0, radius)}${arc(radius, 0)}V${openTop}`,
  toReading: -openTop + (Math.PI / 2) * radius,
}

/** The two marks that break a run off, since the loop is longer than the picture. */
const breaks = [-radius, radius].map((x) => `M${x - 8},-118l6,4l4,-8l6,4M${x - 8},-112l6,4l4,-8l6,4`).join('')

/** The card edge-on, with a tick at each row. */
const drawCardLine = (group: Group, view: CardView, { path, toReading }: typeof loop): void => {
  const hasCard = view.frame.pass.row !== null && view.layout.hasSection
  drawShape(group, 'path', 'amber', { d: hasCard && view.phase === 'card on' ? path : '' })
  drawShape(group, 'path', 'card-line', { d: hasCard ? path : '' })
  const spacing = rowSpacing(view.layout)
  drawShape(group, 'path', 'card-rows', {
    d: hasCard ? path : '',
    'stroke-dasharray': `1.2 ${px(spacing - 1.2)}`,
    'stroke-dashoffset': px(view.rows * spacing - toReading + 0.6),
  })
}

/** The card at the reader's left end, broken off above. */
export const drawLeftCard = (root: Group, view: CardView, place: EndPlace): void => {
  const group = drawGroup(root, 'left-card', {
    transform: `translate(${place.x} ${place.y}) scale(${-place.scale} ${place.scale})`,
  })
  drawCardLine(group, view, open)
}

/** The case in section, open at the top, from the drum's axis. */
const caseSection = 'M-64,-34H-56V94H64V-34H72V102H-64Z'

/** The pin of the column under the sweep, in its bar, and the sweep above it, to the scale of the card. */
const drawReading = (group: Group, view: CardView): void => {
  const { frame, layout, drop, prefix } = view
  const scale = perMm(layout)
  const down = drop * 2.2 * scale
  const height = measureOfColumn(frame.pinHeights, frame.column)
  const tip = radius - (height - view.frame.condition.dimensions.pinLow) * scale
  const half = px((view.frame.condition.dimensions.pin / 2) * scale)
  const pins = drawGroup(group, 'reading-pins', { transform: `translate(0 ${px(down)})` })
  drawShape(pins, 'path', 'reading-pin', {
    d: `M${-half},${px(radius + 26)}V${px(tip + half)}a${half},${half} 0 0 1 ${2 * half},0V${px(radius + 26)}Z`,
    'data-part': `pin.${frame.column}`,
  })
  drawShape(pins, 'path', 'pin-bar', { d: `M-22,${px(radius + 22)}h44v9h-44Z`, fill: hatch(prefix, 'cut') })
  const edge = radius - (frame.condition.sweepEdge - view.frame.condition.dimensions.pinLow) * scale
  drawShape(group, 'path', 'sweep-end', {
    d: `M-9,${px(edge)}h18v-13h-18Z`,
    fill: hatch(prefix, 'cut'),
    'data-part': 'sweep',
  })
}

/** The right end in section: the case, the whole loop of the card, the pins and the sweep. */
export const drawSection = (root: Group, view: CardView, place: EndPlace): void => {
  const isShown = view.layout.hasSection
  const group = drawGroup(root, 'cut-end', {
    display: isShown ? 'inline' : 'none',
    transform: `translate(${place.x} ${place.y})`,
  })
  drawShape(group, 'path', 'case-walls', { d: isShown ? caseSection : '', fill: hatch(view.prefix, 'cut') })
  drawCardLine(group, view, loop)
  drawShape(group, 'path', 'break', { d: isShown && view.frame.pass.row !== null ? breaks : '' })
  if (isShown) drawReading(drawGroup(group, 'over-pins'), view)
}
