import type { State } from '../../link/state.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { isMoving, moveTo, stopMoving } from '../../browser/tween.ts'
import { isSameMachine, takeOver } from './link.ts'

/** How far at most the carriage is seen to go by itself, in needles; further it jumps. */
const farthest = 60

/** How long it takes for a needle when it shows something, and at least and at most in all, in s. */
const aNeedle = 0.3
const [least, most] = [0.7, 5]

const reduced = matchMedia('(prefers-reduced-motion: reduce)')

/** Moves the machine to what is shown. */
export interface Travel {
  /** Goes to a state, and on to `to`, slowly enough to be watched; at once where motion is not wanted. */
  readonly go: (target: State, to: number) => void
  /** Takes over a state that another window sends; one that differs only by the carriage waits while it goes by itself. */
  readonly follow: (target: State) => void
  readonly stop: () => void
}

export const createTravel = (store: MachineStore): Travel => {
  const place = { at: 0 }
  const stop = (): void => {
    stopMoving(place)
  }
  const run = (at: number, seconds: number, then?: () => void): void => {
    place.at = store.now().state.at
    moveTo(place, {
      at,
      duration: seconds,
      ease: 'power2.inOut',
      onUpdate: () => {
        store.set({ at: place.at })
      },
      onComplete: then,
    })
  }
  const far = (at: number): number => Math.abs(store.now().state.at - at)
  return {
    stop,
    go: (target, to) => {
      stop()
      const before = store.now().state
      const state = { ...target, note: before.note }
      const isNear = before.pass === state.pass && far(state.at) <= farthest
      if (reduced.matches || !isNear) {
        store.set(reduced.matches ? { ...state, at: to } : state)
        if (!reduced.matches && to !== state.at) run(to, lasting(Math.abs(to - state.at)))
        return
      }
      store.set({ ...state, at: before.at })
      const onwards = to === state.at ? undefined : () => run(to, lasting(Math.abs(to - state.at)))
      if (far(state.at) > 0) run(state.at, onwards ? least : lasting(far(state.at)), onwards)
      else onwards?.()
    },
    follow: (target) => {
      const { state } = store.now()
      if (isMoving(place) && target.pass === state.pass && isSameMachine(target, state, store)) return
      stop()
      takeOver(store, target)
    },
  }
}

const lasting = (needles: number): number => Math.min(most, Math.max(least, needles * aNeedle))
