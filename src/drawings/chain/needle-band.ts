import { needleName } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'
import { change, changeText, type Group, outline, part, parts, px } from '../svg.ts'
import { behindX } from './butt-band.ts'
import { bedX, perMm } from './layout.ts'
import { needleMark } from './marks.ts'
import { slidingWithBed, slots, type View } from './view.ts'

/** How far a needle stands forward in the picture. */
const travelPx = (view: View, index: number): number =>
  (view.frame.needleTravels[index] ?? 0) * perMm(view.layout)

/** A needle from above: tail, stem and the hook at its front end, open to the right. */
const needleShape = (view: View): string => {
  const { tail, hook, line, name } = view.layout
  const bend = name === 'wide' ? 3 : 2.2
  return `M0,${tail - line}V${hook - line - bend}A${bend},${bend} 0 0 0 ${2 * bend},${hook - line - bend}V${hook - line - bend * 2}`
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

/** The needles from above, sorted by the gates behind the presser, and where a missed needle should be. */
export const drawNeedles = (root: Group, view: View): void => {
  const { layout, frame } = view
  const band = part(root, 'g', 'needle-band')
  change(band, 'clip-path', () => `url(#${view.prefix}-window)`)
  const visible = slots(view)
  const mark = (index: number | null): string => (index === null ? 'none' : needleMark(frame, index))
  const shape = needleShape(view)
  const marks = new Map(visible.map((index) => [index, mark(index)]))
  const isWrong = (index: number | null): boolean => /missed|extra/.test(marks.get(index) ?? '')
  const place = (index: number | null): string =>
    `translate(${px(bedX(layout, index ?? 0))} ${px(layout.line + travelPx(view, index ?? 0))})`

  const onBed = slidingWithBed(band, 'on-bed', view)
  const ghosts = parts(onBed, 'path', 'ghost', visible)
  change(ghosts, 'd', () => shape)
  change(ghosts, 'display', (index) => (isWrong(index) ? 'inline' : 'none'))
  change(ghosts, 'transform', (index) => {
    // One that isn't shown need not follow.
    if (!isWrong(index)) return ''
    const asked = frame.pass.asked[index ?? 0] === 'selected' ? cams.selectedTravel : -cams.plainTravel
    return `translate(${px(bedX(layout, index ?? 0))} ${px(layout.line + asked * perMm(layout))})`
  })

  const needles = parts(onBed, 'g', 'needle', visible)
  change(needles, 'display', (index) => (index === null ? 'none' : 'inline'))
  change(needles, 'transform', place)
  change(needles, 'data-mark', (index) => marks.get(index) ?? 'none')
  change(needles, 'data-part', (index) => `needle.${needleName(index ?? 0)}`)
  change(needles, 'data-broken', (index) =>
    view.broken.has(`needle.${needleName(index ?? 0)}`) ? 'broken' : '',
  )
  const size = layout.name === 'wide' ? { wide: 7.5, tall: 9 } : { wide: 5.5, tall: 7 }
  needles.each(function (index) {
    if (!this.firstChild) {
      for (const [tag, name] of [
        ['path', 'stem'],
        ['rect', 'butt'],
      ] as const) {
        const element = this.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
        element.setAttribute('class', name)
        this.appendChild(element)
      }
      this.firstElementChild?.setAttribute('d', shape)
      for (const [name, value] of [
        ['x', -size.wide / 2],
        ['y', -size.tall / 2],
        ['width', size.wide],
        ['height', size.tall],
      ] as const)
        this.lastElementChild?.setAttribute(name, String(value))
    }
    const hasButt = index !== null && !frame.condition.needleGone[index]
    const display = hasButt ? 'inline' : 'none'
    if (this.lastElementChild?.getAttribute('display') !== display)
      this.lastElementChild?.setAttribute('display', display)
  })

  const walls = part(band, 'path', 'walls')
  change(walls, 'd', () =>
    [
      wall(view, dimensions.gateLag, cams.gate1Length, -cams.plainTravel, 1),
      wall(view, cams.gate2Start, cams.gate2Length, cams.selectedTravel, -1),
    ].join(''),
  )

  const names = parts(slidingWithBed(band, 'names-on-bed', view), 'text', 'needle-name', visible)
  // A name that the window's edge would cut waits until it is all inside.
  const isInside = (index: number): boolean =>
    index - view.from > 0.7 && index - view.from < layout.needles - 1.5
  change(names, 'display', (index) =>
    index !== null && needleNumber(index) % 8 === 1 && isInside(index) ? 'inline' : 'none',
  )
  change(names, 'x', (index) => px(bedX(layout, index ?? 0)))
  change(names, 'y', () => layout.needleNames)
  changeText(names, (index) => (index === null ? '' : needleName(index)))
}

/** A needle's number on its own side of the bed, from 1. */
const needleNumber = (index: number): number => Number(needleName(index).slice(1))
