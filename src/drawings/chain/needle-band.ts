import { needleName } from '../../mechanism/bed.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { type Needle, markOfNeedle, ofNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { clipTo } from '../shared/definitions.ts'
import { hasChanged } from '../shared/memo.ts'
import { type NeedleMark, needleMark } from '../shared/needle-mark.ts'
import { buttLookOf, buttLooks, gateWalls, leadingWalls, needleOutline } from '../shared/needle-plan.ts'
import { px, rectangle } from '../shared/paths.ts'
import { type Attributes, drawGroup, drawShape, drawShapes, type Group, keyed, keyOf } from '../shared/svg.ts'
import { behindX } from './butt-band.ts'
import { bedX, type ChainLayout, perMm } from './layout.ts'
import { type ChainView, needlesInWindow, slidingWithBed, slots } from './view.ts'

/** Where a needle is in the picture, on the bed, when it is so far forward of the line, in mm. */
const standing = ({ layout }: ChainView, index: number, travel: number): readonly [x: number, y: number] => [
  bedX(layout, index),
  layout.line + travel * perMm(layout),
]

/** The needles from above, sorted by the gates behind the presser, and where a missed needle should be. */
export const drawNeedles = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const band = drawGroup(root, 'needle-band', { 'clip-path': clipTo(view.prefix, 'window') })
  const visible = slots(view)
  const marks = new Map(needlesInWindow(view).map((index) => [index, needleMark(frame, index)]))
  const markOf = (index: Needle | null): NeedleMark | 'none' =>
    (index === null ? undefined : marks.get(index)) ?? 'none'

  const onBed = slidingWithBed(band, 'on-bed', view)
  const ghost = (index: Needle): string => {
    const asked = ofNeedle(frame.pass.asked, index) === 'selected' ? cams.selectedTravel : -cams.plainTravel
    return needleOutline(layout, standing(view, index, asked))
  }
  drawShape(onBed, 'path', 'ghosts', {
    d: [...marks]
      .filter(([, mark]) => mark === 'missed' || mark === 'extra')
      .map(([index]) => ghost(index))
      .join(''),
  })

  // They are drawn where they are and not moved there: what is moved by itself is a layer of its own to the browser.
  const travelOf = (index: Needle): number => measureOfNeedle(frame.needleTravels, index)
  const isRenewed = hasChanged(onBed, [view.run, ...visible])
  drawShapes(onBed, 'path', 'needle', visible, (index) => ({
    'data-mark': markOf(index),
    ...(isRenewed ? slotLooks(view, index) : {}),
    d:
      index === null
        ? keyed('none', () => '')
        : keyed(keyOf(index, travelOf(index)), () =>
            needleOutline(layout, standing(view, index, travelOf(index))),
          ),
  }))
  const size = layout.shape === 'wide' ? { wide: 7.5, tall: 9 } : { wide: 5.5, tall: 7 }
  const butts = emptyPaths(buttLooks)
  for (const index of visible) {
    if (index === null || markOfNeedle(frame.condition.needleGone, index)) continue
    const [x, y] = standing(view, index, travelOf(index))
    butts[buttLookOf(marks.get(index) ?? 'out')] += rectangle(x, y - size.tall / 2, size)
  }
  drawByLook(drawGroup(onBed, 'needle-butts'), 'needle-butt', 'data-look', buttLooks, butts)

  const place = {
    plan: layout,
    behindX: (behind: number) => behindX(view, behind),
    perMm: perMm(layout),
  }
  drawShape(band, 'path', 'walls', { d: gateWalls(place, frame.condition) })
  drawShape(band, 'path', 'leading-walls', { d: leadingWalls(place), 'data-part': 'carriage' })

  drawNames(band, view, visible)
}

/** What changes of a needle's shape only when another needle takes its slot. */
const slotLooks = (view: ChainView, index: Needle | null): Attributes => {
  if (index === null) return { display: 'none', 'data-part': '', 'data-broken': '' }
  const id = `needle.${needleName(index)}`
  return {
    display: 'inline',
    'data-part': id,
    'data-broken': view.broken.has(id) ? 'broken' : '',
  }
}

/** A needle's number on its own side of the bed, from 1. */
const needleNumber = (index: Needle): number => Number(needleName(index).slice(1))

/** Whether a needle's name is drawn: every eighth is. In the narrow shape L1's would touch R1's, beside it. */
const isNamed = (layout: ChainLayout, index: Needle): boolean =>
  needleNumber(index) % 8 === 1 && (layout.shape === 'wide' || needleName(index) !== 'L1')

const nameOf = (layout: ChainLayout, index: Needle | null): Attributes =>
  index === null
    ? { x: '', y: '', text: '' }
    : { x: px(bedX(layout, index)), y: layout.needleNames, text: needleName(index) }

/** The names of every eighth needle. */
const drawNames = (band: Group, view: ChainView, visible: readonly (Needle | null)[]): void => {
  const { layout, from } = view
  const namesOnBed = slidingWithBed(band, 'names-on-bed', view)
  // A name that the window's edge would cut waits until it is all inside.
  const isInside = (index: number): boolean => index - from > 0.7 && index - from < layout.needles - 1.5
  const isRenewed = hasChanged(namesOnBed, visible)
  drawShapes(namesOnBed, 'text', 'needle-name', visible, (index) => ({
    display: index !== null && isNamed(layout, index) && isInside(index) ? 'inline' : 'none',
    ...(isRenewed ? nameOf(layout, index) : {}),
  }))
}
