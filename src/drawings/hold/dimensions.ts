import { sideOfWay } from '../../mechanism/bed.ts'
import { presserAsMade, presserOf } from '../../mechanism/condition.ts'
import { heldHeight } from '../../mechanism/gate.ts'
import { markOfNeedle, measureOfNeedle } from '../../mechanism/indices.ts'
import { asideHeight } from '../shared/cams.ts'
import { catchOf } from '../shared/detail/needle-state.ts'
import { shape, tipAt } from '../shared/detail/profile.ts'
import type { Line } from '../shared/linework.ts'
import { dimensionLine, polyline } from '../shared/paths.ts'
import { bedX, levelY } from './layout.ts'
import type { HoldView } from './view.ts'

/** Levels of the horizontal dimensions above the section, and where the upright ones are right of it, in pixels. */
export const reachY = 20
export const shiftY = 41
export const catchX = 874
export const dipX = 982

/** Whether the presser is worn for passes this way. */
export const isWorn = ({ broken, frame }: HoldView): boolean =>
  broken.has(`presser.${sideOfWay(frame.pass.way)}`)

/** How far down the presser's lower edge is, in mm; above the rest level, negative, where it stands aside. */
export const presserDepth = ({ frame }: HoldView): number =>
  frame.condition.carriagePlain ? -asideHeight : Math.max(0, presserOf(frame.condition, frame.pass.way))

/** Places down the picture of the rest line, a held butt’s top, the presser’s lower edge, and that edge as new. */
export interface Levels {
  readonly rest: number
  readonly held: number
  readonly dip: number
  readonly nominal: number
}

export const levelsOf = (view: HoldView): Levels => {
  const { frame, layout, needle } = view
  return {
    rest: layout.rest,
    held: levelY(layout, heldHeight(frame.condition, needle)),
    dip: levelY(layout, -presserDepth(view)),
    nominal: levelY(layout, -presserAsMade(frame.condition, frame.pass.way)),
  }
}

/** Places along the bed of the catch's tip at rest and now, and of the spur's edge that it must pass. */
export const tips = (view: HoldView): { still: number; now: number; edge: number } => {
  const { frame, layout, needle, viewed } = view
  const { reach, shift } = catchOf(frame, needle)
  const x = (mm: number): number => bedX(layout, viewed, needle) + mm * layout.along
  return { still: x(tipAt(reach, 0)), now: x(tipAt(reach, shift)), edge: x(shape.spur) }
}

/** The chain-dashed rest line, and the levels of the dip and of the catch. */
export const levelLines = (view: HoldView): Line[] => {
  const { layout } = view
  const { rest, held, dip, nominal } = levelsOf(view)
  const end = layout.shape === 'wide' ? dipX + 6 : layout.right
  const across = (y: number): string =>
    polyline([
      [layout.left, y],
      [end, y],
    ])
  return [
    { look: 'rest', d: across(rest) },
    { look: 'level', d: across(held) },
    { look: 'level', d: across(dip) },
    { look: 'level worn', d: isWorn(view) ? across(nominal) : '' },
  ]
}

/** Dimension lines of dip, catch depth, reach and shift, and the pointer at the butt's present height. */
export const dimensionLines = (view: HoldView): Line[] => {
  const { frame, layout, needle } = view
  const { rest, held, dip } = levelsOf(view)
  const nose = levelY(layout, catchOf(frame, needle).under)
  const { still, now, edge } = tips(view)
  const height = levelY(layout, measureOfNeedle(frame.buttHeights, needle))
  const spur = levelY(
    layout,
    measureOfNeedle(frame.buttHeights, needle) - shape.spurDrop - shape.spurThick / 2,
  )
  const beside = bedX(layout, view.viewed, needle)
  const isWide = layout.shape === 'wide'
  const right = layout.right + 6
  const extension = (x: number, from: number): string =>
    polyline([
      [x, from],
      [x, nose],
    ])
  return isWide
    ? [
        { look: 'extension', d: extension(still, reachY - 6) + extension(edge, reachY - 6) },
        { look: 'extension', d: now > still + 0.1 ? extension(now, shiftY - 6) : '' },
        {
          look: 'extension',
          d: markOfNeedle(frame.condition.needleGone, needle)
            ? ''
            : polyline([
                [beside + shape.spur * 0.6 * layout.along, spur],
                [beside + 25, spur],
              ]),
        },
        { look: 'dimension', d: dimensionLine(still, reachY, edge, reachY) },
        { look: 'dimension', d: dimensionLine(still, shiftY, now, shiftY) },
        { look: 'dimension', d: dimensionLine(catchX, rest, catchX, held) },
        { look: 'dimension', d: dimensionLine(dipX, rest, dipX, dip) },
        { look: 'pointer', d: `M${layout.left - 2},${height}l-9,-4.5v9Z` },
      ]
    : [
        { look: 'dimension', d: dimensionLine(right, rest, right, held) },
        { look: 'dimension', d: dimensionLine(layout.width - 4, rest, layout.width - 4, dip) },
      ]
}
