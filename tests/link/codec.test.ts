import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  oneValue,
  type Pair,
  readTable,
  type Row,
  type SayStrangers,
  type Table,
  writeTable,
} from '@/link/codec.ts'
import { read } from '@/link/read.ts'
import { write } from '@/link/write.ts'
import { stateTable } from '@/link/state-table.ts'
import { states } from './arbitraries.ts'
import { library } from './library.ts'

interface Walk {
  readonly end: number
  readonly steps: readonly string[]
  readonly start: number
  readonly name: string
}

const number = (key: string, usual: Row<number, Walk>['usual']): Row<number, Walk> =>
  oneValue(key, {
    usual,
    parse(text, { usual: instead, troubles }) {
      if (/^\d+$/.test(text)) return Number(text)
      troubles.leftOut(key, `${key} is ${text}.`)
      return instead
    },
    write: String,
  })

/** A small table: a field that depends on a later one, a list of two keys, and a field that is always written. */
const walkTable: Table<Walk> = {
  end: number('to', (others) => others('start') + 10),
  steps: {
    keys: ['left', 'right'],
    isList: true,
    usual: () => ['left 1'],
    parse: (pairs) => pairs.map(([key, value]) => `${key} ${value}`),
    write: (steps) => steps.map((step): Pair => [step.split(' ')[0]!, step.split(' ')[1]!]),
  },
  start: number('from', () => 5),
  name: oneValue('name', {
    isAlwaysWritten: true,
    usual: (_, { main }) => main,
    parse: (text, { library: { cards } }) => (cards.has(text) ? text : 'nobody'),
    write: (name, { main }) => `${main} ${name}`,
  }),
}

const sayStrangers: SayStrangers = (strangers, troubles) => {
  for (const [key, value] of strangers) troubles.changed(key, `${key} and ${value} are strange.`)
}
const readWalk = (text: string) => readTable(text, walkTable, library, sayStrangers)
const said = (text: string): string[] => readWalk(text).troubles.map(({ sentence }) => sentence)
const usual: Walk = { end: 15, steps: ['left 1'], start: 5, name: 'main' }

describe('a table', () => {
  test('reads an empty text as what is usual, with nothing to say', () => {
    for (const text of ['', '#', '?', '&']) expect(readWalk(text)).toEqual({ whole: usual, troubles: [] })
  })

  test('reads each key of a text, with or without a mark in front', () => {
    const whole: Walk = { end: 3, steps: ['right 2', 'left 7', 'right 2'], start: 1, name: 'two-rows' }
    const text = 'right=2&name=two-rows&left=7&from=1&right=2&to=3'
    for (const mark of ['', '#', '?']) expect(readWalk(mark + text)).toEqual({ whole, troubles: [] })
  })

  test('reads a field before those that depend on it, wherever it is', () => {
    expect(readWalk('from=30').whole).toEqual({ ...usual, start: 30, end: 40 })
    expect(readWalk('to=x&from=y')).toMatchObject({
      whole: usual,
      troubles: [
        { kind: 'left out', sentence: 'from is y.' },
        { kind: 'left out', sentence: 'to is x.' },
      ],
    })
  })

  test('says once which key has two different values, and takes the last; a list has them all', () => {
    expect(readWalk('from=1&to=2&from=3&from=3').whole).toMatchObject({ start: 3, end: 2 })
    expect(said('from=1&to=2&from=3&from=3')).toEqual([
      'The link gives “from” more than once; the last, “3”, counts.',
    ])
    expect(said('from=1&from=1&left=1&left=2')).toEqual([])
    expect(said('from=1&to=1&to=2&from=2')).toEqual([
      'The link gives “to” more than once; the last, “2”, counts. And 1 more of this kind.',
    ])
  })

  test('hands over all strangers before it reads any field', () => {
    expect(said('b=1&to=x&a=&b=2')).toEqual([
      'b and 1 are strange. And 1 more of this kind.',
      'a and  are strange.',
      'to is x.',
    ])
  })

  test('is written in its own order, without what is usual', () => {
    const textOf = (change: Partial<Walk>) => writeTable({ ...usual, ...change }, walkTable, library)
    expect(textOf({})).toBe('name=main+main')
    expect(textOf({ start: 30, end: 40 })).toBe('from=30&name=main+main')
    expect(textOf({ start: 30 })).toBe('to=15&from=30&name=main+main')
    expect(textOf({ steps: ['left 1', 'right 2'], name: 'a&b' })).toBe('left=1&right=2&name=main+a%26b')
    expect(textOf({ steps: [] })).toBe('name=main+main')
  })
})

test('states and their canonical texts are the same set, one to one', () => {
  fc.assert(
    fc.property(states, states, (one, other) => {
      const [text, otherText] = [write(one, library), write(other, library)]
      expect(read(text, library)).toEqual({ state: one, troubles: [] })
      expect(write(read(text, library).state, library)).toBe(text)
      expect(text === otherText).toBe(JSON.stringify(one) === JSON.stringify(other))
    }),
    { numRuns: 400 },
  )
})

const fields = Object.keys(stateTable).filter((field) => field !== 'version') as (keyof typeof stateTable)[]

test.each(fields)('the state’s “%s” has one row, which reads back what it writes', (field) => {
  const { keys } = stateTable[field]
  expect(keys).toHaveLength(1)
  fc.assert(
    fc.property(states, (state) => {
      const pairs = [...new URLSearchParams(write(state, library))].filter(([key]) => key === keys[0])
      const without = { ...state, ...{ [field]: read('', library).state[field as keyof typeof state] } }
      const rest = new URLSearchParams(write(without, library))
      rest.delete(keys[0]!)
      for (const [key, value] of pairs) rest.append(key, value)
      const reading = read(rest.toString(), library)
      if (field !== 'pass' && field !== 'bed' && field !== 'card')
        expect(reading).toEqual({ state, troubles: [] })
      else expect(reading.state[field]).toEqual(state[field])
    }),
    { numRuns: 60 },
  )
})
