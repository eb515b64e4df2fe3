import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readCase, titleCharacters } from '@/link/case.ts'
import { read } from '@/link/read.ts'
import { readView } from '@/link/scene-view.ts'
import { rowsOf, type State } from '@/link/state.ts'
import { faultId } from '@/mechanism/fault.ts'
import { contradict } from '@/mechanism/fault-list.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { disordered, ownDimensions, ownNames } from '@/mechanism/own.ts'
import { write } from '@/link/write.ts'
import { sceneViewNames } from '@/words/figures/scene.ts'
import { library } from './library.ts'
import { mutated } from './mutated.ts'

const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)

const isWithin = (value: number, least: number, most: number): boolean => value >= least && value <= most

/** What is wrong with a state; empty for a valid one. Written again from the table of keys. */
const faultsOfState = (state: State): string[] => {
  const { first, last } = state.bed
  const { needles } = { ...dimensions, ...state.own }
  const whole = [100 - needles / 2, 99 + needles / 2] as const
  const rows = rowsOf(state.card, library)
  const isKnown = state.card.kind !== 'site' || library.cards.has(state.card.id)
  const holes = state.faults.filter(({ kind }) => kind === 'card.torn' || kind === 'card.blocked')
  const found: [string, boolean][] = [
    ['card', isKnown],
    ['rows', rows === null || isWithin(rows.length, 1, 200)],
    ['row', (rows ?? []).every((row) => Number.isInteger(row) && isWithin(row, 0, 2 ** 24 - 1))],
    ['pass', Number.isInteger(state.pass) && isWithin(state.pass, 1, 9999)],
    ['length', needles % 2 === 0 && isWithin(needles, 60, 250)],
    [
      'bed',
      Number.isInteger(first) &&
        Number.isInteger(last) &&
        whole[0] <= first &&
        first <= last &&
        last <= whole[1],
    ],
    [
      'own',
      ownNames.every((name) =>
        isWithin(state.own[name] ?? dimensions[name], ownDimensions[name].least, ownDimensions[name].most),
      ) && disordered(state.own).length === 0,
    ],
    [
      'needle',
      state.faults.every(
        (fault) =>
          !['catch.broken', 'needle.bent', 'needle.gone', 'needle.stiff'].includes(fault.kind) ||
          isWithin(fault.at[0] ?? NaN, ...whole),
      ),
    ],
    ['first', Number.isInteger(state.columnOne) && isWithin(state.columnOne, 100, 123)],
    ['at', isWithin(state.at, first - 12, last + 12)],
    ['speed', isWithin(state.speed, 50, 2000)],
    ['wear', isWithin(state.wear, 0, 1)],
    ['seed', Number.isInteger(state.seed) && isWithin(state.seed, 0, 2 ** 32 - 1)],
    ['note', Array.from(state.note).length <= 280 && !/\p{Cs}/u.test(state.note)],
    ['faults', state.faults.length <= 100],
    ['hole', rows === null || holes.every(({ at: [row = 0] }) => row <= rows.length)],
    ['id', state.faults.every((fault) => isSame(faultOf(faultId(fault)), fault))],
    [
      'pair',
      state.faults.every((one, n) => state.faults.slice(n + 1).every((other) => !contradict(one, other))),
    ],
  ]
  return found.filter(([, isGood]) => !isGood).map(([name]) => name)
}

/** As many texts as no person will ever try, and others in each run; HOSTILE says how many. */
const many = { numRuns: Number(process.env['HOSTILE'] ?? 10_000) }

/** How long they may take, in ms. */
const patience = many.numRuns * 2.4

/** What is wrong with what is said of a text; empty where each is a sentence of one short line. */
const faultsOfWords = (sentences: readonly string[]): string[] =>
  sentences.filter(
    (words) =>
      words.length > 330 || !/^\S.*[.]$/.test(words) || /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(words),
  )

/** A text that asks for nothing: nothing need be said of it. */
const isEmpty = (text: string): boolean => /^[#?&]*$/.test(text)

describe('any text at all', () => {
  test(
    'is read without an error, gives a valid state, and is answered in sentences of one short line',
    () => {
      fc.assert(
        fc.property(mutated, (text) => {
          const { state, troubles } = read(text, library)
          const sentences = troubles.map(({ sentence }) => sentence)
          const faults = [...faultsOfState(state), ...faultsOfWords(sentences)]
          // What was understood, written and read again, is all there is, or it is said what is not.
          const isWhole =
            sentences.length > 0 ||
            isEmpty(text) ||
            isSame(read(write(state, library), library), { state, troubles })
          if (faults.length > 0 || !isWhole) throw new Error([...faults, isWhole].join(', '))
        }),
        many,
      )
    },
    patience,
  )

  test(
    'is read as a case and as a place to see the machine from, and answered in such sentences too',
    () => {
      fc.assert(
        fc.property(mutated, (text) => {
          const { state, title, done, left, troubles } = readCase(text, library)
          const view = readView(new URLSearchParams(text).get('view') ?? text, sceneViewNames)
          const words =
            view.kind === 'refused'
              ? [view.reason]
              : view.kind === 'turned' && view.remark !== null
                ? [view.remark]
                : []
          const sentences = troubles.map(({ sentence }) => sentence)
          const faults = [...faultsOfState(state), ...faultsOfWords([...sentences, ...words])]
          const isShort = Array.from(title).length <= titleCharacters && Array.from(done).length <= 280
          if (
            faults.length > 0 ||
            !isShort ||
            left.some((one) => !state.faults.some((each) => isSame(each, one)))
          )
            throw new Error([...faults, title, done].join(', '))
        }),
        { numRuns: many.numRuns / 10 },
      )
    },
    patience,
  )

  test('gives the same reading each time', () => {
    fc.assert(
      fc.property(mutated, (text) => {
        expect(read(text, library)).toEqual(read(text, library))
      }),
    )
  })
})

describe('a very long text', () => {
  const long = 'x'.repeat(100_000)

  test.each([
    'card=',
    'card=x.',
    'pass=',
    'at=R',
    'break=',
    'break=strip.',
    'break=sweep.worn=',
    'needles=L',
    'first=R',
    'note=',
    '',
  ])('after “%s” is answered briefly', (start) => {
    const { state, troubles } = read(`${start}${long}`, library)
    expect(faultsOfState(state)).toEqual([])
    expect(troubles).toHaveLength(1)
    expect(troubles[0]?.sentence.length).toBeLessThanOrEqual(300)
  })

  test('of ten thousand faults is read in under a second', () => {
    const ids = Array.from({ length: 10_000 }, (_, n) => `break=turn.short.${(n % 9998) + 2}`)
    const start = performance.now()
    expect(read(ids.join('&'), library).state.faults).toHaveLength(100)
    expect(performance.now() - start).toBeLessThan(1000)
  })
})
