import fc from 'fast-check'
import { expect, test } from 'vitest'
import { needlesIn, stripOfNeedle } from '@/mechanism/bed.ts'
import { askedRow, knittedRow } from '@/mechanism/fabric.ts'
import { type Frame, frameAt, needleUnderPresser, sinceLetGo } from '@/mechanism/frame.ts'
import { allStrips, measureOfNeedle, markOfNeedle, ofNeedle } from '@/mechanism/indices.ts'
import { margins } from '@/mechanism/margins.ts'
import { type Run, startRun } from '@/mechanism/pass.ts'
import { partOfWrongRow, rowRead, standstill, stepsAtTurn } from '@/mechanism/turn.ts'
import { describeCard, turnShown } from '@/words/figures/card.ts'
import { describeFabric } from '@/words/figures/fabric.ts'
import { describeGates } from '@/words/figures/gates.ts'
import { describeHold, needleHeldUp } from '@/words/figures/hold.ts'
import { describeMargins } from '@/words/figures/margins.ts'
import { describePins } from '@/words/figures/pins.ts'
import { describeStrip, stripShown } from '@/words/figures/strip.ts'
import { sweepShown } from '@/words/figures/sweep.ts'
import { describeTiming } from '@/words/figures/timing.ts'
import { millimetres } from '@/words/lists.ts'
import { passes, scenarios } from '../mechanism/arbitraries.ts'
import { check } from '../mechanism/check.ts'
import { sortedAfter } from '@/mechanism/dimensions.ts'

/** A machine somewhere in a pass, at a whole needle or between two. */
const anywhere: fc.Arbitrary<{ run: Run; frame: Frame }> = fc
  .tuple(scenarios(), passes, fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean())
  .map(([scenario, pass, share, isWhole]) => {
    const run = startRun(scenario)
    const { start, end } = run.passOf(pass).drive
    const x = start + share * (end - start)
    return { run, frame: frameAt(run, pass, isWhole ? Math.round(x) : x) }
  })

const hold = (judge: (machine: { run: Run; frame: Frame }) => void): void => {
  check(fc.property(anywhere, judge), 250)
}

test('the pins’ figure says of the pin at the sweep how high it is, and what it and its rocker give', () => {
  hold(({ run, frame }) => {
    const said = describePins(run, frame)
    const { column } = sweepShown(frame)
    const lean = frame.pinLeans[column - 1]!
    expect(said).toContain(`its tip stands ${millimetres(frame.pinHeights[column - 1]!)} high`)
    expect(said.includes(`front leg ${millimetres(lean)} to the left`)).toBe(lean > 0)
    if (lean > 0) expect(said).toContain(`gives ${millimetres(frame.rockerOuts[column - 1]!)} to strip`)
  })
})

test('the card’s figure names what the model has as the cause where the card does not go on', () => {
  const causes = {
    belt: 'The belt is not engaged: row',
    card: 'The card is locked: row',
    lever: 'The lever is set to read each row twice: row',
    turn: /turn(ed|s) short of the (left|right) mark: row/,
    pawl: /The (left|right) pawl (is dead|has slipped|will slip): row/,
  }
  hold(({ run, frame }) => {
    const { condition } = run
    if (!condition.card) return
    const said = describeCard(run, frame)
    const turn = turnShown(frame)
    const cause = standstill(condition, turn)
    for (const [part, words] of Object.entries(causes))
      expect(typeof words === 'string' ? said.includes(words) : words.test(said), `${part}: ${said}`).toBe(
        part === cause,
      )
    expect(said.includes('step the card two rows') || said.includes('stepped the card two rows')).toBe(
      stepsAtTurn(condition, turn) === 2,
    )
    expect(said).toMatch(new RegExp(`row ${rowRead(condition, turn)}\\b`))
    // Where this is the first turn of all, the trace blames the same part.
    if (turn === 2 && cause !== null) expect(partOfWrongRow(condition, 2).split('.')[0]).toBe(cause)
  })
})

test('the strip’s figure says how far its strip has shifted, and which of its butts is under the presser', () => {
  hold(({ run, frame }) => {
    const said = describeStrip(run, frame)
    const strip = stripShown(run, frame)
    const shift = frame.stripShifts[strip - 1]!
    expect(allStrips.filter((each) => said.includes(`Strip ${each} `))).toEqual([strip])
    expect(said.includes('catches are at rest')).toBe(shift <= 0)
    if (/has shifted/.test(said)) expect(said).toContain(`has shifted ${millimetres(shift)}`)
    if (/is at rest against its stop|does not move/.test(said)) expect(shift).toBe(0)
    const under = needleUnderPresser(run.condition, frame.x)
    const isUnder = under !== null && stripOfNeedle(under, frame.condition) === strip
    expect(said.includes('None of its butts is under the presser')).toBe(!isUnder)
  })
})

test('the hold’s figure says that a catch holds a butt only where the model has it held', () => {
  hold(({ run, frame }) => {
    const said = describeHold(run, frame)
    const needle = needleHeldUp(frame)
    const keptFor = measureOfNeedle(frame.pass.keptFor, needle)
    if (said.includes('until the first gate.') && !said.includes('but not until'))
      expect(keptFor).toBe(Infinity)
    if (said.includes('but not until the first gate'))
      expect(keptFor).toBeLessThan(run.condition.dimensions.gateLag)
    if (said.includes('no catch has taken it')) expect(keptFor).toBe(0)
    if (said.includes('the catch has let go')) {
      expect(keptFor).toBeGreaterThan(0)
      expect(keptFor).toBeLessThan(run.condition.dimensions.gateLag)
    }
    const shift = frame.stripShifts[stripOfNeedle(needle, frame.condition) - 1]!
    expect(said.includes('has not shifted')).toBe(shift <= 0)
    if (said.includes(': enough, as its catch')) expect(shift).toBeGreaterThanOrEqual(run.condition.reach)
  })
})

test('the timing chart says what the presser finds, and lists every strip that is shifted', () => {
  hold(({ run, frame }) => {
    const said = describeTiming(run, frame)
    const needle = needleUnderPresser(run.condition, frame.x)
    const shifted = allStrips.filter((strip) => frame.stripShifts[strip - 1]! > 0)
    expect(said.includes('No strip is shifted now.')).toBe(shifted.length === 0)
    for (const strip of shifted)
      expect(said).toContain(`strip ${strip} by ${millimetres(frame.stripShifts[strip - 1]!)}`)
    const lets = said.includes('The presser lets go of')
    expect(lets).toBe(needle !== null && !run.condition.carriagePlain)
    if (!lets || needle === null) return
    const keptFor = measureOfNeedle(frame.pass.keptFor, needle)
    expect(said.includes('so the butt is held')).toBe(keptFor === Infinity)
    expect(said.includes('and the catch lets go')).toBe(keptFor > 0 && keptFor < Infinity)
  })
})

test('the gates’ figure says of an ordinary butt what the gates do with it, and which needles are held', () => {
  hold(({ run, frame }) => {
    const { condition } = run
    const { pass, x } = frame
    const said = describeGates(run, frame)
    expect(said.includes('presser and gates stand aside')).toBe(condition.carriagePlain)
    const between = needlesIn(condition.bed).filter((needle) => {
      const since = sinceLetGo(x, needle, pass.way)
      return since > 0 && since <= sortedAfter(condition.dimensions)
    })
    const held = between.filter(
      (needle) => sinceLetGo(x, needle, pass.way) <= measureOfNeedle(pass.keptFor, needle),
    )
    expect(said.includes('none is held')).toBe(held.length === 0)
    expect(said.includes('No butt is held: a dip')).toBe(
      !condition.carriagePlain &&
        condition.presser[pass.way === 1 ? 'right' : 'left'] < condition.dimensions.catchDepth,
    )
    // On a machine without scatter or parts of its own faults, each free butt fares as the sentence says.
    if (condition.carriagePlain || run.scenario.wear > 0 || condition.retainer > 0) return
    const says =
      /A free butt is [^.]*\.[^.]* at the first gate and (is turned|slips under|is met by no)/.exec(said)?.[1]
    const fares = { 'is turned': 'plain', 'slips under': 'selected', 'is met by no': 'unmoved' } as const
    const ordinary = needlesIn(condition.bed).filter(
      (needle) =>
        measureOfNeedle(pass.keptFor, needle) === 0 &&
        markOfNeedle(condition.needleGone, needle) === 0 &&
        measureOfNeedle(condition.needleStiff, needle) === 0,
    )
    if (says !== undefined)
      for (const needle of ordinary)
        expect(ofNeedle(pass.came, needle)).toBe(fares[says as keyof typeof fares])
  })
})

test('the margins’ figure names every margin, and just those as past their limit that are', () => {
  hold(({ run, frame }) => {
    const said = describeMargins(run, frame)
    const failing = margins(run, frame.pass.way).filter(({ mm }) => mm <= 0)
    expect(said.includes('Every stage has something left.')).toBe(failing.length === 0)
    const listed = /Past its limit: (.*?)\. (Left at|A needle|The others)/.exec(said)?.[1]?.split('; ') ?? []
    expect(listed).toHaveLength(failing.length)
  })
})

test('the fabric’s figure says that the fabric is as the card asks only where no knitted row differs', () => {
  hold(({ run, frame }) => {
    const said = describeFabric(run, frame)
    const counts = /differs from what the card asks in (one stitch|(\d+) stitches) of/.exec(said)
    if (!counts) return
    expect(said.includes('The fabric is as the card asks.')).toBe(false)
    const { pass } = frame.pass
    const wrong = Array.from({ length: pass }, (_, n) => n + 1).flatMap((number) => {
      const [knitted, asked] = [knittedRow(run, number), askedRow(run, number)]
      return needlesIn(run.condition.bed).filter(
        (needle) => ofNeedle(knitted, needle) !== ofNeedle(asked, needle),
      )
    })
    expect(wrong.length).toBeGreaterThanOrEqual(Number(counts[2] ?? 1))
  })
})
