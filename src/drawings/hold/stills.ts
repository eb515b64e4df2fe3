import { stripOfNeedle } from '../../mechanism/bed.ts'
import { fullShift } from '../../mechanism/rocker.ts'
import { heldHeight } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'
import { stripShift } from '../../mechanism/strip.ts'
import { markOfNeedle } from '../../mechanism/indices.ts'
import {
  heightAt,
  type Moment,
  momentOf,
  moments,
  momentWords,
  neverCaught,
} from '../../words/figures/hold.ts'
import {
  buttOutline,
  type ButtPosition,
  type Catch,
  catchOutline,
  shape,
  stumpOutline,
} from '../shared/detail/profile.ts'
import { type Label, linesAt } from '../shared/labels.ts'
import type { Line } from '../shared/linework.ts'
import { boxPath, polyline } from '../shared/paths.ts'
import { lift } from './layout.ts'
import type { HoldView } from './view.ts'

/** Half the width of a still's section, and its depth, in mm. */
const half = 3.6
const depth = -4.8

const catchAt = (view: HoldView, moment: Moment): Catch => {
  const { frame, needle } = view
  const { condition, pass } = frame
  const atLetGo = stripShift(condition, pass.drive, stripOfNeedle(needle, condition), needle)
  const covers = atLetGo >= condition.reach ? atLetGo : fullShift(condition.dimensions)
  const shift = moment === 'free' ? 0 : moment === 'caught' ? covers : atLetGo
  return { reach: condition.reach, shift, tip: shift, under: heldHeight(condition, needle) - shape.spurDrop }
}

const stillLines = (view: HoldView, moment: Moment, left: number): Line[] => {
  const { frame, needle, layout } = view
  const { condition } = frame
  const { stills } = layout
  const place: ButtPosition = {
    x: left + stills.middle,
    rest: stills.top + stills.rest,
    along: stills.along,
    up: stills.along * lift,
  }
  const box = (bottom: number, top: number, from: number, to: number): string => {
    const [x1, x2] = [place.x + from * place.along, place.x + to * place.along]
    const [y1, y2] = [place.rest - top * place.up, place.rest - bottom * place.up]
    return boxPath(x1, y1, x2, y2)
  }
  const never = neverCaught(frame, needle)
  const height = heightAt(frame, needle, moment === 'caught' && never !== null ? 'free' : moment)
  const held = catchAt(view, moment)
  const tip = never === 'dip too small' ? Math.min(held.tip, held.reach) : held.tip
  const isCaught = moment === 'caught' && never === null
  const lean = markOfNeedle(condition.needleBent, needle) ? shape.lean : 0
  const gone = markOfNeedle(condition.needleGone, needle) === 1
  const stump = markOfNeedle(condition.catchBroken, needle) === 1
  return [
    { look: 'channel', d: box(shape.channel, shape.bed, -half, 1.4) },
    { look: 'still-bed', d: box(depth, shape.channel, -half, 1.4), hatch: 'cut' },
    { look: 'strip-bar small', d: box(shape.stripFoot, shape.stripTop, -half, 1.4) },
    {
      look: `finger small${stump ? ' broken' : ''}`,
      d: stump ? stumpOutline(place, held) : catchOutline(place, { ...held, tip }),
    },
    {
      look: 'rest',
      d: polyline([
        [place.x - half * place.along, place.rest],
        [place.x + 1.4 * place.along, place.rest],
      ]),
    },
    { look: `plate small${isCaught ? ' held' : ''}`, d: gone ? '' : buttOutline(place, height, lean) },
    {
      look: 'presser-body',
      d: moment === 'dipped' && !condition.carriagePlain ? box(-heightOfDip(view), 0.25, -half, 1.4) : '',
    },
  ]
}

const heightOfDip = (view: HoldView): number => -heightAt(view.frame, view.needle, 'dipped')

/** The three moments side by side, each as it would be for the needle shown. */
export const stillsLines = (view: HoldView): Line[] =>
  moments.flatMap((moment, n) => stillLines(view, moment, at(view.layout.stills.lefts, n)))

/** The frames round the moments: the present one is thick. */
export const stillFrames = (view: HoldView): Line[] => {
  const { stills } = view.layout
  const now = momentOf(view.frame, view.needle)
  return moments.map((moment, n) => {
    const left = at(stills.lefts, n)
    return {
      look: `still-frame${moment === now ? ' now' : ''}`,
      d: `M${left},${stills.top}h${stills.width}v${stills.height}h${-stills.width}Z`,
    }
  })
}

/** The words beside the moments. */
export const stillLabels = (view: HoldView): Label[] => {
  const { frame, needle, layout } = view
  const { words, lefts, top } = layout.stills
  const now = momentOf(frame, needle)
  const isNever = neverCaught(frame, needle) !== null
  return moments.flatMap((moment, n) => {
    const lines = momentWords(frame, needle, moment)
      .slice(0, layout.shape === 'wide' ? 3 : 2)
      .map((text, line) => ({
        look: `${line === 0 ? 'title' : 'more'}${moment === now ? ' now' : ''}${moment === 'caught' && isNever && line > 0 ? ' wrong' : ''}`,
        text,
      }))
    return linesAt([at(lefts, n) + words.x, top + words.y], words.step, lines)
  })
}
