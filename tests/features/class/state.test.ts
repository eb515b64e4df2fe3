import { describe, expect, test } from 'vitest'
import { parseClassState } from '@/features/class/shared/parse-state.ts'
import { newSession, sessionIn } from '@/features/class/shared/session.ts'
import { type ClassState, classStore, type Origin } from '@/features/class/shared/state.ts'
import { classAt } from './class-at.ts'

const state = classAt({ step: 2, link: 'at=R12' })

describe('what a class sees', () => {
  test('comes through a message as it was sent', () => {
    const full: ClassState = { ...state, pointer: { x: 0, y: 1 }, quiz: { seed: 3, question: 0 } }
    for (const sent of [state, full]) {
      expect(parseClassState(structuredClone(sent))).toEqual(sent)
      expect(parseClassState(JSON.parse(JSON.stringify(sent)))).toEqual(sent)
    }
  })

  test.each([
    ['nothing', undefined],
    ['null', null],
    ['a text', 'the-hold'],
    ['a list', [state]],
    ['no chapter', { ...state, chapter: undefined }],
    ['a chapter that is an address', { ...state, chapter: '//elsewhere' }],
    ['a step before the first', { ...state, step: -1 }],
    ['no part', { ...state, part: undefined }],
    ['half a step', { ...state, step: 0.5 }],
    ['a link without end', { ...state, link: 'x'.repeat(20_001) }],
    ['a word for yes', { ...state, revealed: 'yes' }],
    ['a pointer far off the screen', { ...state, pointer: { x: 11, y: 0 } }],
    ['a pointer nowhere', { ...state, pointer: { x: NaN, y: 0 } }],
    ['a question without a seed', { ...state, quiz: { question: 1 } }],
  ])('is not taken from another window where it is %s', (_, sent) => {
    expect(parseClassState(sent)).toBeUndefined()
  })

  test('takes over no more than it knows', () => {
    expect(parseClassState({ ...state, more: '<script>' })).toEqual(state)
  })
})

describe('the store of a class view', () => {
  test('says to each listener what changed and from where, until it ends that', () => {
    const store = classStore(state)
    const heard: [number, Origin][] = []
    const end = store.subscribe(({ step }, origin) => heard.push([step, origin]))
    store.set({ step: 3 }, 'local')
    store.set({ step: 4 }, 'remote')
    end()
    store.set({ step: 5 }, 'local')
    expect(heard).toEqual([
      [3, 'local'],
      [4, 'remote'],
    ])
    expect(store.state().step).toBe(5)
  })

  test('says nothing of a change that changes nothing', () => {
    const store = classStore({ ...state, pointer: { x: 0.5, y: 0.5 } })
    let count = 0
    store.subscribe(() => count++)
    store.set({ step: 2, pointer: { x: 0.5, y: 0.5 } }, 'remote')
    expect(count).toBe(0)
  })
})

describe('the id of a class', () => {
  test('is read from the query as it was made', () => {
    const id = newSession()
    expect(sessionIn(`?class=${id}&step=x`)).toBe(id)
    expect(newSession()).not.toBe(id)
  })

  test.each(['', '?class=', '?class=A%20B', `?class=${'a'.repeat(17)}`])('is none in “%s”', (search) => {
    expect(sessionIn(search)).toBeUndefined()
  })
})
