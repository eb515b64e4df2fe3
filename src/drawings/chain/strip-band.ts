import { stripOfColumn, stripOfNeedle } from '../../mechanism/bed.ts'
import { needleName } from '../../mechanism/bed.ts'
import { changeBy, keyOf } from '../shared/stale.ts'
import { change, changeText, type Drawn, type Group, keep, outline, part, parts, px } from '../shared/svg.ts'
import { bedX, columnX, perMm, stripY } from './layout.ts'
import { columnNumbers, needlesInWindow, slidingWithBed, stripNumbers, type View } from './view.ts'

/** Shift of a strip in the picture. */
export const shiftPx = (view: View, strip: number): number =>
  (view.frame.stripShifts[strip - 1] ?? 0) * perMm(view.layout)

/** How far the rod of a column is pushed down at its upper end, and how far its strip lets its lower end follow. */
export const rodTravel = (view: View, column: number): { top: number; bottom: number } => {
  const top = (view.frame.rockerOuts[column - 1] ?? 0) * perMm(view.layout)
  return { top, bottom: Math.min(top, shiftPx(view, stripOfColumn(column))) }
}

/** A strip's outline: a long bar broken off at both ends, since it runs the whole bed. */
const bar = (view: View, strip: number): string => {
  const { layout } = view
  const half = layout.name === 'wide' ? 3 : 2.2
  const y = stripY(layout, strip)
  const left = layout.left + layout.pitch * 0.3 + shiftPx(view, strip)
  const right = left + (layout.needles - 1.5) * layout.pitch
  return outline([
    [left, y - half],
    [right, y - half],
    [right - half, y - half / 3],
    [right + half, y + half / 3],
    [right, y + half],
    [left, y + half],
    [left - half, y + half / 3],
    [left + half, y - half / 3],
  ])
}

/** A catch: a small hook that hangs from its strip, left of the butt that it will cover. */
const hook = (view: View, index: number): string => {
  const { layout } = view
  const [drop, foot, rest] = layout.name === 'wide' ? [6.5, 4.5, 13.5] : [4.5, 3, 9.5]
  const strip = stripOfNeedle(index)
  const x = bedX(layout, index) - rest + shiftPx(view, strip)
  return `M${px(x)},${px(stripY(layout, strip) + 2.5)}v${drop}h${foot}`
}

/** The catches in the window: all of a strip as one path, for they only move with it; those that are broken alone. */
const drawCatches = (band: Group, view: View): void => {
  const clip = part(band, 'g', 'catches')
  change(clip, 'clip-path', () => `url(#${view.prefix}-window)`)
  const onBed = slidingWithBed(clip, 'on-bed', view)
  const isOff = (index: number): boolean => view.broken.has(`catch.${needleName(index)}`)
  const shown = needlesInWindow(view)
  const whole = parts(onBed, 'path', 'catch', stripNumbers)
  const key = `${shown[0]} ${shown.length} ${shown.filter(isOff).join()}`
  changeBy(
    whole,
    'd',
    (strip) => `${key} ${px(shiftPx(view, strip))}`,
    (strip) =>
      shown
        .filter((index) => stripOfNeedle(index) === strip && !isOff(index))
        .map((index) => hook(view, index))
        .join(''),
  )
  drawStripLooks(whole, view)
  const off = parts(part(onBed, 'g', 'broken-catches'), 'path', 'catch', shown.filter(isOff))
  change(off, 'd', (index) => hook(view, index))
  change(off, 'data-part', (index) => `strip.${stripOfNeedle(index)}`)
  keep(off, 'data-broken', 'broken')
}

/** What a strip's parts are marked with: whose they are, whether it is broken, and whether it is pushed just now. */
const drawStripLooks = <E extends SVGElement>(drawn: Drawn<E, number>, view: View): void => {
  change(drawn, 'data-part', (strip) => `strip.${strip}`)
  change(drawn, 'data-broken', (strip) => (view.broken.has(`strip.${strip}`) ? 'broken' : ''))
  change(drawn, 'data-push', (strip) => (shiftPx(view, strip) > 0 ? 'push' : ''))
}

/** The rods that hand a rocker's push down to its strip. A rod whose strip will not move bows. */
const drawRods = (band: Group, view: View): void => {
  const { layout } = view
  const rods = parts(band, 'path', 'rod', columnNumbers)
  // A rod presses on a slope that rises to the right, and so drives its strip to the right.
  const wedge = layout.name === 'wide' ? 6 : 4.5
  const head = layout.name === 'wide' ? 4.4 : 3.2
  const rodKey = (column: number): number => {
    const { top, bottom } = rodTravel(view, column)
    return keyOf(top, bottom)
  }
  changeBy(rods, 'd', rodKey, (column) => {
    const { top, bottom } = rodTravel(view, column)
    const x = columnX(layout, column)
    const [y0, y1] = [layout.rod + top, stripY(layout, stripOfColumn(column)) - 2.5 - wedge + bottom]
    const bow = Math.min(8, Math.sqrt(Math.max(0, top - bottom) * (y1 - y0)) * 0.6)
    const cup = `M${px(x - head)},${px(y0 - head * 1.6)}L${px(x)},${px(y0)}L${px(x + head)},${px(y0 - head * 1.6)}M${px(x)},${px(y0)}`
    return `${cup}${bow > 0.3 ? `Q${px(x + 2 * bow)},${px((y0 + y1) / 2)} ${px(x)},${px(y1)}` : `V${px(y1)}`}`
  })
  change(rods, 'data-push', (column) => (rodTravel(view, column).top > 0 ? 'push' : ''))
  change(rods, 'data-broken', (column) => (view.broken.has(`rocker.${column}`) ? 'broken' : ''))
  change(rods, 'data-part', (column) => `rocker.${column}`)
  const tab = (column: number): string => {
    const strip = stripOfColumn(column)
    const x = columnX(layout, column) + shiftPx(view, strip) - wedge
    return `M${px(x)},${px(stripY(layout, strip) - 2.5)}l${wedge + 1},${-wedge - 1}v${wedge + 1}Z`
  }
  const tabs = parts(band, 'path', 'tab', stripNumbers)
  changeBy(
    tabs,
    'd',
    (strip) => shiftPx(view, strip),
    (strip) =>
      columnNumbers
        .filter((column) => stripOfColumn(column) === strip)
        .map(tab)
        .join(''),
  )
}

/** The eight strips from above, with all their catches in the window, and the rods that work them. */
export const drawStrips = (root: Group, view: View): void => {
  const { layout, frame } = view
  const band = part(root, 'g', 'strip-band')
  const bars = parts(band, 'path', 'strip', stripNumbers)
  changeBy(
    bars,
    'd',
    (strip) => shiftPx(view, strip),
    (strip) => bar(view, strip),
  )
  drawStripLooks(bars, view)
  change(bars, 'fill', (strip) => (view.broken.has(`strip.${strip}`) ? `url(#${view.prefix}-broken)` : ''))
  drawCatches(band, view)
  drawRods(band, view)

  const names = parts(band, 'text', 'strip-name', stripNumbers)
  change(names, 'x', () => layout.left + layout.needles * layout.pitch + (layout.name === 'wide' ? 2 : 0))
  change(names, 'y', (strip) => px(stripY(layout, strip) + 4))
  change(names, 'data-broken', (strip) => (view.broken.has(`strip.${strip}`) ? 'broken' : ''))
  change(names, 'data-push', (strip) => ((frame.stripShifts[strip - 1] ?? 0) > 0 ? 'push' : ''))
  changeText(names, String)
}
