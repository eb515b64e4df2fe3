import { at as entryAt, lastOf } from '../../mechanism/lookup.ts'
import { measureOfColumn, ofColumn, toColumn } from '../../mechanism/indices.ts'
import { neededPush } from '../../mechanism/rocker.ts'
import { type Drive, pinPush } from '../../mechanism/drive.ts'
import { leadOf, sweepEnd, sweepWindow, wrap } from '../../mechanism/sweep.ts'
import { polyline, px } from '../shared/paths.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { meetingPlace, meetings } from './curves.ts'
import { placeX, type TimingLayout } from './layout.ts'
import type { TimingView } from './view.ts'

/** Steps from one end of a push to the other. */
const steps = 28

type Lane = NonNullable<TimingLayout['pushes']>

const pushesAt = (
  view: TimingView,
  lane: Lane,
  drive: Drive,
  places: readonly number[],
): [number, number][] =>
  places.map((x) => [
    placeX(view.layout, x),
    lane.base - pinPush(view.machine.condition, view.machine.drive, drive, x).push * lane.perMm,
  ])

const steppedFrom = (low: number, high: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, n) => low + ((high - low) * n) / count)

/** The pushes of one column in the window as open lines; one line throughout for a pin that keeps its push. */
const linesOf = (view: TimingView, lane: Lane, drive: Drive): [number, number][][] => {
  const { low, high } = view.range
  if (drive.fullPush <= 0) return []
  const end = sweepEnd(view.machine.condition.dimensions)
  if (drive.keeps) return [pushesAt(view, lane, drive, steppedFrom(low, high, 8 * Math.ceil(high - low)))]
  return meetings(view.machine, drive.column, { low: low - end, high: high + end }).map((place) =>
    pushesAt(view, lane, drive, steppedFrom(Math.max(low, place - end), Math.min(high, place + end), steps)),
  )
}

/** Pushes that the sound machine's pins would have and these pins have not, where the sweep comes by. */
const lostPushes = (view: TimingView, lane: Lane): string => {
  const { machine, sound, range } = view
  if (!sound) return ''
  const { dimensions } = machine.condition
  const [needed, end] = [neededPush(dimensions), sweepEnd(dimensions)]
  const missing = sound.drive.drives.filter(
    ({ column, fullPush }) => fullPush >= needed && ofColumn(machine.drive.drives, column).fullPush < needed,
  )
  return missing
    .flatMap(({ column, fullPush }) => meetings(machine, column, range).map((place) => ({ place, fullPush })))
    .map(({ place, fullPush }) =>
      polyline(
        steppedFrom(-end, end, steps).map((past) => [
          placeX(view.layout, place + past),
          lane.base - fullPush * sweepWindow(dimensions, past) * lane.perMm,
        ]),
      ),
    )
    .join('')
}

/**
 * Lines from each hole to the push of its pin as the presser lets go of its needle: upright while the belt is in step,
 * slanting when it is not.
 */
const links = (view: TimingView, lane: Lane): string => {
  const { machine, layout, range } = view
  const behind = machine.drive.way * leadOf(machine.condition.dimensions)
  const step = wrap(meetingPlace(machine, toColumn(1)) - behind - machine.condition.columnOne)
  const top = layout.card + layout.hole + 2
  return machine.drive.drives
    .filter(({ fullPush, keeps }) => fullPush > 0 && !keeps)
    .flatMap(({ column, fullPush }) => meetings(machine, column, range).map((x) => ({ x, fullPush })))
    .map(({ x, fullPush }) => {
      const end = lane.base - fullPush * lane.perMm - 2
      const at = x - behind
      return `M${px(placeX(layout, at - step))},${px(top)}L${px(placeX(layout, at))},${px(end)}`
    })
    .join('')
}

const shut = (line: [number, number][], base: number): string => {
  const [first, last] = [entryAt(line, 0)[0], lastOf(line)[0]]
  return polyline([[first, base], ...line, [last, base]])
}

/** Every pin's push as the sweep comes by, all columns in one lane. `happened` is clipped to what lies behind. */
export const drawPushLane = (toCome: Group, happened: Group, view: TimingView): void => {
  const lane = view.layout.pushes
  const { drives } = view.machine.drive
  const pathWhere = (keeps: boolean, drawn: (line: [number, number][], base: number) => string): string =>
    lane
      ? drives
          .filter((drive) => drive.keeps === keeps)
          .flatMap((drive) => linesOf(view, lane, drive))
          .map((line) => drawn(line, lane.base))
          .join('')
      : ''
  const path = pathWhere(false, shut)
  drawShape(toCome, 'path', 'link', { d: lane ? links(view, lane) : '' })
  drawShape(toCome, 'path', 'wave to-come pushes', { d: path })
  drawShape(happened, 'path', 'wave happened pushes', { d: path })
  drawShape(happened, 'path', 'kept', { d: pathWhere(true, polyline) })
  drawShape(toCome, 'path', 'missing pushes-missing', { d: lane ? lostPushes(view, lane) : '' })
}

/** The push that is being given now, for the amber beneath it. */
export const activePushes = (view: TimingView): string => {
  const lane = view.layout.pushes
  if (!lane) return ''
  return view.machine.drive.drives
    .filter(({ column, keeps }) => !keeps && measureOfColumn(view.frame.pinLeans, column) > 0)
    .flatMap((drive) => linesOf(view, lane, drive))
    .filter((line) => {
      const x = placeX(view.layout, view.frame.x)
      return entryAt(line, 0)[0] <= x && x <= lastOf(line)[0]
    })
    .map(polyline)
    .join('')
}
