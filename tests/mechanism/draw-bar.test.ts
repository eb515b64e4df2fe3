import { describe, expect, test } from 'vitest'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type Frame, frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { withDrawBar } from '@/mechanism/draw-bar.ts'

/** The machine at the end of pass 1 with a hole in every other column: the sweep is over some of the pins. */
const atEnd = (faults: readonly string[] = []): Frame =>
  frameAt(startRun({ ...soundScenario([0xaaaaaa]), faults: faults.map(faultOf) }), 1, 211)

const most = (list: Float64Array): number => Math.max(...list)

describe('the draw bar at a turn', () => {
  test('leaves everything as it is while it is up', () => {
    const frame = atEnd()
    expect(most(frame.pinLeans)).toBeGreaterThan(1)
    const { drawBar, ...rest } = withDrawBar(frame, frame.condition.dimensions.pinHigh)
    expect(drawBar).toBe(frame.condition.dimensions.pinHigh)
    expect(rest).toEqual(frame)
  })

  test('meets the high pins first: half way down, low ones are where they were', () => {
    const frame = atEnd()
    const { pinHigh, pinLow } = frame.condition.dimensions
    const { pinHeights } = withDrawBar(frame, 2)
    expect(new Set(frame.pinHeights)).toEqual(new Set([pinHigh, pinLow]))
    expect(new Set(pinHeights)).toEqual(new Set([2, pinLow]))
  })

  test('takes pins from the sweep, and rockers and strips come back', () => {
    const down = withDrawBar(atEnd(), 0.6)
    expect(most(down.pinHeights)).toBe(0.6)
    expect([most(down.pinLeans), most(down.rockerOuts), most(down.stripShifts)]).toEqual([0, 0, 0])
  })

  test('does not bring back what is stuck', () => {
    expect(most(withDrawBar(atEnd(['strip.3.over']), 0.6).stripShifts)).toBeCloseTo(1.8, 9)
  })
})
