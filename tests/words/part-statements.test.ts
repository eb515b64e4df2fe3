import fc from 'fast-check'
import { expect, test } from 'vitest'
import { frameAt } from '@/mechanism/frame.ts'
import { allColumns, allNeedles, allStrips, ofNeedle, measureOfNeedle } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { describePart } from '@/words/part-description.ts'
import { millimetres } from '@/words/lists.ts'
import { passes, scenarios } from '../mechanism/arbitraries.ts'
import { check } from '../mechanism/check.ts'

/** A machine somewhere in a pass, and what is said of its parts there. */
const anywhere = fc
  .tuple(scenarios(), passes, fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([scenario, pass, share]) => {
    const run = startRun(scenario)
    const { start, end } = run.passOf(pass).drive
    const frame = frameAt(run, pass, start + share * (end - start))
    return {
      run,
      frame,
      say: (part: Parameters<typeof describePart>[2]) => describePart(run, frame, part).doing,
    }
  })

test('what is said of a pin, a rocker and a strip is what the frame has of it', () => {
  check(
    fc.property(anywhere, ({ frame, say }) => {
      for (const column of allColumns) {
        const pin = say({ kind: 'pin', column })
        const lean = frame.pinLeans[column - 1]!
        expect(pin).toContain(`its tip stands ${millimetres(frame.pinHeights[column - 1]!)} high`)
        expect(pin.includes(' pushes it ')).toBe(lean > 0)
        if (lean > 0) expect(pin).toContain(`pushes it ${millimetres(lean)} to the left`)
        const out = frame.rockerOuts[column - 1]!
        expect(say({ kind: 'rocker', column }).includes(`Gives ${millimetres(out)} to strip`)).toBe(out > 0)
      }
      for (const strip of allStrips) {
        const shift = frame.stripShifts[strip - 1]!
        const said = say({ kind: 'strip', strip })
        expect(said.includes('At rest.')).toBe(shift <= 0)
        expect(said.includes(': far enough for its catches')).toBe(
          shift > 0 && shift >= frame.condition.reach,
        )
      }
    }),
    150,
  )
})

test('what is said of a needle is whether a catch took it, and what came of it', () => {
  check(
    fc.property(anywhere, fc.constantFrom(...allNeedles), ({ frame, run, say }, needle) => {
      const said = say({ kind: 'needle', needle })
      const { pass, x } = frame
      const { first, last } = run.condition.bed
      const isOut = needle < first || needle > last
      expect(said.includes('Out of use.')).toBe(isOut)
      if (isOut) return
      const isAhead = pass.way * (x - needle) < 0
      expect(/has not (let go of|passed) it yet/.test(said)).toBe(isAhead)
      if (isAhead || ofNeedle(pass.came, needle) !== ofNeedle(pass.asked, needle)) return
      const caught = measureOfNeedle(pass.keptFor, needle) > 0
      expect(/(^|\. )Caught/.test(said)).toBe(caught)
      expect(said.includes('Not caught')).toBe(!caught)
      expect(/selected( all the same)?, as the card asked/.test(said)).toBe(
        ofNeedle(pass.came, needle) === 'selected',
      )
      expect(/plain( all the same)?, as the card asked/.test(said)).toBe(
        ofNeedle(pass.came, needle) === 'plain',
      )
    }),
    400,
  )
})

test('what is said of the sweep and the presser is what they do to a part as drawn', () => {
  check(
    fc.property(anywhere, ({ frame, run, say }) => {
      const { condition } = run
      if (!condition.beltOff) {
        const { pinHigh, pinLow } = condition.dimensions
        const said = say({ kind: 'sweep' })
        expect(said.includes('passes over')).toBe(condition.sweepEdge >= pinHigh)
        expect(said.includes('meets every pin')).toBe(condition.sweepEdge <= pinLow)
      }
      const dip = condition.presser[frame.pass.way === 1 ? 'right' : 'left']
      const said = say({ kind: 'presser', side: null })
      expect(said.includes(`Dips each butt ${millimetres(dip)}`)).toBe(dip > 0 && !condition.carriagePlain)
    }),
    200,
  )
})
