import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BadFile, type JsonDocument, parseJson } from '@/commands/json-document.ts'

/** Why a text is refused; null where it is not. */
const refusal = (text: string): string | null => {
  try {
    parseJson(text)
    return null
  } catch (error) {
    if (error instanceof BadFile) return error.message
    throw error
  }
}

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('the line of a text that is no JSON', () => {
  const text = JSON.stringify({ a: [1, 2, { b: 'c', d: null }], e: 'f' }, null, 1)
  const lines = text.split('\n')

  test.each(lines.map((_, n) => n + 1))('is found where line %d is spoilt', (line) => {
    const spoilt = lines.map((one, n) => (n === line - 1 ? `${one}%` : one))
    for (const end of ['\n', '\r\n', '\r'])
      expect(refusal(spoilt.join(end))).toBe(`Line ${line} is not JSON as it should be.`)
  })

  test('is the last where only the end is missing', () => {
    const bad = `Line ${lines.length - 2} is not JSON as it should be.`
    expect(refusal(lines.slice(0, -2).join('\n'))).toBe(bad)
  })

  test.each([
    ['{\n"a": 1,\n}', 3],
    ['[1,\n2\n3]', 3],
    ['{"a": 1 // one\n}', 1],
    ['{\n/* one */ "a": 1}', 2],
    ["{\n'a': 1}", 2],
    ['[1]\n[2]', 2],
    ['[\n01]', 2],
    ['[\n\n1.]', 3],
    ['["a\nb"]', 1],
    ['[1,\n"\\x"]', 2],
    ['"\t"', 1],
    ['[NaN]', 1],
    ['{"a" 1}', 1],
    ['%', 1],
  ])('%j is %d', (bad, line) => {
    expect(isJson(bad)).toBe(false)
    expect(refusal(bad)).toBe(`Line ${line} is not JSON as it should be.`)
  })
})

describe('a JSON document', () => {
  const text = JSON.stringify({ a: [1, { 'b"\\': [] }, 'x,{'], c: { d: null } }, null, 1)
  const lines = text.split('\n')
  const lineWith = (part: string) => lines.findIndex((line) => line.includes(part)) + 1

  test('knows the lines on which its values begin, and those around a value that is missing', () => {
    const { value, lineOf } = parseJson(text)
    expect(value).toEqual(JSON.parse(text))
    expect(lineOf([])).toBe(1)
    expect(lineOf(['a', 0])).toBe(3)
    expect(lineOf(['a', 1, 'b"\\'])).toBe(lineWith('b'))
    expect(lineOf(['a', 2])).toBe(lineWith('x,{'))
    expect(lineOf(['a', 7])).toBe(lineWith('"a"'))
    expect(lineOf(['c', 'd'])).toBe(lineWith('"d"'))
    expect(lineOf(['c', 'e'])).toBe(lineWith('"c"'))
    expect(lineOf(['c', 'e', 'f', 0])).toBe(lineWith('"c"'))
    const late = (end: string): JsonDocument => parseJson(`${end}[${end}1]`)
    for (const end of ['\n', '\r\n', '\r']) expect([[], [0]].map(late(end).lineOf)).toEqual([2, 3])
  })

  test('has no name twice in one object; in two it may', () => {
    expect(refusal('[{"a":1},\n{"a":2}]')).toBeNull()
    expect(refusal('{"a":{"a":1}}')).toBeNull()
    expect(refusal('[{"a":1,\n"a":2}]')).toBe('Line 2: “a” is there twice.')
    expect(refusal('{"a":1,\n"\\u0061":2}')).toBe('Line 2: “a” is there twice.')
    expect(refusal('{"b": [{"a":1,\n"a":2}],\n"b":1}')).toBe('Line 2: “a” is there twice.')
  })

  test('keeps a name that other objects have from the start', () => {
    const { value } = parseJson('{"__proto__": 1}')
    expect(Object.keys(value as object)).toEqual(['__proto__'])
  })

  test('may be nested a hundred deep, and no deeper', () => {
    const nested = (depth: number) => `${'[\n'.repeat(depth)}${']'.repeat(depth)}`
    expect(refusal(nested(100))).toBeNull()
    expect(refusal(`[${'[],{},'.repeat(200)}1]`)).toBeNull()
    for (const depth of [101, 200_000])
      expect(refusal(nested(depth))).toBe('Line 101: lists and objects are more than 100 deep.')
    expect(refusal('{"a":'.repeat(101))).toBe('Line 1: lists and objects are more than 100 deep.')
  })

  test('is read where JSON.parse reads it, and refused where that refuses it', () => {
    const good = fc.json({ maxDepth: 3 })
    const spoilt = fc
      .tuple(
        good,
        fc.nat(60),
        fc.nat(2),
        fc.constantFrom('', ',', '"', '}', ']', '0', '.', '-', 'e', '\\', '\n', ' '),
      )
      .map(([text, at, gone, put]) => text.slice(0, at) + put + text.slice(at + gone))
    fc.assert(
      fc.property(fc.oneof(good, spoilt), (text) => {
        const why = refusal(text)
        fc.pre(!(why ?? '').endsWith('is there twice.'))
        expect(why === null).toBe(isJson(text))
        if (why === null) expect(parseJson(text).value).toEqual(JSON.parse(text))
      }),
      { numRuns: 3000 },
    )
  })
})
