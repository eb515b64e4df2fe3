import { describe, expect, test } from 'vitest'
import { bestSettings } from '@/mechanism/best-setting.ts'
import { measuredMargins, measuredRun } from '@/mechanism/measured-machine.ts'
import { type Measured, measurements, measurementNames } from '@/mechanism/measurement.ts'
import { isAsked, marginsSentence, marginState, notMeasured, settingSentence } from '@/words/measure.ts'

const exactOf = (measured: Measured): Measured =>
  Object.fromEntries(
    measurementNames.flatMap((name) =>
      measured[name] === undefined ? [] : [[name, measurements[name].exact]],
    ),
  )

const said = (measured: Measured): string => {
  const machine = { measured, exact: exactOf(measured), speed: 500 }
  return marginsSentence(measuredMargins(machine, 1), measuredMargins(machine, -1))
}

describe('what is said of the margins', () => {
  test('is that nothing is measured, before anything is', () => {
    expect(said({})).toMatch(/^Nothing is measured yet/)
  })

  test('names the least that is left, the way and what it may be out by', () => {
    expect(said({ presserLeft: 1.1 })).toBe(
      'With these values every stage that you measured works. The least left is 0.2\u00a0mm ± 0.05\u00a0mm: hold: dip past the catch, moving left.',
    )
  })

  test('names what fails, and only where it fails for certain', () => {
    expect(said({ presserLeft: 0.7 })).toBe(
      'With these values this fails: hold: dip past the catch, moving left.',
    )
    expect(said({ presserLeft: 0.88 })).toMatch(/^Nothing fails for certain, but/)
    expect(said({ catchDepth: 1.7 })).toContain('hold: dip past the catch')
  })

  test('calls a margin doubtful as long as it may be out by more than it is', () => {
    const [margin] = measuredMargins({ measured: {}, exact: {}, speed: 500 }, 1)
    const state = (mm: number, likely: number) => marginState({ ...margin!, mm, likely })
    expect([state(0.2, 0.1), state(0.05, 0.1), state(-0.05, 0.1), state(-0.1, 0.1)]).toEqual([
      'holds',
      'doubtful',
      'doubtful',
      'fails',
    ])
  })
})

describe('what is said of what can be set', () => {
  const settings = (measured: Measured) => bestSettings(measuredRun({ measured, speed: 500 }))
  const of = (measured: Measured, name: string) =>
    settings(measured).find((setting) => setting.name === name)!

  test('is by how much and what that leaves, in numbers of the model', () => {
    const setting = of({ presserLeft: 1.1 }, 'presserLeft')
    const { name, said: words } = settingSentence(setting)
    expect(name).toBe('Presser, moving left')
    expect(words).toContain('at 1.1\u00a0mm on its worse side only 0.2\u00a0mm are left')
    expect(words).toContain(`Set it ${(setting.best - 1.1).toFixed(2)}\u00a0mm deeper`)
  })

  test('is to leave it where nothing is gained, and to look for wear where nothing helps', () => {
    expect(settingSentence(of({ gate1: 0.45 }, 'gate1')).said).toMatch(/^leave it where it is/)
    expect(settingSentence(of({ pinHigh: 1.4, pinLow: 1.3 }, 'sweepEdge')).said).toContain(
      'look for what is worn',
    )
  })

  test('is said of the second gate by what is left under a held butt', () => {
    expect(settingSentence(of({}, 'gate2')).said).toMatch(/^leave it where it is: 0.7\u00a0mm are left under/)
    const high = of({ gate2: 0.8 }, 'gate2')
    expect(settingSentence(high).said).toContain('it is 0.1\u00a0mm above a held butt, which it misses')
    expect(settingSentence(high).said).toContain(`Set it ${(high.best - 0.8).toFixed(2)}\u00a0mm lower`)
  })

  test('is said of the belt in whole teeth, and of the reader’s seat in the rest of a needle', () => {
    const measured: Measured = { timing: 2.4 }
    expect(settingSentence(of(measured, 'timing')).said).toContain('Set it 2\u00a0teeth back to the left')
    expect(settingSentence(of(measured, 'seat')).said).toContain('Set it 0.4\u00a0needles to the left')
    expect(settingSentence(of({ timing: 0.2 }, 'timing')).said).toMatch(/^leave it where it is/)
    expect(isAsked(of(measured, 'timing'), measured)).toBe(true)
  })

  test('is said of a bar by how slow butts may be at this speed', () => {
    const bar = of({ presserLeft: 1.1 }, 'bar')
    expect(settingSentence(bar).said).toContain(`up to ${(bar.now + bar.roomNow).toFixed(1)}\u00a0ms`)
    expect(settingSentence({ ...bar, roomNow: -1, roomBest: -1 }).said).toContain('even a new one')
  })

  test('is asked only of what was measured, and says what was not', () => {
    const measured: Measured = { presserLeft: 1.1 }
    expect(
      settings(measured)
        .filter((setting) => isAsked(setting, measured))
        .map(({ name }) => name),
    ).toEqual(['presserLeft', 'bar'])
    expect(notMeasured(of(measured, 'presserLeft'), measured)).toEqual(['catchDepth', 'gate1'])
  })
})
