import { describe, expect, test } from 'vitest'
import { catchPath } from '@/drawings/mend/strips.ts'
import { foot, layouts, needleX, perMm, reachOf } from '@/drawings/mend/layout.ts'
import { drawMend } from '@/drawings/mend/mend.ts'
import { viewOf } from '@/drawings/mend/view.ts'
import { figure as fabric } from '@/drawings/fabric/figure.ts'
import { type Figure, shapes } from '@/drawings/shared/figure-contract.ts'
import { px } from '@/drawings/shared/paths.ts'
import { needleName } from '@/mechanism/bed.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { mendedAfter } from '@/mechanism/mended.ts'
import { machine } from '../mechanism/make.ts'
import { drawn, expectSameOverAll, expectSound, textsOf } from './redraw.ts'

const mend: Figure = { ...fabric, draw: drawMend }
const card = [0xffffff, 0xffffff, 0xffffff]
const broken = machine(card, ['strip.3.seized'])
const sound = machine(card, [])
const mended = mendedAfter(broken, sound, 30)

describe.each(shapes)('the %s picture of a fault and its mending', (shape) => {
  const layout = layouts[shape]
  const end = (pass: number): number => reachOf(shape, pass % 2 === 1 ? 1 : -1).end
  const ofBroken = { run: broken, frame: frameAt(broken, 30, end(30)) }
  const ofMended = { run: mended, frame: frameAt(mended, 40, end(40)) }

  test('is the same however it came to its state', { timeout: 30000 }, () => expectSameOverAll(mend, shape))
  test('has a number wherever one is due', () => expectSound(mend, shape))

  test('its line goes from the foot of the fabric by way of the needle and its catch to the broken strip', () => {
    const line = drawn(mend, ofBroken, shape).querySelector('.trail-line')?.getAttribute('d') ?? ''
    const view = viewOf(broken, ofBroken.frame, { shape, prefix: 'test' })
    expect(line.startsWith(catchPath(view, layout.subject))).toBe(true)
    const [x, bottom] = /H([\d.]+)V([\d.]+)$/.exec(line)?.slice(1).map(Number) ?? []
    expect(x).toBe(px(needleX(layout, layout.subject)))
    expect(bottom).toBeGreaterThan(foot(layout))
    expect(drawn(mend, ofMended, shape).querySelector('.trail-line')?.getAttribute('d') ?? '').toBe('')
  })

  test('names the needles that are missed, every eighth', () => {
    const missed = textsOf(drawn(mend, ofBroken, shape), '.needle-name[data-mark="missed"]')
    const every = Array.from({ length: layout.needles }, (_, n) => layout.first + n)
      .filter((index) => (index - layout.subject) % 8 === 0)
      .map((index) => `${needleName(toNeedle(index))} missed`)
    expect(missed).toEqual(every)
    expect(every.length).toBeGreaterThan(1)
    expect(textsOf(drawn(mend, ofMended, shape), '.needle-name[data-mark="missed"]')).toEqual([])
  })

  test('hatches every wrong stitch that is in sight, and none that was knitted whole', () => {
    const boxes = (state: typeof ofBroken): number =>
      (drawn(mend, state, shape).querySelector('.wrong')?.getAttribute('d') ?? '').split('M').length - 1
    const columns = textsOf(drawn(mend, ofBroken, shape), '.needle-name').length
    // One row more than is seen, which goes down out of sight.
    expect(boxes(ofBroken)).toBe((layout.rows + 1) * columns)
    // Rows 32 to 40 are whole: what pass 30 set out is knitted in pass 31.
    expect(boxes(ofMended)).toBe((layout.rows + 1 - 9) * columns)
  })

  test('moves the strip’s catches as far as the strip, to the picture’s scale', () => {
    const x = layout.subject
    const frame = frameAt(mended, 41, x)
    const view = viewOf(mended, frame, { shape, prefix: 'test' })
    const still = viewOf(mended, { ...frame, stripShifts: new Float64Array(8) }, { shape, prefix: 'test' })
    const left = (path: string): number => Number(/^M(-?[\d.]+)/.exec(path)?.[1])
    const shift = frame.stripShifts[2] ?? 0
    expect(shift).toBeGreaterThan(1)
    expect(left(catchPath(view, x)) - left(catchPath(still, x))).toBeCloseTo(shift * perMm(layout), 0)
  })
})
