import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { answerOf } from '@/features/paper/worksheet-view.ts'
import { levels, taskKinds, type Task, worksheet } from '@/lesson/worksheet.ts'
import { mostCharacters, nextName, readName } from '@/lesson/worksheet/name.ts'
import { rightVerdict } from '@/lesson/marking.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { canonicalPlace, columnOfNeedle, needleIndex } from '@/mechanism/bed.ts'
import { startRun } from '@/mechanism/pass.ts'
import { goldenWorksheets } from '../golden/worksheets.ts'
import { check } from '../mechanism/check.ts'
import { library } from './made.ts'
import { byHand } from './worksheet-by-hand.ts'

const names = fc.string({ unit: 'grapheme', maxLength: 60 })

const given = ({ question }: Task): ReturnType<typeof byHand> => {
  switch (question.kind) {
    case 'needles':
      return question.needles.flatMap(({ index, right }) => (right ? [index] : []))
    case 'number':
      return question.value
    case 'part':
    case 'check':
      return question.options.filter(({ right }) => right).map(({ label }) => label)
    case 'order':
      return []
  }
}

/** As it reads: a space that keeps a number and its unit on one line is a space. */
const asRead = (text: string): string => text.replaceAll('\u00a0', ' ')

describe('a worksheet', () => {
  test('sets one task of every kind, the easy ones first', () => {
    const tasks = worksheet('1', library)
    expect(tasks.map(({ kind }) => kind)).toEqual(taskKinds)
    expect(taskKinds.length).toBeGreaterThanOrEqual(6)
    const order = tasks.map(({ level }) => levels.indexOf(level))
    expect(order).toEqual([...order].sort((one, other) => one - other))
    expect(new Set(order).size).toBe(levels.length)
  })

  test('comes out the same whenever it is asked for, and otherwise for another name', () => {
    expect(worksheet('harbour', library)).toEqual(worksheet('harbour', library))
    const sheets = Array.from({ length: 60 }, (_, n) => JSON.stringify(worksheet(String(n), library)))
    expect(new Set(sheets).size).toBe(60)
  })

  test.each(goldenWorksheets)('of the name “$name” stays as it was given out', ({ name, tasks }) => {
    expect(
      worksheet(name, library).map(({ question }) =>
        [question.prompt, answerOf(question).answer].map(asRead),
      ),
    ).toEqual(tasks)
  })

  test('for a bed with column 1 elsewhere names its needle, shows machines with it there, and is the model’s', () => {
    for (const name of ['R2', 'R13', 'R24', 'L12']) {
      const place = canonicalPlace({ columnOne: needleIndex(name)! })
      for (const sheet of ['1', '2', 'tuesday', '7'])
        for (const { question } of worksheet(sheet, library, place)) {
          for (const [, one] of question.prompt.matchAll(/([LR]\d+) is column 1\b/g))
            expect(columnOfNeedle(needleIndex(one!)!, place), question.prompt).toBe(1)
          const { state } = read(rightVerdict(question).show, library)
          expect(state.columnOne).toBe(place.columnOne)
          if (question.kind !== 'needles' || question.goal !== 'selected') continue
          const { came } = startRun(scenarioOf(state, library)).passOf(state.pass)
          expect(question.needles.map(({ right }) => right)).toEqual(
            question.needles.map(({ index }) => came[index] === 'selected'),
          )
        }
    }
  })

  test('has the answers that counting by hand comes to', () => {
    check(
      fc.property(fc.string({ maxLength: 12 }), (name) => {
        for (const task of worksheet(name, library))
          expect(given(task), task.question.prompt).toEqual(byHand(task))
      }),
      60,
    )
  })
})

describe('a worksheet’s name', () => {
  test('may be any text that is not empty or too long, and is read the same again', () => {
    check(
      fc.property(names, (text) => {
        const reading = readName(text)
        if (reading.name === null) expect(reading.reason).toMatch(/^A worksheet.*\.$/)
        else expect(readName(` ${reading.name} `)).toEqual(reading)
      }),
      200,
    )
  })

  test.each([
    ['  Tuesday  ', 'tuesday'],
    ['class\t7\n', 'class 7'],
    ['<b>&', '<b>&'],
    ['ÉCOLE', 'école'],
  ])('of %j is %j', (text, name) => {
    expect(readName(text)).toEqual({ name })
  })

  test.each(['', '   ', '\u0000\u200b', 'x'.repeat(mostCharacters + 1)])(
    'of %j is none, and why is said',
    (text) => {
      expect(readName(text)).toMatchObject({ name: null })
    },
  )

  test.each([
    ['1', '2'],
    ['9', '10'],
    ['tuesday', 'tuesday 2'],
    ['tuesday 2', 'tuesday 3'],
    ['12345678', '12345679'],
    ['x'.repeat(mostCharacters), '1'],
  ])('after %j comes %j', (name, next) => {
    expect(nextName(name)).toBe(next)
  })
})
