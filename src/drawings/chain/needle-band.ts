import { needleName } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'
import { rectangle } from '../shared/drafting.ts'
import { changeBy, isStale, keyOf } from '../shared/stale.ts'
import { change, changeText, type Group, outline, part, parts, px } from '../shared/svg.ts'
import { drawAlike } from './alike.ts'
import { behindX } from './butt-band.ts'
import { bedX, perMm } from './layout.ts'
import { type Mark, needleMark } from './marks.ts'
import { needlesInWindow, slidingWithBed, slots, type View } from './view.ts'

/** Where a needle stands in the picture, on the bed, when it is so far forward of the line, in mm. */
const standing = ({ layout }: View, index: number, travel: number): readonly [x: number, y: number] => [
  bedX(layout, index),
  layout.line + travel * perMm(layout),
]

/** A needle from above: tail, stem and the hook at its front end, open to the right. */
const needleShape = (view: View, [x, y]: readonly [number, number]): string => {
  const { tail, hook, line, name } = view.layout
  const bend = name === 'wide' ? 3 : 2.2
  return `M${px(x)},${px(y + tail - line)}V${px(y + hook - line - bend)}a${bend},${bend} 0 0 0 ${2 * bend},0v${-bend}`
}

/** A gate from above: the wall along which butts slide, and its thickness behind. `side` -1: wall faces the back. */
const wall = (view: View, from: number, length: number, lift: number, side: 1 | -1): string => {
  const { layout } = view
  const half = layout.name === 'wide' ? 5 : 4
  const steps = 12
  const face: [number, number][] = []
  const back: [number, number][] = []
  for (let n = 0; n <= steps; n++) {
    const share = n / steps
    const x = behindX(view, from + share * length)
    const y = layout.line + lift * perMm(layout) * harmonic(share) + side * half
    face.push([x, y])
    back.unshift([x, y + side * (1.5 + share * (half + 2))])
  }
  return outline([...face, ...back])
}

/** How a needle's butt looks from above, by the needle's mark. */
const looks = ['', 'out', 'selected', 'set', 'wrong'] as const
type Look = (typeof looks)[number]

const lookOf = (mark: Mark): Look => {
  if (mark === 'missed' || mark === 'extra' || mark === 'unmoved') return 'wrong'
  return mark === 'out' || mark === 'selected' || mark === 'set' ? mark : ''
}

/** The needles from above, sorted by the gates behind the presser, and where a missed needle should be. */
export const drawNeedles = (root: Group, view: View): void => {
  const { layout, frame } = view
  const band = part(root, 'g', 'needle-band')
  change(band, 'clip-path', () => `url(#${view.prefix}-window)`)
  const visible = slots(view)
  const marks = new Map(needlesInWindow(view).map((index) => [index, needleMark(frame, index)]))
  const markOf = (index: number | null): Mark | 'none' => marks.get(index ?? NaN) ?? 'none'

  const onBed = slidingWithBed(band, 'on-bed', view)
  const ghost = (index: number): string => {
    const asked = frame.pass.asked[index] === 'selected' ? cams.selectedTravel : -cams.plainTravel
    return needleShape(view, standing(view, index, asked))
  }
  change(part(onBed, 'path', 'ghosts'), 'd', () =>
    [...marks]
      .filter(([, mark]) => mark === 'missed' || mark === 'extra')
      .map(([index]) => ghost(index))
      .join(''),
  )

  // They are drawn where they stand and not moved there: what is moved by itself is a layer of its own to the browser.
  const needles = parts(onBed, 'path', 'needle', visible)
  change(needles, 'data-mark', markOf)
  if (isStale(onBed, [view.run, ...visible])) {
    change(needles, 'display', (index) => (index === null ? 'none' : 'inline'))
    change(needles, 'data-part', (index) => `needle.${needleName(index ?? 0)}`)
    change(needles, 'data-broken', (index) =>
      view.broken.has(`needle.${needleName(index ?? 0)}`) ? 'broken' : '',
    )
  }
  const travelOf = (index: number | null): number => frame.needleTravels[index ?? 0] ?? 0
  changeBy(
    needles,
    'd',
    (index) => keyOf(index ?? 0, travelOf(index)),
    (index) => needleShape(view, standing(view, index ?? 0, travelOf(index))),
  )
  const size = layout.name === 'wide' ? { wide: 7.5, tall: 9 } : { wide: 5.5, tall: 7 }
  drawAlike(
    part(onBed, 'g', 'needle-butts'),
    'needle-butt',
    looks,
    visible,
    (index) => (frame.condition.needleGone[index] ? null : lookOf(marks.get(index) ?? 'out')),
    (index) => {
      const [x, y] = standing(view, index, travelOf(index))
      return rectangle(x, y - size.tall / 2, size)
    },
  )

  const walls = part(band, 'path', 'walls')
  change(walls, 'd', () =>
    [
      wall(view, dimensions.gateLag, cams.gate1Length, -cams.plainTravel, 1),
      wall(view, cams.gate2Start, cams.gate2Length, cams.selectedTravel, -1),
    ].join(''),
  )

  const namesOnBed = slidingWithBed(band, 'names-on-bed', view)
  const names = parts(namesOnBed, 'text', 'needle-name', visible)
  // A name that the window's edge would cut waits until it is all inside.
  const isInside = (index: number): boolean =>
    index - view.from > 0.7 && index - view.from < layout.needles - 1.5
  change(names, 'display', (index) =>
    index !== null && needleNumber(index) % 8 === 1 && isInside(index) ? 'inline' : 'none',
  )
  if (!isStale(namesOnBed, visible)) return
  change(names, 'x', (index) => px(bedX(layout, index ?? 0)))
  change(names, 'y', () => layout.needleNames)
  changeText(names, (index) => (index === null ? '' : needleName(index)))
}

/** A needle's number on its own side of the bed, from 1. */
const needleNumber = (index: number): number => Number(needleName(index).slice(1))
