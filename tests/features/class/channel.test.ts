import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { type ClassState, type ClassStore, classStore } from '@/features/class/shared/state.ts'
import { channelTrouble, joinClass } from '@/features/class/shared/channel.ts'
import { Bus } from './test-bus.ts'
import { classAt } from './class-at.ts'

const first = classAt()

interface Window {
  readonly store: ClassStore
  readonly leave: () => void
}

const opened = (bus: Bus, id = 'abcd', state: Partial<ClassState> = {}): Window => {
  const store = classStore({ ...first, ...state })
  return { store, leave: joinClass(store, id, { open: bus.open }) }
}

/** A class of two windows, at rest. */
const two = (): { bus: Bus; one: ClassStore; other: ClassStore } => {
  const bus = new Bus()
  const [one, other] = [opened(bus).store, opened(bus).store]
  bus.settle()
  return { bus, one, other }
}

describe('the windows of a class', () => {
  test.each<Partial<ClassState>>([
    { step: 3, link: '', revealed: false },
    { link: 'at=R23&break=strip.3.seized' },
    { blank: true },
    { revealed: true },
    { pointer: { x: 0.25, y: 0.5 } },
    { qr: true },
    { quiz: { seed: 4, question: 2 } },
  ])('show in each what was done in the other: %o', (patch) => {
    const { bus, one, other } = two()
    one.set(patch, 'local')
    bus.settle()
    expect(other.state()).toEqual({ ...first, ...patch })
    other.set(first, 'local')
    bus.settle()
    expect(one.state()).toEqual(first)
  })

  test('say each change once, and what is heard is not said again', () => {
    const { bus, one } = two()
    const before = bus.delivered
    one.set({ step: 1 }, 'local')
    one.set({ step: 2 }, 'local')
    bus.settle()
    expect(bus.delivered - before).toBe(2)
  })

  test('tell a window that opens late', () => {
    const { bus, one } = two()
    one.set({ step: 5, link: 'at=R3' }, 'local')
    bus.settle()
    const late = opened(bus)
    bus.settle()
    expect(late.store.state()).toEqual({ ...first, step: 5, link: 'at=R3' })
  })

  test('tell a late window where nobody has done anything yet', () => {
    const bus = new Bus()
    const one = opened(bus, 'abcd', { step: 4 })
    const late = opened(bus)
    bus.settle()
    expect([one.store.state().step, late.store.state().step]).toEqual([4, 4])
  })

  test('tell a late window what nobody has touched along with what somebody did', () => {
    const bus = new Bus()
    const one = opened(bus, 'abcd', { step: 4 })
    one.store.set({ blank: true }, 'local')
    const late = opened(bus)
    bus.settle()
    for (const { store } of [one, late]) expect(store.state()).toEqual({ ...first, step: 4, blank: true })
  })

  test('keep what is done in a late window before it is answered', () => {
    // Which window's id is the later one is chance: both ways must do.
    for (let round = 0; round < 40; round++) {
      const bus = new Bus()
      const one = opened(bus)
      const late = opened(bus)
      late.store.set({ step: 2 }, 'local')
      bus.settle()
      expect([one.store.state().step, late.store.state().step]).toEqual([2, 2])
    }
  })

  test('follow the page opened last to its chapter', () => {
    const { bus, one, other } = two()
    one.set({ step: 5 }, 'local')
    bus.settle()
    const late = opened(bus, 'abcd', { chapter: 'feeler-pins', step: 2 })
    bus.settle()
    for (const store of [one, other, late.store])
      expect(store.state()).toEqual({ ...first, chapter: 'feeler-pins', step: 2 })
  })

  test('don’t mix with another class’s', () => {
    const { bus, one } = two()
    const apart = opened(bus, 'wxyz')
    bus.settle()
    one.set({ step: 5 }, 'local')
    apart.store.set({ blank: true }, 'local')
    bus.settle()
    expect([one.state(), apart.store.state()]).toEqual([
      { ...first, step: 5 },
      { ...first, blank: true },
    ])
  })

  test('keep the step when the carriage was still on its way in the other', () => {
    const { bus, one, other } = two()
    for (const at of [1, 2, 3]) one.set({ link: `at=R${at}` }, 'local')
    other.set({ step: 1, link: '' }, 'local')
    bus.settle()
    expect(one.state()).toEqual({ ...first, step: 1 })
    expect(other.state()).toEqual(one.state())
  })

  test('stay as they are when something else speaks', () => {
    const { bus, one } = two()
    const { postMessage } = bus.open('class-abcd')
    const sent = { kind: 'state', state: { ...first, step: 7 } }
    const rest = [
      null,
      4,
      'state',
      {},
      [],
      sent,
      { ...sent, times: { position: null } },
      { kind: 'state', times: {} },
    ]
    for (const message of rest) postMessage(message)
    bus.settle()
    expect(one.state()).toEqual(first)
  })

  test('are left alone once one has left', () => {
    const bus = new Bus()
    const [one, other] = [opened(bus), opened(bus)]
    bus.settle()
    other.leave()
    one.store.set({ step: 2 }, 'local')
    other.store.set({ step: 6 }, 'local')
    bus.settle()
    expect([one.store.state().step, other.store.state().step]).toEqual([2, 6])
  })

  test('are answered with a sentence where the browser has no such channel', () => {
    expect(channelTrouble()).toBeUndefined()
    vi.stubGlobal('BroadcastChannel', undefined)
    expect(channelTrouble()).toMatch(/two windows/)
    expect(joinClass(classStore(first), 'abcd')).not.toThrow()
    vi.unstubAllGlobals()
  })
})

const change = fc.oneof(
  fc.record({ step: fc.nat(9), link: fc.constant(''), revealed: fc.boolean() }),
  fc.record({ link: fc.nat(99).map((at) => `at=R${at + 1}`) }),
  fc.record({ blank: fc.boolean() }),
  fc.record({ qr: fc.boolean() }),
  fc.record({ parts: fc.integer({ min: 1, max: 3 }) }),
  fc.record({ quiz: fc.option(fc.record({ seed: fc.nat(3), question: fc.nat(3) }), { nil: undefined }) }),
  fc.record({ pointer: fc.option(fc.record({ x: fc.nat(1), y: fc.nat(1) }), { nil: undefined }) }),
)

const act = fc.oneof(
  { weight: 4, arbitrary: fc.record({ does: fc.constant('set' as const), who: fc.nat(9), patch: change }) },
  { weight: 6, arbitrary: fc.record({ does: fc.constant('hear' as const), who: fc.nat(9) }) },
  {
    weight: 1,
    arbitrary: fc.record({ does: fc.constant('open' as const), who: fc.nat(9), step: fc.nat(9) }),
  },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('leave' as const), who: fc.nat(9) }) },
)

test('whatever happens, in whatever order it is heard, all windows end in the same state', () => {
  fc.assert(
    fc.property(fc.array(act, { maxLength: 60 }), (acts) => {
      const bus = new Bus()
      const windows = [opened(bus), opened(bus)]
      for (const { who, ...what } of acts) {
        const one = windows[who % windows.length]
        if (what.does === 'open') windows.push(opened(bus, 'abcd', { step: what.step }))
        else if (what.does === 'hear') bus.deliver(who)
        else if (what.does === 'set') one?.store.set(what.patch, 'local')
        else if (one && windows.length > 2) {
          // What it said last has reached the others before it is gone.
          bus.settle()
          windows.splice(windows.indexOf(one), 1)
          one.leave()
        }
      }
      bus.settle()
      const [state, ...states] = windows.map(({ store }) => store.state())
      for (const other of states) expect(other).toEqual(state)
    }),
    { numRuns: 500 },
  )
})
