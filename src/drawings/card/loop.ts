import { dimensions } from '../../mechanism/dimensions.ts'
import { change, type Group, keep, part, px } from '../shared/svg.ts'
import { drumRadius } from './ends.ts'
import { type EndPlace, perMm, rowSpacing } from './layout.ts'
import type { View } from './view.ts'

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
const drawCardLine = (group: Group, view: View, { path, toReading }: typeof loop): void => {
  const hasCard = view.frame.pass.row !== null && view.layout.hasSection
  change(part(group, 'path', 'amber'), 'd', () => (hasCard && view.phase === 'card on' ? path : ''))
  change(part(group, 'path', 'card-line'), 'd', () => (hasCard ? path : ''))
  const rows = part(group, 'path', 'card-rows')
  const spacing = rowSpacing(view.layout)
  change(rows, 'd', () => (hasCard ? path : ''))
  change(rows, 'stroke-dasharray', () => `1.2 ${px(spacing - 1.2)}`)
  change(rows, 'stroke-dashoffset', () => px(view.rows * spacing - toReading + 0.6))
}

/** The card at the reader's left end, broken off above. */
export const drawLeftCard = (root: Group, view: View, place: EndPlace): void => {
  const group = part(root, 'g', 'left-card')
  change(group, 'transform', () => `translate(${place.x} ${place.y}) scale(${-place.scale} ${place.scale})`)
  drawCardLine(group, view, open)
}

/** The case in section, open at the top, from the drum's axis. */
const caseSection = 'M-64,-34H-56V94H64V-34H72V102H-64Z'

/** The pin of the column under the sweep, in its bar, and the sweep above it, to the scale of the card. */
const drawReading = (group: Group, view: View): void => {
  const { frame, layout, drop, prefix } = view
  const scale = perMm(layout)
  const down = drop * 2.2 * scale
  const height = frame.pinHeights[frame.column - 1] ?? 0
  const tip = radius - (height - dimensions.pinLow) * scale
  const half = px((dimensions.pin / 2) * scale)
  const pins = part(group, 'g', 'reading-pins')
  change(pins, 'transform', () => `translate(0 ${px(down)})`)
  const pin = part(pins, 'path', 'reading-pin')
  change(
    pin,
    'd',
    () =>
      `M${-half},${px(radius + 26)}V${px(tip + half)}a${half},${half} 0 0 1 ${2 * half},0V${px(radius + 26)}Z`,
  )
  change(pin, 'data-part', () => `pin.${frame.column}`)
  const bar = part(pins, 'path', 'pin-bar')
  change(bar, 'd', () => `M-22,${px(radius + 22)}h44v9h-44Z`)
  change(bar, 'fill', () => `url(#${prefix}-cut)`)
  const edge = radius - (frame.condition.sweepEdge - dimensions.pinLow) * scale
  const sweep = part(group, 'path', 'sweep-end')
  change(sweep, 'd', () => `M-9,${px(edge)}h18v-13h-18Z`)
  change(sweep, 'fill', () => `url(#${prefix}-cut)`)
  keep(sweep, 'data-part', 'sweep')
}

/** The right end in section: the case, the whole loop of the card, the pins and the sweep. */
export const drawSection = (root: Group, view: View, place: EndPlace): void => {
  const group = part(root, 'g', 'cut-end')
  const isShown = view.layout.hasSection
  change(group, 'display', () => (isShown ? 'inline' : 'none'))
  change(group, 'transform', () => `translate(${place.x} ${place.y})`)
  const walls = part(group, 'path', 'case-walls')
  change(walls, 'd', () => (isShown ? caseSection : ''))
  change(walls, 'fill', () => `url(#${view.prefix}-cut)`)
  drawCardLine(group, view, loop)
  change(part(group, 'path', 'break'), 'd', () => (isShown && view.frame.pass.row !== null ? breaks : ''))
  if (isShown) drawReading(part(group, 'g', 'over-pins'), view)
}
