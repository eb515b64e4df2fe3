import { lastOf } from '../../mechanism/lookup.ts'
import { columnOfNeedle, needleName } from '../../mechanism/bed.ts'
import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import { allStrips, type Strip, toNeedle, toStrip } from '../../mechanism/indices.ts'
import { needleAtPin, sweepShown } from '../../words/figures/sweep.ts'
import { drawBalloonHeads } from '../shared/balloons.ts'
import { clipTo } from '../shared/definitions.ts'
import { hasChanged } from '../shared/memo.ts'
import { type NeedleMark, needleMark } from '../shared/needle-mark.ts'
import { px } from '../shared/paths.ts'
import { wedgeEnds } from '../shared/wedge.ts'
import { drawGroup, drawShapes, type Group } from '../shared/svg.ts'
import { columnX, needleX, perMm, stripY } from './layout.ts'
import { levelY } from './reader-band.ts'
import { type ChainView, needlesInWindow } from './view.ts'

interface Label {
  readonly number: number
  readonly name: string
  readonly more: string
  readonly y: number
  /** Where the leader line ends. */
  readonly to: readonly [number, number]
}

const labelsOf = (view: ChainView): Label[] => {
  const { layout, frame } = view
  const row = frame.pass.row
  const rowWords = row === null ? 'no card' : `row ${row} is read`
  const middle = (layout.pivot + layout.foot) / 2
  return [
    {
      number: 1,
      name: 'card',
      more: rowWords,
      y: layout.shape === 'wide' ? layout.cardRow - 12 : layout.cardRow + 1,
      to: [layout.reader - 1, layout.cardRow + layout.rowSpacing / 2 - 1],
    },
    {
      number: 2,
      name: 'feeler pins',
      more: 'their front legs',
      y: levelY(layout, 1.9),
      to: [layout.reader + layout.pitch / 2 - 3, levelY(layout, 0.7)],
    },
    {
      number: 4,
      name: 'rockers',
      more: 'rods: 24 into 8',
      y: middle + 2,
      to: [layout.reader + 3, middle],
    },
    {
      number: 5,
      name: 'strips',
      more: 'catch every 8th',
      y: stripY(layout, toStrip(4)) + 8,
      to: [layout.left - 2, stripY(layout, toStrip(4)) + 8],
    },
    {
      number: 0,
      name: 'butts',
      more: 'from the side',
      y: layout.rest + 8,
      to: [layout.left - 2, layout.rest + 8],
    },
    {
      number: 9,
      name: 'needles',
      more: 'from above',
      y: layout.line + 22,
      to: [layout.left - 2, layout.line + 22],
    },
  ]
}

const stateWords = (view: ChainView, strip: Strip): string => {
  const fault = view.run.scenario.faults.find((f) => partOfFault(f) === `strip.${strip}`)
  if (!fault) return ''
  return { 'strip.seized': 'seized', 'strip.over': 'stuck', 'strip.slow': 'slow' }[fault.kind as string] ?? ''
}

/** Faults that no part's own drawing shows, in two or three words, under the name of the band they belong to. */
const quietFaults: Readonly<Partial<Record<FaultKindName, readonly [string, string]>>> = {
  'card.side': ['card', 'out to the side'],
  'card.skew': ['card', 'askew'],
  'card.reversed': ['card', 'wrong way round'],
  'card.locked': ['card', 'does not step'],
  'turn.twice': ['card', 'each row twice'],
  'pawl.skips': ['card', 'pawl skips'],
  'pawl.jumps': ['card', 'pawl jumps'],
  'pawl.right': ['card', 'right pawl dead'],
  'pawl.left': ['card', 'left pawl dead'],
  'pawl.double': ['card', 'steps two rows'],
  'turn.short': ['card', 'turned short'],
  'belt.off': ['feeler pins', 'belt not engaged'],
  'pivots.loose': ['rockers', 'pivots loose'],
  'carriage.plain': ['butts', 'not set to pattern'],
  'belt.timing': ['feeler pins', 'belt out of step'],
  'belt.slack': ['feeler pins', 'belt slack'],
  'sweep.worn': ['feeler pins', 'sweep worn'],
  'presser.right.worn': ['butts', 'presser worn'],
  'presser.left.worn': ['butts', 'presser worn'],
  'retainer.worn': ['needles', 'bar worn'],
}

const quietWords = (view: ChainView, band: string): string =>
  [
    ...new Set(
      view.run.scenario.faults.flatMap(({ kind }) => {
        const [place, words] = quietFaults[kind] ?? []
        return place === band && words !== undefined ? [words] : []
      }),
    ),
  ].join(', ')

/** Balloons and leader lines of the wide picture, and a second line of words under each name. */
const drawBalloonsAndMore = (band: Group, view: ChainView, labels: readonly Label[]): void => {
  const { layout } = view
  const led = labels.filter(({ to }) => to[0] > layout.left + 10)
  drawShapes(band, 'path', 'leader', led, ({ y, to }) => ({
    d: `M${layout.left - 4},${px(y)}L${px(to[0])},${px(to[1])}`,
  }))
  drawShapes(band, 'circle', 'leader-end', led, ({ to }) => ({ r: 1.8, cx: px(to[0]), cy: px(to[1]) }))
  drawBalloonHeads(
    drawGroup(band, 'band-balloons'),
    labels.map(({ number, y }) => ({ number, x: 11, y })).filter(({ number }) => number > 0),
  )
  drawShapes(band, 'text', 'band-more', labels, ({ number, y, more }) => ({
    x: number > 0 ? 27 : 1,
    y: px(y + 14),
    text: more,
  }))
  drawShapes(band, 'text', 'band-fault', labels, ({ number, y, name }) => ({
    x: number > 0 ? 27 : 1,
    y: px(y + 30),
    text: quietWords(view, name),
  }))
  drawShapes(band, 'text', 'strip-state', allStrips, (strip) => ({
    x: layout.left + layout.needles * layout.pitch + 12,
    y: px(stripY(layout, strip) + 4),
    text: stateWords(view, strip),
  }))
}

/** How far before the reader's right edge the words at the sweep begin at most, where its letters are largest. */
const labelRoom = 62

const drawSweepBalloon = (band: Group, { layout, frame }: ChainView): void => {
  const sweep = columnX(layout, sweepShown(frame).at) + wedgeEnds.right * perMm(layout)
  const x = Math.min(sweep + 13, layout.reader + 24 * layout.pitch + 18)
  const y = levelY(layout, 3)
  const needle = needleAtPin(frame)
  drawBalloonHeads(drawGroup(band, 'sweep-balloon'), [{ number: 3, x, y }])
  drawShapes(band, 'text', 'at-needle', [null], () => ({
    x: px(Math.min(x - 9, layout.reader + 24 * layout.pitch - labelRoom)),
    y: px(levelY(layout, 4) + 2),
    text: needle === null ? '' : `pin ${columnOfNeedle(needle, frame.condition)}, at ${needleName(needle)}`,
  }))
}

/** Names of the bands at the left; in the wide picture with the balloons that are the same on the whole site. */
export const drawLabels = (root: Group, view: ChainView): void => {
  const isWide = view.layout.shape === 'wide'
  const band = drawGroup(root, 'label-band')
  if (isWide) drawSweepBalloon(band, view)
  if (!hasChanged(band, [view.run, view.frame.pass.row])) return
  const labels = labelsOf(view)
  drawShapes(band, 'text', 'band-name', labels, ({ number, y, name }) => ({
    x: isWide && number > 0 ? 27 : 1,
    y: px(isWide ? y - 1 : y + 3),
    text: isWide ? name : lastOf(name.split(' ')),
  }))
  if (isWide) drawBalloonsAndMore(band, view, labels)
}

const verdictWords: Readonly<Partial<Record<NeedleMark, string>>> = {
  missed: 'missed',
  extra: 'not asked',
  unmoved: 'unmoved',
}

/** Room that a verdict's words take, in pixels of the picture, where its letters are largest, and some air. */
const verdictRoom = (words: string): number => words.length * 7.5 + 6

/** “missed” and “not asked” under the needles that came out wrong, where there is room for the words. */
export const drawVerdicts = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  const band = drawGroup(root, 'verdict-band', { 'clip-path': clipTo(view.prefix, 'window') })
  // The words stay within the window: half a word says nothing.
  let free = layout.left
  const right = layout.left + layout.needles * layout.pitch
  const worded = new Set<number>()
  for (const index of needlesInWindow(view)) {
    const verdict = verdictWords[needleMark(frame, index)]
    if (verdict === undefined) continue
    const half = verdictRoom(verdict) / 2
    const x = needleX(layout, view.from, index)
    const isClear = x - half >= free && x + half <= right
    if (!isClear) continue
    worded.add(index)
    free = x + half
  }
  drawShapes(band, 'text', 'verdict', [...worded], (index) => ({
    x: px(needleX(layout, view.from, index)),
    y: layout.hook + (layout.shape === 'wide' ? 46 : 31),
    'data-needle': needleName(toNeedle(index)),
    text: verdictWords[needleMark(frame, toNeedle(index))] ?? '',
  }))
}
