import { modulo, needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { drawByLook, emptyPaths } from '../shared/by-look.ts'
import { type NeedleMark, needleMark } from '../shared/needle-mark.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, drawShapes, type Group } from '../shared/svg.ts'
import { placeX, type TimingLayout } from './layout.ts'
import { inUse, isClear, placesIn, type TimingView } from './view.ts'

const kinds = ['ahead', 'pressed', 'plain', 'selected', 'missed', 'extra', 'unmoved'] as const
type Kind = (typeof kinds)[number]

const kindOf: Readonly<Record<NeedleMark, Kind | null>> = {
  out: null,
  ahead: 'ahead',
  set: 'ahead',
  pressed: 'pressed',
  plain: 'plain',
  selected: 'selected',
  missed: 'missed',
  extra: 'extra',
  unmoved: 'unmoved',
}

const shapeOf = (layout: TimingLayout, kind: Kind): string => {
  const { tall } = layout
  switch (kind) {
    case 'ahead':
      return 'v-5'
    case 'pressed':
      return 'v5'
    case 'plain':
      return `v${-tall * 0.4}`
    case 'unmoved':
      return 'm-3,-3l6,-6m-6,0l6,6'
    case 'selected':
    case 'missed':
    case 'extra':
      return `v${-tall}`
  }
}

/** The needles with what came of them, as far as the gates have sorted them. */
export const drawNeedleLane = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const paths = emptyPaths(kinds)
  let flags = ''
  for (const place of placesIn(view.range)) {
    if (!inUse(view, place)) continue
    const kind = kindOf[needleMark(frame, toNeedle(place))]
    if (!kind) continue
    const x = px(placeX(layout, place))
    paths[kind] += `M${x},${layout.bed}${shapeOf(layout, kind)}`
    if (kind === 'missed' || kind === 'extra' || kind === 'unmoved')
      flags += `M${x - 3},${layout.bed + 6}h6l-3,-4.5Z`
  }
  drawByLook(drawGroup(scroll, 'bars'), 'bar', 'data-mark', kinds, paths)
  drawShape(scroll, 'path', 'flags', { d: flags })
}

/** Names of every eighth needle, those of strip 1. */
export const drawNeedleNames = (scroll: Group, view: TimingView): void => {
  const { layout, frame } = view
  const shown = placesIn(view.range).filter(
    (place) =>
      inUse(view, place) &&
      modulo(place - frame.condition.columnOne, dimensions.strips) === 0 &&
      isClear(view, place, 14),
  )
  drawShapes(scroll, 'text', 'needle-label', shown, (place) => ({
    x: px(placeX(layout, place)),
    y: layout.needleNames,
    text: needleName(toNeedle(place)),
  }))
}
