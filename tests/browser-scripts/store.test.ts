import { describe, expect, test } from 'vitest'
import { createStore } from '@/browser/store.ts'
import { createMachineStore, type ChangedBy } from '@/browser/machine-store.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { read } from '@/link/read.ts'

describe('a store', () => {
  test('notifies its listeners in the order in which they came, with what was before and who changed it', () => {
    const store = createStore<number, 'hand' | 'class'>(1, 'hand')
    const heard: string[] = []
    store.listen((now, before, by) => heard.push(`first ${before} ${now} ${by}`))
    store.listen((now, before, by) => heard.push(`second ${before} ${now} ${by}`))
    store.set(2)
    store.set(3, 'class')
    expect(heard).toEqual(['first 1 2 hand', 'second 1 2 hand', 'first 2 3 class', 'second 2 3 class'])
  })

  test('notifies nobody of a change without a difference, nor who has left', () => {
    const store = createStore({ step: 1 }, 'hand', (one, other) => one.step === other.step)
    const heard: number[] = []
    const end = store.listen(({ step }) => heard.push(step))
    store.set({ step: 1 })
    store.set({ step: 2 })
    end()
    store.set({ step: 3 })
    expect(heard).toEqual([2])
  })

  test('names who changed it also where one store’s listener changes another', () => {
    const outer = createStore(0, 'hand')
    const inner = createStore<number, 'hand' | 'class'>(0, 'hand')
    const heard: string[] = []
    outer.listen((value) => {
      inner.set(value, 'class')
      expect(inner.now()).toBe(value)
    })
    inner.listen((value, _, by) => heard.push(`${value} ${by}`))
    outer.set(5)
    expect(heard).toEqual(['5 class'])
  })
})

describe('the machine’s store', () => {
  const library = cardLibrary(cardsFolder)
  const made = () => createMachineStore(read('pass=2&at=R8&break=strip.3.seized', library).state, library)

  test('calls a listener at once, with nothing before, and then at each change', () => {
    const store = made()
    const heard: [number, number | null, ChangedBy][] = []
    store.subscribe(({ state }, before, by) => heard.push([state.pass, before && before.state.pass, by]))
    store.set({ pass: 3 })
    store.set({ pass: 4 }, 'step')
    expect(heard).toEqual([
      [2, null, 'hand'],
      [3, 2, 'hand'],
      [4, 3, 'step'],
    ])
  })

  test('sets the model up again only when more than the carriage changes', () => {
    const store = made()
    const { run } = store.now()
    store.set({ at: 20, pass: 5 })
    expect(store.now().run).toBe(run)
    expect(store.now().frame.x).toBe(20)
    store.set({ faults: [] })
    expect(store.now().run).not.toBe(run)
  })
})
