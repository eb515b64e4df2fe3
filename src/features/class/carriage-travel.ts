import { isMoving, moveTo, prefersReducedMotion, stopMoving } from '../../browser/tween.ts'
import type { State } from '../../link/state.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { isSameButForCarriage, setMachine } from './shared/machine-link.ts'

/** The farthest that the carriage travels by itself, in needles; over longer ways it jumps. */
const farthest = 60

/** How long the carriage takes for one needle, and the shortest and longest time of a whole travel, in s. */
const secondsPerNeedle = 0.3
const [shortest, longest] = [0.7, 5]

/** Moves the machine to what is shown. */
export interface CarriageTravel {
  /** Goes to a state, and on to carriage position `to`, slowly enough to be watched; at once under reduced motion. */
  readonly go: (target: State, to: number) => void
  /** Sets the machine to another window's state; one that differs only by the carriage is ignored during a travel. */
  readonly follow: (target: State) => void
  readonly stop: () => void
}

export const createTravel = (store: MachineStore): CarriageTravel => {
  const carriage = { at: 0 }
  const stop = (): void => {
    stopMoving(carriage)
  }
  const run = (at: number, seconds: number, then?: () => void): void => {
    carriage.at = store.now().state.at
    moveTo(carriage, {
      at,
      duration: seconds,
      ease: 'power2.inOut',
      onUpdate: () => {
        store.set({ at: carriage.at })
      },
      ...(then && { onComplete: then }),
    })
  }
  const distance = (at: number): number => Math.abs(store.now().state.at - at)
  return {
    stop,
    go: (target, to) => {
      stop()
      const before = store.now().state
      const state = { ...target, note: before.note }
      const isNear = before.pass === state.pass && distance(state.at) <= farthest
      if (prefersReducedMotion() || !isNear) {
        store.set(prefersReducedMotion() ? { ...state, at: to } : state)
        if (!prefersReducedMotion() && to !== state.at) run(to, durationOf(Math.abs(to - state.at)))
        return
      }
      store.set({ ...state, at: before.at })
      const onwards = to === state.at ? undefined : () => run(to, durationOf(Math.abs(to - state.at)))
      if (distance(state.at) > 0) run(state.at, onwards ? shortest : durationOf(distance(state.at)), onwards)
      else onwards?.()
    },
    follow: (target) => {
      const { state } = store.now()
      if (isMoving(carriage) && target.pass === state.pass && isSameButForCarriage(target, state, store))
        return
      stop()
      setMachine(store, target)
    },
  }
}

/** How long a travel over so many needles takes, in s. */
const durationOf = (needles: number): number =>
  Math.min(longest, Math.max(shortest, needles * secondsPerNeedle))
