import { sideOfWay } from '../../mechanism/bed.ts'
import { sinceLetGo } from '../../mechanism/frame.ts'
import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { type Needle, markOfNeedle, ofNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { sortedAfter } from '../../mechanism/dimensions.ts'
import { drawBalloonHeads } from '../shared/balloons.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { camMiddle, camSpansOf, carriageHalf, gateEdge, presserEdge } from '../shared/cams.ts'
import { clipTo, hatch } from '../shared/definitions.ts'
import { needleMark } from '../shared/needle-mark.ts'
import { boxPath, outline, px, rectangle } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { bedX, liftMm, needleX } from './layout.ts'
import { type ChainView, slidingWithBed, slots } from './view.ts'

/** Place in the picture of a point `behind` needles behind the presser's trailing edge. */
export const behindX = (view: ChainView, behind: number): number =>
  needleX(view.layout, view.from, view.frame.x - view.frame.pass.way * behind)

/** A height in mm above the butts' rest level, as a level in the picture. */
const restY = (view: ChainView, height: number): number => view.layout.rest - height * liftMm(view.layout)

/** The presser in section: its lower edge dips the butts down a harmonic ramp, then lets go. */
const presserOutline = (view: ChainView): string => {
  const top = view.layout.buttTop
  const { condition, pass } = view.frame
  const edge = presserEdge(condition, pass.way, 12).map(({ ahead, depth }): [number, number] => [
    behindX(view, -ahead),
    restY(view, -depth),
  ])
  return outline([[entryAt(edge, 0)[0], top], ...edge, [lastOf(edge)[0], top]])
}

const gateOutline = (view: ChainView, id: 'gate.1' | 'gate.2'): string => {
  const [from, to] = camSpansOf(view.frame.condition.dimensions)[id]
  const [near, far] = [behindX(view, from), behindX(view, to)]
  const [top, bottom] = [view.layout.buttTop, restY(view, -gateEdge(view.frame.condition, id))]
  return boxPath(near, top, far, bottom)
}

/** The carriage's cams in section and the butts beneath them, from the side. Heights are drawn larger. */
export const drawButts = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const { condition, pass } = frame
  const band = drawGroup(root, 'butt-band', { 'clip-path': clipTo(view.prefix, 'window') })
  const right = layout.left + layout.needles * layout.pitch
  drawShape(band, 'path', 'reference', { d: `M${layout.left},${layout.rest}H${right}` })
  drawShape(band, 'rect', 'ground', {
    x: layout.left,
    y: layout.buttBottom - 3,
    width: right - layout.left,
    height: 4,
  })

  const visible = slots(view)
  drawSides(slidingWithBed(band, 'butts', view), view, visible)
  const cam = (name: string, id: string, path: string): void => {
    const worn = name === 'presser' ? `presser.${sideOfWay(pass.way)}` : id
    drawShape(band, 'path', `cam ${name}`, {
      d: path,
      'data-part': id,
      'data-broken': view.broken.has(worn) ? 'broken' : '',
      'data-aside': condition.carriagePlain ? 'aside' : '',
      fill: hatch(view.prefix, view.broken.has(worn) ? 'broken' : 'cut'),
    })
  }
  cam('gate-2', 'gate.2', gateOutline(view, 'gate.2'))
  cam('gate-1', 'gate.1', gateOutline(view, 'gate.1'))
  cam('presser', 'presser', presserOutline(view))
  const inFront = visible.filter((index) => {
    const since = index === null ? 0 : sinceLetGo(frame.x, index, pass.way)
    return (
      index !== null &&
      ofNeedle(pass.came, index) === 'selected' &&
      since > condition.dimensions.gateLag &&
      since < sortedAfter(condition.dimensions) + 1
    )
  })
  drawSides(slidingWithBed(band, 'butts-in-front', view), view, inFront)
  if (layout.shape === 'wide') drawCamNames(band, view)
}

/** How a butt looks from the side: held or sorted wrongly, else whether it is behind the first gate, sorted plain. */
const looks = ['', 'behind', 'selected', 'missed', 'extra'] as const

/** The look of needle `index`; null where no butt is seen. */
const lookOf = ({ frame }: ChainView, index: Needle): (typeof looks)[number] | null => {
  const { condition, pass } = frame
  const mark = needleMark(frame, index)
  if (mark === 'out' || markOfNeedle(condition.needleGone, index)) return null
  if (mark === 'selected' || mark === 'missed' || mark === 'extra') return mark
  const isBehind = sinceLetGo(frame.x, index, pass.way) > condition.dimensions.gateLag
  return isBehind && ofNeedle(pass.came, index) === 'plain' ? 'behind' : ''
}

/** The butts of these needles; a null is an empty slot. */
const drawSides = (group: Group, view: ChainView, indexes: readonly (Needle | null)[]): void => {
  const { layout, frame } = view
  const size = layout.shape === 'wide' ? { wide: 7.5, tall: 13 } : { wide: 5.5, tall: 9 }
  const paths = emptyPaths(looks)
  for (const index of indexes) {
    const look = index === null ? null : lookOf(view, index)
    if (index === null || look === null) continue
    paths[look] += rectangle(
      bedX(layout, index),
      restY(view, measureOfNeedle(frame.buttHeights, index)),
      size,
    )
  }
  drawByLook(group, 'butt', 'data-look', looks, paths)
}

/** The cams' names below them and their balloons above. */
const drawCamNames = (band: Group, view: ChainView): void => {
  const { condition, pass } = view.frame
  const { dimensions } = condition
  const named = [
    { number: 6, name: 'presser', at: camMiddle(dimensions, 'presser') },
    { number: 7, name: 'first gate', at: camMiddle(dimensions, 'gate.1') },
    { number: 8, name: 'second gate', at: camMiddle(dimensions, 'gate.2') + 0.8 },
  ]
  const { way } = pass
  drawShape(band, 'text', 'carriage-name', {
    x: px(behindX(view, -7)),
    y: view.layout.buttTop - 9,
    text: `${way === 1 ? '' : '← '}carriage${condition.carriagePlain ? ', plain' : ''}${way === 1 ? ' →' : ''}`,
  })
  drawShapes(band, 'text', 'cam-name', named, ({ at, name }) => ({
    x: px(behindX(view, at)),
    y: view.layout.buttBottom + 12,
    text: name,
  }))
  drawBalloonHeads(
    band,
    named.map(({ number, at }) => ({ number, x: behindX(view, at), y: view.layout.buttTop - 13 })),
  )
}

/** The carriage's outline, over the butts and the needles. */
export const drawCarriage = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const group = drawGroup(root, 'carriage-band', { 'clip-path': clipTo(view.prefix, 'window') })
  const edge = layout.buttTop - (layout.shape === 'wide' ? 27 : 5)
  drawShape(group, 'rect', 'carriage', {
    x: px(needleX(layout, view.from, frame.x - carriageHalf)),
    y: edge,
    width: px(2 * carriageHalf * layout.pitch),
    height: px(layout.hook + (layout.shape === 'wide' ? 32 : 24) - edge),
    rx: 9,
    'data-part': 'carriage',
  })
}
