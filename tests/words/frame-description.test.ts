import { type PartId, partOf } from '@/mechanism/part.ts'
import { describe, expect, test } from 'vitest'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { describePart } from '@/words/part-description.ts'
import { turnWords } from '@/words/figures/card.ts'
import { beltWords } from '@/words/figures/timing.ts'
import { describeFrame } from '@/words/frame-description.ts'

/** A card of one row with holes in columns 3, 11 and 19 only: strip 3 and no other. */
const library = { main: 'thirds', cards: new Map([['thirds', [0b001000000010000000100000]]]) }

const at = (text: string) => {
  const { state, troubles } = read(text, library)
  expect(troubles).toEqual([])
  const run = startRun(scenarioOf(state, library))
  return { run, frame: frameAt(run, state.pass, state.at) }
}
const says = (text: string): string => describeFrame(at(text).frame)

describe('the sentence under the figure', () => {
  test.each([
    ['pass=2&at=R102', 'The carriage comes up to the first needle, R100, moving left.'],
    ['pass=1&at=L102', 'The carriage comes up to the first needle, L100, moving right.'],
  ])('a pass that has just begun has sorted no needle yet: %s', (state, words) => {
    expect(says(state)).toBe(words)
  })
  test('names the hole, the pin, the strip and the needle of a sound selection', () => {
    expect(says('at=R3')).toBe(
      'Column 3 is under the sweep. It has a hole, so its pin stands high and strip 3 shifts. R3 is caught and stays down: selected.',
    )
  })
  test('says that a pin without a hole stays low and its needle plain', () => {
    expect(says('at=R4')).toBe(
      'Column 4 is under the sweep. It has no hole, so its pin stays low and the sweep passes over it. R4 is let go and springs back up: plain.',
    )
  })
  test('names a seized strip, and lists what was missed so far', () => {
    expect(says('at=R11&break=strip.3.seized&needles=L1-R24')).toBe(
      'Column 11 is under the sweep. It has a hole, so its pin stands high and its rocker pushes, but strip 3 does not move. R11 is missed: strip 3 does not shift far enough. Missed so far: R3, because of strip 3.',
    )
  })
  test('counts long lists and names their step', () => {
    expect(says('at=R40&break=strip.3.seized')).toContain(
      'Missed so far: 17 needles from L94 to R35, every eighth, all because of strip 3.',
    )
  })
  test('names a stuck pin, a dead rocker and a card without a hole too many', () => {
    expect(says('at=R3&break=pin.3.low')).toContain(
      'It has a hole, but its pin stays low. R3 is missed: pin 3 stays low',
    )
    expect(says('at=R3&break=rocker.3.dead')).toContain(
      'but its rocker gives no push. R3 is missed: rocker 3 does not',
    )
    expect(says('at=R4&break=pin.4.high')).toContain(
      'It has no hole, but its pin stands high. R4 is selected without',
    )
  })
  test('says which needles are selected without being asked, and which do not move', () => {
    expect(
      says('at=R20&needles=R1-R24&break=catch.R11.broken&break=needle.R2.gone&break=pin.5.high'),
    ).toContain(
      'Missed so far: R11, because of the catch of R11. Selected without being asked so far: R5, because of pin 5. Not moved so far: R2, because of needle R2.',
    )
  })
  test('says that sweep and presser are at different columns when the belt is out of step', () => {
    expect(says('at=R3&break=belt.timing=3')).toContain(
      'The sweep is at column 6, while the presser is at R3, of column 3.',
    )
  })
  test('speaks of the turn marks at both ends of a pass, and of a machine without a card', () => {
    expect(says('')).toContain(
      'stands beyond the left turn mark, ready for pass 1 to the right. Card row 1 is read',
    )
    expect(says('pass=2')).toContain('stands beyond the right turn mark, ready for pass 2 to the left.')
    expect(says('card=none')).toContain('There is no card: every pin stands high.')
    expect(says('at=R105')).toContain('Every needle came out as the card asked.')
  })
})

describe('what a part is doing', () => {
  const doing = (text: string, part: PartId): string => {
    const { run, frame } = at(text)
    return describePart(run, frame, partOf(part)).doing
  }
  test('gives pins, rockers and strips their numbers', () => {
    expect(doing('at=R3', 'pin.3')).toBe(
      'There is a hole over it; its tip stands 3.0\u00a0mm high. The sweep pushes it 2.0\u00a0mm to the left.',
    )
    expect(doing('at=R3', 'pin.4')).toContain('The card stops it; its tip stands 1.2\u00a0mm high.')
    expect(doing('at=R3', 'rocker.3')).toBe('Gives 1.8\u00a0mm to strip 3.')
    expect(doing('at=R3', 'strip.3')).toContain(
      'Shifted 1.8\u00a0mm: far enough for its catches to take a butt.',
    )
    expect(doing('at=R7', 'strip.3')).toContain('At rest.')
  })
  test('says first what is wrong with a broken part', () => {
    expect(doing('at=R3&break=strip.3.seized', 'strip.3')).toMatch(/^Strip 3 seized\. At rest\./)
    expect(doing('at=R20&break=needle.R3.bent', 'needle.R3')).toMatch(
      /^Needle R3 bent\. Missed: the butt of R3 is out of/,
    )
  })
  test('distinguishes a needle that waits from one that is sorted', () => {
    expect(doing('at=R3', 'needle.R9')).toContain('The presser has not let go of it yet.')
    expect(doing('at=R20', 'needle.R3')).toContain('Caught and selected, as the card asked.')
    expect(doing('at=R20&needles=R1-R24', 'needle.R30')).toContain('Out of use.')
  })
})

describe('how the belt is out of step', () => {
  const belt = (text: string): string | null => beltWords(at(text).frame)
  test('is early one way and late the other where the timing is wrong, and late both ways where it is slack', () => {
    expect([belt('at=R3&break=belt.timing=0.9'), belt('pass=2&at=R3&break=belt.timing=0.9')]).toEqual([
      '0.9 needles early',
      '0.9 needles late',
    ])
    expect([belt('at=R3&break=belt.slack=1'), belt('pass=2&at=R3&break=belt.slack=1')]).toEqual([
      '0.5 needles late',
      '0.5 needles late',
    ])
    expect(belt('at=R3')).toBeNull()
  })
})

describe('settings that are off', () => {
  test('say that the carriage presses no butt, and that the sweep stands still', () => {
    expect(says('at=R3&break=carriage.plain')).toContain('R3 is missed: the carriage is not set to pattern')
    expect(says('at=R4&break=carriage.plain')).toContain('R4 is not pressed down: plain.')
    expect(says('at=R3&break=belt.off')).toContain(
      'The belt is not engaged, so the sweep stands still and pushes no pin.',
    )
  })
  test('and a catch that lets go too early is named as the belt’s', () => {
    expect(says('at=R3&break=belt.timing=1.2')).toContain(
      'R3 is missed: the sweep is early, and its strip lets the butt go before the first gate',
    )
  })
})

describe('a card that did not step', () => {
  test.each([
    ['break=belt.off', 'The belt is not engaged'],
    ['break=turn.twice', 'The lever is set to read each row twice'],
    ['break=pawl.skips.2', 'The right pawl has slipped'],
    ['break=pawl.right', 'The right pawl is dead'],
    ['break=card.locked', 'The card is locked'],
  ])('%s is described as it is', (fault, words) => {
    expect(turnWords(at(`pass=2&at=R112&${fault}`).frame)).toBe(`${words}: row 1 is read again.`)
  })
})
