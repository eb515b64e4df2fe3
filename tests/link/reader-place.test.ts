import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { movedPosition, movedTo, readForPlace, shiftTo } from '@/link/reader-place.ts'
import { scenarioOf, type State } from '@/link/state.ts'
import { columnOfNeedle, needleIndex, needleName, usualPlace } from '@/mechanism/bed.ts'
import { faultId } from '@/mechanism/fault.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { choicesOf } from '@/site/prediction.ts'
import { passagesOf } from '@/site/chapter-outline.ts'

const library = cardLibrary(cardsFolder)
const at = (name: string) => ({ columnOne: needleIndex(name)! })
const places = Array.from({ length: 24 }, (_, n) => at(`R${n + 1}`))
const frameOf = (state: State) => frameAt(startRun(scenarioOf(state, library)), state.pass, state.at)

describe('a state of a text on a bed with column 1 elsewhere', () => {
  test.each([
    ['R1', 0],
    ['R2', 1],
    ['R13', 12],
    ['R14', -11],
    ['R24', -1],
    ['L1', -1],
    ['L24', 0],
    ['R25', 0],
  ])('with column 1 at %s is moved by %i needles', (name, shift) => {
    expect(shiftTo(at(name))).toBe(shift)
  })

  test('keeps its columns, strips and what comes of them', () => {
    for (const text of ['at=R11', 'pass=2&at=L7&break=catch.L7.broken', 'at=R97&break=needle.R97.bent'])
      for (const place of places) {
        const [own, moved] = [readForPlace(text, library, usualPlace), readForPlace(text, library, place)]
        expect(moved.columnOne).toBe(place.columnOne)
        const [before, after] = [frameOf(own), frameOf(moved)]
        expect(after.column).toBe(before.column)
        for (const [n, mm] of before.stripShifts.entries()) expect(after.stripShifts[n]).toBeCloseTo(mm, 6)
        for (const fault of moved.faults)
          expect(columnOfNeedle(toNeedle(fault.at[0]!), moved)).toBe(
            columnOfNeedle(toNeedle(own.faults[0]!.at[0]!), own),
          )
      }
  })

  test('keeps needles on the bed, and a carriage at the pass’s ends where it is', () => {
    const { faults } = readForPlace('break=catch.R100.broken&break=needle.L100.gone', library, at('R6'))
    expect(faults.map(faultId).sort()).toEqual(['catch.R81.broken', 'needle.L95.gone'])
    const state = readForPlace('at=R112', library, at('R6'))
    expect(state.at).toBe(211)
    expect(movedPosition(-12, 1, state, at('R6'))).toBe(-12)
    expect(movedPosition(199, 1, state, at('R6'))).toBe(204)
  })

  test('is as it was where column 1 is at R1, or where the text names its own needle', () => {
    const state = readForPlace('at=R11', library, usualPlace)
    expect(movedTo(state, at('L24'))).toBe(state)
    expect(readForPlace('at=R15&first=R13', library, at('R5'))).toMatchObject({
      at: 114,
      columnOne: needleIndex('R13'),
    })
    expect(readForPlace('at=R15&first=R1', library, at('R5')).columnOne).toBe(usualPlace.columnOne)
  })
})

const chapters = [
  '03-feeler-pins',
  '04-the-sweep-and-the-belt',
  '05-rockers-and-strips',
  '06-the-hold',
  '07-the-cam-gate',
  '09-when-a-part-fails',
  '10-on-the-bench',
]

describe.each(chapters)('the predictions of chapter %s', (chapter) => {
  const asked = passagesOf(readFileSync(`content/chapters/${chapter}.mdx`, 'utf8'), 'Predict')

  test('have the same right answer wherever column 1 is', () => {
    expect(asked.length).toBeGreaterThan(0)
    for (const { attributes } of asked) {
      const of = attributes.get('of') as 'needle' | 'pattern' | 'count' | 'row' | 'choice'
      if (of === 'choice') continue
      const text = attributes.get('state')!
      const own = readForPlace(text, library, usualPlace)
      const right = choicesOf({ of, needle: attributes.get('needle') ?? '' }, frameOf(own))
      for (const place of places) {
        const needle = needleIndex(attributes.get('needle') ?? '')
        const moved = needle === null ? '' : needleName(toNeedle(needle + shiftTo(place)))
        const answer = choicesOf({ of, needle: moved }, frameOf(readForPlace(text, library, place)))
        expect(answer.choices[answer.right], `${text} at ${needleName(place.columnOne)}`).toBe(
          right.choices[right.right],
        )
      }
    }
  })
})
