import { describe, expect, test } from 'vitest'
import { readCase } from '@/link/case.ts'
import { readNeedle, readNeedleList } from '@/link/needle-list.ts'
import { read } from '@/link/read.ts'
import { readSession } from '@/link/session-link.ts'
import { indexKindsOf } from '@/mechanism/fault.ts'
import { readFaultOfKind } from '@/mechanism/read-fault.ts'
import { faultKinds, faultKindNames } from '@/mechanism/fault-kinds.ts'
import { readRowField } from '@/features/find/passes.ts'
import { library } from './library.ts'

/** What a hand, another alphabet or another program writes where a number or a name belongs. */
const odd = {
  empty: '',
  blanks: '  ',
  'a decimal': '3.5',
  negative: '-1',
  nought: '0',
  huge: '9'.repeat(30),
  'very long': 'long'.repeat(100),
  letters: 'three',
  'foreign digits': '٣',
  'wide digits': '３',
  'an exponent': '1e3',
  markup: '<b>3</b>',
  'no number': 'NaN',
}

/** What is wrong with a sentence that somebody reads: it names nothing as nothing, and no value of a program. */
const wrongIn = (sentence: string): string[] =>
  [/“\s*”/, /\s[;,.]/, /\.\./, /undefined|null|\[object/, /(?<![“=])NaN/, /[^.]$/, /.{301}/].flatMap(
    (wrong) => (wrong.test(sentence) ? [`${wrong.source} in: ${sentence}`] : []),
  )

const sentences = (troubles: readonly { sentence: string; problem: string }[]): string[] =>
  troubles.flatMap(({ sentence, problem }) => [sentence, problem])

const keys = ['v', 'card', 'pass', 'at', 'break', 'speed', 'wear', 'seed', 'needles', 'first', 'colour', '']
const sessionKeys = ['v', 'card', 'pass', 'practice', 'marks', 'check', 'found', 'colour', '']

describe.each(Object.entries(odd))('%s', (_, text) => {
  test.each(keys)('after “%s=” in a link is answered in sentences', (key) => {
    const link = new URLSearchParams([[key, text]]).toString()
    const said = sentences([...read(link, library).troubles, ...readCase(`${link}&end=1`, library).troubles])
    expect(said.flatMap(wrongIn)).toEqual([])
    if (key !== '' || text !== '')
      expect(said.length > 0 || ['pass', 'at', 'speed', 'wear', 'seed'].includes(key)).toBe(true)
  })

  test.each(sessionKeys)('after “%s=” in a session’s link is answered in sentences', (key) => {
    for (const pass of [text, `${text}.right.500`, `1.right.${text}`, `1.right.500.w${text}`]) {
      const link = new URLSearchParams([[key, key === 'pass' ? pass : text]]).toString()
      expect(sentences(readSession(link, library).troubles).flatMap(wrongIn)).toEqual([])
    }
  })

  test.each(faultKindNames)('in the fields of %s is answered in a sentence', (kind) => {
    const places = indexKindsOf(kind)
    const { amount } = faultKinds[kind]
    const right: readonly string[] = places.map((place) => (place === 'needle' ? 'R3' : '3'))
    const readings = [
      ...places.map((_place, n) => readFaultOfKind(kind, right.with(n, text.trim()), amount ? '1' : null)),
      ...(amount ? [readFaultOfKind(kind, right, text.trim())] : []),
    ]
    for (const reading of readings) {
      const words = reading.kind === 'refused' ? reading.reason : (reading.remark ?? 'as it is')
      expect(words).not.toMatch(/no such fault/)
      expect(wrongIn(`That won’t do: ${words}.`)).toEqual([])
    }
  })

  test('in a field for a needle, for needles or for a row is answered in a sentence', () => {
    const said = [readNeedle(text), ...readNeedleList(text).troubles, readRowField(text, 32)]
    expect(said.flatMap((words) => (typeof words === 'string' ? wrongIn(words) : []))).toEqual([])
    expect(typeof said[0]).toBe('string')
  })
})

test('an empty field and a decimal are answered in words that say what belongs there', () => {
  const column = (text: string) => readFaultOfKind('pin.low', [text], null)
  expect(column('')).toEqual({ kind: 'refused', reason: 'no column is named; they run from 1 to 24' })
  expect(column('3.5')).toEqual({ kind: 'refused', reason: 'there is no column 3.5; they run from 1 to 24' })
  expect(readFaultOfKind('card.torn', ['3', '5.5'], null)).toEqual({
    kind: 'refused',
    reason: 'there is no column 5.5; they run from 1 to 24',
  })
  expect(readFaultOfKind('sweep.worn', [], '')).toEqual({
    kind: 'refused',
    reason: 'the number is missing; it runs from 0 to 3 mm',
  })
  expect(readNeedle(' ')).toBe('Write a needle: L100 to R100.')
  expect(readNeedle('X9')).toBe('“X9” is no needle: they are called L100 to R100.')
  expect(readRowField('', 32)).toBe('Write the number of a row: this card’s are 1 to 32.')
  expect(readRowField('33', 32)).toBe('This card has no row “33”: its rows are 1 to 32.')
  expect([readNeedle('r3'), readRowField('32', 32)]).toEqual([102, 32])
})
