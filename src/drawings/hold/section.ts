import { presserAsMade } from '../../mechanism/condition.ts'
import { needleName, sideOfWay, stripOfNeedle } from '../../mechanism/bed.ts'
import { cams } from '../../mechanism/dimensions.ts'
import { type Frame, sinceLetGo } from '../../mechanism/frame.ts'
import {
  type Needle,
  measureOfStrip,
  markOfNeedle,
  ofNeedle,
  measureOfNeedle,
} from '../../mechanism/indices.ts'
import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { dipEdge, gateEdge, presserEdge } from '../shared/cams.ts'
import { catchOf, holdingOf, isPushed, needlePart } from '../shared/detail/needle-state.ts'
import { buttOutline, catchOutline, shape, springUp, stumpOutline, tipAt } from '../shared/detail/profile.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, outline, px, ring } from '../shared/paths.ts'
import { bedX, buttPosition, levelY } from './layout.ts'
import type { HoldView } from './view.ts'

/** Half a trick's width, and half a spring's, in mm. */
const halfTrick = 0.45
const halfSpring = 0.3

/** The bed in section, solid between the tricks, and cut open down to the floor of the channel that holds the strips. */
export const bed = (view: HoldView): Line[] => {
  const { layout, viewed, seen } = view
  const [open, top, floor, foot] = [shape.bed, shape.channel, layout.floor, layout.foot].map((depth) =>
    levelY(layout, depth),
  )
  const points: [number, number][] = [[layout.left - 10, top!]]
  for (const index of seen) {
    const x = bedX(layout, viewed, index)
    const half = halfTrick * layout.along
    points.push([x - half, top!], [x - half, floor!], [x + half, floor!], [x + half, top!])
  }
  points.push([layout.right + 10, top!], [layout.right + 10, foot!], [layout.left - 10, foot!])
  return [
    { look: 'channel', d: boxPath(layout.left - 10, open!, layout.right + 10, top!) },
    { look: 'solid', d: outline(points), hatch: 'cut' },
  ]
}

/** Points of a cam's edge ahead of the presser's trailing edge as points of the section. */
const camPoints = (
  { frame, layout, viewed }: HoldView,
  edge: readonly { readonly ahead: number; readonly depth: number }[],
): [number, number][] =>
  edge.map(({ ahead, depth }) => [
    bedX(layout, viewed, frame.x + frame.pass.way * ahead),
    levelY(layout, -depth),
  ])

/** The presser, drawn as if of glass, since the catches are behind it; and, where it is worn, what has gone from it. */
export const presser = (view: HoldView): Line[] => {
  const { frame, layout } = view
  const { condition, pass } = frame
  const edge = camPoints(view, presserEdge(condition, pass.way, 16))
  const [near, far] = [entryAt(edge, 0)[0], lastOf(edge)[0]]
  const body = outline([[near, layout.presserTop], ...edge, [far, layout.presserTop]])
  const isWorn = view.broken.has(`presser.${sideOfWay(pass.way)}`) && !condition.carriagePlain
  const lost = outline([
    ...camPoints(view, dipEdge(presserAsMade(condition, pass.way), 16)),
    ...edge.reverse(),
  ])
  const look = condition.carriagePlain ? ' aside' : isWorn ? ' worn' : ''
  return [
    { look: `presser-body${look}`, d: body, part: 'presser' },
    { look: 'worn-away', d: isWorn ? lost : '', ...(isWorn ? { hatch: 'broken' as const } : {}) },
  ]
}

/** The first gate, under which only butts that are held can pass. */
export const firstGate = (view: HoldView): Line => {
  const { frame, layout, viewed, broken } = view
  const { condition, pass } = frame
  const x = (behind: number): number => bedX(layout, viewed, frame.x - pass.way * behind)
  const edge = levelY(layout, -gateEdge(condition, 'gate.1'))
  const isWrong = broken.has('gate.1')
  return {
    look: `gate-body${condition.carriagePlain ? ' aside' : isWrong ? ' broken' : ''}`,
    d: boxPath(
      x(view.frame.condition.dimensions.gateLag),
      layout.presserTop,
      x(view.frame.condition.dimensions.gateLag + cams.gate1Length),
      edge,
    ),
    part: 'gate.1',
    hatch: isWrong ? 'broken' : 'cut',
  }
}

/** The springs below the needles' plates. */
export const springs = (view: HoldView): Line[] => {
  const { frame, layout, viewed, seen } = view
  const { condition } = frame
  return seen.map((index) => {
    const top = markOfNeedle(condition.needleGone, index)
      ? -shape.plate
      : measureOfNeedle(frame.buttHeights, index) - shape.plate
    const isSlow = measureOfNeedle(condition.needleStiff, index) > 0 || condition.retainer > 0
    return {
      look: `coil${isSlow ? ' slow' : ''}`,
      d: springUp(buttPosition(layout, viewed, index), layout.floor, top, halfSpring),
      part: needlePart(index),
    }
  })
}

const isOut = (view: HoldView, index: number): boolean => {
  const { first, last } = view.frame.condition.bed
  return index < first || index > last
}

/** Whether the first gate has turned a butt: then it is behind the gate. */
const isTurned = ({ condition, pass, x }: Frame, index: Needle): boolean =>
  ofNeedle(pass.came, index) === 'plain' && sinceLetGo(x, index, pass.way) > condition.dimensions.gateLag

/** The needles' plates with their butts. */
export const butts = (view: HoldView): Line[] => {
  const { frame, layout, viewed, seen } = view
  const { condition } = frame
  return seen.flatMap((index) => {
    const lean = markOfNeedle(condition.needleBent, index) ? shape.lean : 0
    const place = buttPosition(layout, viewed, index)
    const isGone = markOfNeedle(condition.needleGone, index) === 1
    const d = isGone ? '' : buttOutline(place, measureOfNeedle(frame.buttHeights, index), lean)
    const holding = isOut(view, index) ? 'out' : holdingOf(frame, index)
    const isBroken = view.broken.has(needlePart(index))
    const wrong = holding === 'missed' || holding === 'extra' || (isBroken && lean > 0)
    const ghost = isGone || lean > 0 ? buttOutline(place, measureOfNeedle(frame.buttHeights, index), 0) : ''
    return [
      { look: 'gone', d: ghost },
      {
        look: `plate ${holding}${index === view.needle ? ' shown' : ''}${isTurned(frame, index) ? ' turned' : ''}`,
        d,
        part: needlePart(index),
        ...(wrong ? { hatch: 'broken' as const } : {}),
      },
    ]
  })
}

const catchLines = (view: HoldView, index: Needle): Line[] => {
  const { frame, layout, viewed } = view
  const place = buttPosition(layout, viewed, index)
  const strip = stripOfNeedle(index, frame.condition)
  const state = catchOf(frame, index)
  const isBroken = markOfNeedle(frame.condition.catchBroken, index) === 1
  const isStripBroken = view.broken.has(`strip.${strip}`)
  const pushed = isPushed(frame, strip)
  const isShown = index === view.needle
  const look = `finger${isShown ? ' shown' : ''}${isBroken || isStripBroken ? ' broken' : pushed ? ' pushed' : ''}`
  const d = isBroken ? stumpOutline(place, state) : catchOutline(place, state)
  return [
    { look: 'gone', d: isBroken ? catchOutline(place, state) : '' },
    {
      look,
      d,
      part: isBroken ? `catch.${needleName(index)}` : `strip.${strip}`,
      ...(isShown && (isBroken || isStripBroken) ? { hatch: 'broken' as const } : {}),
    },
  ]
}

/** The bar of the strip of the needle shown, which runs through the whole section. */
const barOutline = ({ layout }: HoldView): string => {
  const [top, foot] = [levelY(layout, shape.stripTop), levelY(layout, shape.stripFoot)]
  return boxPath(layout.left - 10, top, layout.right + 10, foot)
}

/** The rivet by which the catch shown stands on its strip. */
const rivet = (view: HoldView, shift: number): string => {
  const { layout, viewed, needle, frame } = view
  const root = tipAt(frame.condition.reach, shift) - shape.nose - shape.finger / 2
  const x = bedX(layout, viewed, needle) + root * layout.along
  const y = levelY(layout, (shape.stripTop + shape.stripFoot) / 2)
  return ring(x, y, px(layout.along * 0.1))
}

/** The catches of the other strips; then the strip of the needle shown, with its own catch. */
export const catches = (view: HoldView): Line[] => {
  const { frame, needle } = view
  const strip = stripOfNeedle(needle, frame.condition)
  const isBroken = view.broken.has(`strip.${strip}`)
  const mark = isBroken ? ' broken' : isPushed(frame, strip) ? ' pushed' : ''
  return [
    ...view.seen.filter((index) => index !== needle).flatMap((index) => catchLines(view, index)),
    {
      look: `strip-bar${mark}`,
      d: barOutline(view),
      part: `strip.${strip}`,
      ...(isBroken ? { hatch: 'broken' as const } : {}),
    },
    ...catchLines(view, needle),
    { look: `rivet${mark}`, d: rivet(view, measureOfStrip(frame.stripShifts, strip)) },
  ]
}

/** The push as it travels, under all it moves: along the strip to its catch, and on with the butts that are held. */
export const glows = (view: HoldView): Line[] => {
  const { frame, layout, viewed, needle } = view
  const pushed = isPushed(frame, stripOfNeedle(needle, frame.condition))
  const hasCatch = markOfNeedle(frame.condition.catchBroken, needle) !== 1
  const held = view.seen.filter((index) => holdingOf(frame, index) === 'held')
  return [
    { look: 'glow', d: pushed ? barOutline(view) : '' },
    {
      look: 'glow',
      d: pushed && hasCatch ? catchOutline(buttPosition(layout, viewed, needle), catchOf(frame, needle)) : '',
    },
    {
      look: 'glow',
      d: held
        .map((index) =>
          buttOutline(buttPosition(layout, viewed, index), measureOfNeedle(frame.buttHeights, index), 0),
        )
        .join(''),
    },
  ]
}
