import { cams, dimensions } from '../../mechanism/dimensions.ts'
import { harmonic, sinceLetGo, sortedAfter } from '../../mechanism/frame.ts'
import { presserOf } from '../../mechanism/condition.ts'
import { rectangle } from '../shared/drafting.ts'
import { change, changeText, type Group, keep, outline, part, parts, px } from '../shared/svg.ts'
import { drawAlike } from './alike.ts'
import { drawBalloons } from './balloons.ts'
import { bedX, carriageHalf, liftMm, needleX } from './layout.ts'
import { needleMark } from './marks.ts'
import { slidingWithBed, slots, type View } from './view.ts'

/** Place in the picture of a point `behind` needles behind the presser's trailing edge. */
export const behindX = (view: View, behind: number): number =>
  needleX(view.layout, view.from, view.frame.x - view.frame.pass.way * behind)

/** A height in mm above the butts' rest level, as a level in the picture. */
const restY = (view: View, height: number): number => view.layout.rest - height * liftMm(view.layout)

/** The presser in section: its lower edge dips the butts down a harmonic ramp, then lets go. */
const presserOutline = (view: View): string => {
  const dip = Math.max(0, presserOf(view.frame.condition, view.frame.pass.way))
  const top = view.layout.buttTop
  const steps = 12
  const ramp = Array.from({ length: steps + 1 }, (_, n): [number, number] => {
    const share = n / steps
    return [
      behindX(view, -cams.presserFlat - share * cams.presserRamp),
      restY(view, -dip * harmonic(1 - share)),
    ]
  })
  const end = behindX(view, -cams.presserFlat - cams.presserRamp)
  return outline([[behindX(view, 0), top], [behindX(view, 0), restY(view, -dip)], ...ramp, [end, top]])
}

const gateOutline = (view: View, from: number, length: number, depth: number): string => {
  const [near, far] = [behindX(view, from), behindX(view, from + length)]
  const [top, bottom] = [view.layout.buttTop, restY(view, -depth)]
  return outline([
    [near, top],
    [far, top],
    [far, bottom],
    [near, bottom],
  ])
}

/** The carriage's cams in section and the butts beneath them, from the side. Heights are drawn larger. */
export const drawButts = (root: Group, view: View): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  const band = part(root, 'g', 'butt-band')
  change(band, 'clip-path', () => `url(#${view.prefix}-window)`)
  const right = layout.left + layout.needles * layout.pitch
  const rest = part(band, 'path', 'reference')
  change(rest, 'd', () => `M${layout.left},${layout.rest}H${right}`)
  const ground = part(band, 'rect', 'ground')
  change(ground, 'x', () => layout.left)
  change(ground, 'y', () => layout.buttBottom - 3)
  change(ground, 'width', () => right - layout.left)
  change(ground, 'height', () => 4)

  const visible = slots(view)
  drawSides(slidingWithBed(band, 'butts', view), view, visible)
  const cam = (name: string, id: string, path: string): void => {
    const drawn = part(band, 'path', `cam ${name}`)
    change(drawn, 'd', () => path)
    change(drawn, 'data-part', () => id)
    const worn = name === 'presser' ? `presser.${pass.way === 1 ? 'right' : 'left'}` : id
    change(drawn, 'data-broken', () => (view.broken.has(worn) ? 'broken' : ''))
    change(drawn, 'fill', () => `url(#${view.prefix}-${view.broken.has(worn) ? 'broken' : 'cut'})`)
  }
  cam('gate-2', 'gate.2', gateOutline(view, cams.gate2Start, cams.gate2Length, dimensions.gate2))
  cam('gate-1', 'gate.1', gateOutline(view, dimensions.gateLag, cams.gate1Length, condition.gate1))
  cam('presser', 'presser', presserOutline(view))
  const inFront = visible.filter((index) => {
    const since = index === null ? 0 : sinceLetGo(frame.x, index, pass.way)
    return (
      index !== null &&
      pass.came[index] === 'selected' &&
      since > dimensions.gateLag &&
      since < sortedAfter + 1
    )
  })
  drawSides(slidingWithBed(band, 'butts-in-front', view), view, inFront)
  if (layout.name === 'wide') drawCamNames(band, view)
}

/** How a butt looks from the side: held or sorted wrongly, else whether it stands behind the first gate, sorted plain. */
const looks = ['', 'behind', 'selected', 'missed', 'extra'] as const

/** The butts of these needles; a null is an empty slot. */
const drawSides = (group: Group, view: View, indexes: readonly (number | null)[]): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  const size = layout.name === 'wide' ? { wide: 7.5, tall: 13 } : { wide: 5.5, tall: 9 }
  drawAlike(
    group,
    'butt',
    looks,
    indexes,
    (index) => {
      const mark = needleMark(frame, index)
      if (mark === 'out' || condition.needleGone[index]) return null
      if (mark === 'selected' || mark === 'missed' || mark === 'extra') return mark
      const isBehind = sinceLetGo(frame.x, index, pass.way) > dimensions.gateLag
      return isBehind && pass.came[index] === 'plain' ? 'behind' : ''
    },
    (index) => rectangle(bedX(layout, index), restY(view, frame.buttHeights[index] ?? 0), size),
  )
}

/** The cams' names below them and their balloons above. */
const drawCamNames = (band: Group, view: View): void => {
  const named = [
    { number: 6, name: 'presser', at: -(cams.presserFlat + cams.presserRamp) / 2 },
    { number: 7, name: 'first gate', at: dimensions.gateLag + cams.gate1Length / 2 },
    { number: 8, name: 'second gate', at: cams.gate2Start + cams.gate2Length / 2 },
  ]
  const { way } = view.frame.pass
  const carriage = part(band, 'text', 'carriage-name')
  change(carriage, 'x', () => px(behindX(view, -7)))
  change(carriage, 'y', () => view.layout.buttTop - 9)
  changeText(carriage, () => (way === 1 ? 'carriage →' : '← carriage'))
  const names = parts(band, 'text', 'cam-name', named)
  change(names, 'x', ({ at }) => px(behindX(view, at)))
  change(names, 'y', () => view.layout.buttBottom + 12)
  changeText(names, ({ name }) => name)
  drawBalloons(
    band,
    named.map(({ number, at }) => ({ number, x: behindX(view, at), y: view.layout.buttTop - 13 })),
  )
}

/** The carriage's outline, over the butts and the needles. */
export const drawCarriage = (root: Group, view: View): void => {
  const { layout, frame } = view
  const group = part(root, 'g', 'carriage-band')
  change(group, 'clip-path', () => `url(#${view.prefix}-window)`)
  const body = part(group, 'rect', 'carriage')
  const edge = layout.buttTop - (layout.name === 'wide' ? 27 : 5)
  change(body, 'x', () => px(needleX(layout, view.from, frame.x - carriageHalf)))
  change(body, 'y', () => edge)
  change(body, 'width', () => px(2 * carriageHalf * layout.pitch))
  change(body, 'height', () => px(layout.hook + (layout.name === 'wide' ? 32 : 24) - edge))
  keep(body, 'rx', 9)
  keep(body, 'data-part', 'carriage')
}
