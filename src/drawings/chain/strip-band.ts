import { columnsOfStrip, needleName, stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import {
  allColumns,
  allStrips,
  type Column,
  type Needle,
  measureOfColumn,
  measureOfStrip,
  type Strip,
} from '../../mechanism/indices.ts'
import { clipTo, hatch } from '../shared/definitions.ts'
import { boxPath, outline, px } from '../shared/paths.ts'
import { type Attributes, drawGroup, drawShape, drawShapes, type Group, keyed, keyOf } from '../shared/svg.ts'
import { bedX, type ChainLayout, columnX, needleX, perMm, stripY } from './layout.ts'
import { rockerX } from './reader-band.ts'
import { type ChainView, needlesInWindow, slidingWithBed } from './view.ts'

/** Shift of a strip in the picture. */
export const shiftPx = (view: ChainView, strip: Strip): number =>
  measureOfStrip(view.frame.stripShifts, strip) * perMm(view.layout)

/** How far the rod of a column is pushed to the right at its upper end, and how far its strip lets its foot follow. */
export const rodTravel = (view: ChainView, column: Column): { top: number; bottom: number } => {
  const top = measureOfColumn(view.frame.rockerOuts, column) * perMm(view.layout)
  return { top, bottom: Math.min(top, shiftPx(view, stripOfColumn(column))) }
}

/** How far a strip runs on beyond the last needle at each end of the bed, in needles. */
const beyond = 1.2

/**
 * Where the piece of a strip that is seen begins and ends in the picture, with the strip at rest, and whether it is broken
 * off there: the strip itself ends a little beyond the last needles.
 */
export const stripPiece = ({
  layout,
  from,
  whole,
}: ChainView): { left: number; right: number; isCutLeft: boolean; isCutRight: boolean } => {
  const [first, last] = [
    layout.left + layout.pitch * 0.3,
    layout.left + (layout.needles - 1.2) * layout.pitch,
  ]
  const begins = needleX(layout, from, whole.first - beyond)
  const ends = needleX(layout, from, whole.last + beyond)
  const within = (x: number): number => Math.min(last, Math.max(first, x))
  return { left: within(begins), right: within(ends), isCutLeft: begins < first, isCutRight: ends > last }
}

/**
 * Where the window is past an end of the bed, the strips' line goes on to the rods: the reader is drawn over the window,
 * and on the machine it stays over the strips.
 */
const onToRods = (view: ChainView): string => {
  const { layout } = view
  const { left, right } = stripPiece(view)
  const [first, last] = [columnX(layout, 1) - 4, columnX(layout, dimensions.columns) + 4]
  return allStrips
    .map((strip) => {
      const y = stripY(layout, strip)
      const before = left > first ? `M${px(first)},${px(y)}H${px(left)}` : ''
      return right < last ? `${before}M${px(right)},${px(y)}H${px(last)}` : before
    })
    .join('')
}

/** A strip's outline: a long bar, broken off where it runs on beyond the window. */
const bar = (view: ChainView, strip: Strip): string => {
  const { layout } = view
  const half = layout.shape === 'wide' ? 3 : 2.2
  const y = stripY(layout, strip)
  const piece = stripPiece(view)
  const [left, right] = [piece.left + shiftPx(view, strip), piece.right + shiftPx(view, strip)]
  return outline([
    [left, y - half],
    [right, y - half],
    ...(piece.isCutRight
      ? ([
          [right - half, y - half / 3],
          [right + half, y + half / 3],
        ] as const)
      : []),
    [right, y + half],
    [left, y + half],
    ...(piece.isCutLeft
      ? ([
          [left - half, y + half / 3],
          [left + half, y - half / 3],
        ] as const)
      : []),
  ])
}

/** A catch: it reaches from its strip to the front, left of the needle whose spur it will come over. */
const hook = (view: ChainView, index: Needle): string => {
  const { layout, frame } = view
  const [drop, foot, rest] = layout.shape === 'wide' ? [6.5, 4.5, 13.5] : [4.5, 3, 9.5]
  const strip = stripOfNeedle(index, frame.condition)
  const x = bedX(layout, index) - rest + shiftPx(view, strip)
  return `M${px(x)},${px(stripY(layout, strip) + 2.5)}v${drop}h${foot}`
}

/** The catches in the window: all of a strip as one path, for they only move with it; those that are broken alone. */
const drawCatches = (band: Group, view: ChainView): void => {
  const { condition } = view.frame
  const clip = drawGroup(band, 'catches', { 'clip-path': clipTo(view.prefix, 'window') })
  const onBed = slidingWithBed(clip, 'on-bed', view)
  const shown = needlesInWindow(view)
  const off = shown.filter((index) => view.broken.has(`catch.${needleName(index)}`))
  const key = `${condition.columnOne} ${shown[0]} ${shown.length} ${off.join()}`
  const catches = (strip: Strip): string =>
    shown
      .filter((index) => stripOfNeedle(index, condition) === strip && !off.includes(index))
      .map((index) => hook(view, index))
      .join('')
  drawShapes(onBed, 'path', 'catch', allStrips, (strip) => ({
    d: keyed(`${key} ${px(shiftPx(view, strip))}`, () => catches(strip)),
    ...stripLooks(view, strip),
  }))
  drawShapes(drawGroup(onBed, 'broken-catches'), 'path', 'catch', off, (index) => ({
    d: hook(view, index),
    'data-part': `strip.${stripOfNeedle(index, condition)}`,
    'data-broken': 'broken',
  }))
}

/** What a strip's parts are marked with: whose they are, whether it is broken, and whether it is pushed just now. */
const stripLooks = (view: ChainView, strip: Strip): Attributes => ({
  'data-part': `strip.${strip}`,
  'data-broken': view.broken.has(`strip.${strip}`) ? 'broken' : '',
  'data-push': shiftPx(view, strip) > 0 ? 'push' : '',
})

/** How wide and how tall a lug is. */
const lugSizes = { wide: { wide: 3.2, tall: 6.5 }, narrow: { wide: 2.4, tall: 4.5 } } as const

/** Where a rod presses on its lug: upper edge of its strip. */
const lugY = (layout: ChainLayout, strip: Strip): number => stripY(layout, strip) - 3

/** A rod whose ends are pushed to the right by so many pixels; it bows where its strip will not move. */
const rodShape = (layout: ChainLayout, column: Column, top: number, bottom: number): string => {
  const x = rockerX(layout, column)
  const [y0, y1] = [layout.plate, lugY(layout, stripOfColumn(column))]
  const bow = Math.min(8, Math.sqrt(Math.max(0, top - bottom) * (y1 - y0)) * 0.6)
  const upper = `M${px(x + top)},${layout.foot}V${y0}`
  return bow > 0.3
    ? `${upper}Q${px(x + top + 2 * bow)},${px((y0 + y1) / 2)} ${px(x + bottom)},${px(y1)}`
    : `${upper}L${px(x + bottom)},${px(y1)}`
}

/** The lugs on a strip: a rod that goes to the right takes its lug along, and with it the strip. */
const lugs = (view: ChainView, strip: Strip): string => {
  const { layout } = view
  const { wide, tall } = lugSizes[layout.shape]
  return columnsOfStrip(strip)
    .map((column) => {
      const x = rockerX(layout, column) + shiftPx(view, strip) + 1.2
      return boxPath(x, lugY(layout, strip) + 0.5 - tall, x + wide, lugY(layout, strip) + 0.5)
    })
    .join('')
}

/** The rods that hand a rocker's push down to its strip, and the lugs on the strips. */
const drawRods = (band: Group, view: ChainView): void => {
  drawShapes(band, 'path', 'tab', allStrips, (strip) => ({
    d: keyed(shiftPx(view, strip), () => lugs(view, strip)),
    ...stripLooks(view, strip),
  }))
  drawShapes(band, 'path', 'rod', allColumns, (column) => {
    const { top, bottom } = rodTravel(view, column)
    return {
      d: keyed(keyOf(top, bottom), () => rodShape(view.layout, column, top, bottom)),
      'data-push': top > 0 ? 'push' : '',
      'data-broken': view.broken.has(`rocker.${column}`) ? 'broken' : '',
      'data-part': `rocker.${column}`,
    }
  })
}

/** Where a strip's number begins, right of the bed: in the narrow shape in two columns, since they would touch in one. */
const numberX = (layout: ChainLayout, strip: Strip): number => {
  const right = layout.left + layout.needles * layout.pitch
  if (layout.shape === 'wide') return right + 2
  return right - 1 + (strip % 2 === 0 ? 6 : 0)
}

/** The eight strips from above, with all their catches in the window, and the rods that work them. */
export const drawStrips = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const band = drawGroup(root, 'strip-band')
  const { left, right } = stripPiece(view)
  const piece = `${px(left)} ${px(right)}`
  drawShape(band, 'path', 'strip-line', { d: keyed(piece, () => onToRods(view)) })
  drawShapes(band, 'path', 'strip', allStrips, (strip) => ({
    d: keyed(`${shiftPx(view, strip)} ${piece}`, () => bar(view, strip)),
    ...stripLooks(view, strip),
    fill: view.broken.has(`strip.${strip}`) ? hatch(view.prefix, 'broken') : '',
  }))
  drawCatches(band, view)
  drawRods(band, view)

  drawShapes(band, 'text', 'strip-name', allStrips, (strip) => ({
    x: px(numberX(layout, strip)),
    y: px(stripY(layout, strip) + 4),
    'data-broken': view.broken.has(`strip.${strip}`) ? 'broken' : '',
    'data-push': measureOfStrip(frame.stripShifts, strip) > 0 ? 'push' : '',
    text: String(strip),
  }))
}
