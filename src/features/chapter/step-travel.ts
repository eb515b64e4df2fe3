import { movedPosition, movedTo } from '../../link/reader-place.ts'
import type { State } from '../../link/state.ts'
import { moveTo, prefersReducedMotion, stopMoving } from '../../browser/tween.ts'
import type { Machine } from '../machine/index.ts'
import type { Step } from './step.ts'
import { shareRead } from './step-scroll.ts'

/** How far the carriage travels at most, in needles, from one step to the next; further it jumps. */
const farthest = 60

/** How long it travels, in s. */
const duration = 0.7

/** Takes the machine to a chapter's steps. */
export interface StepTravel {
  /** Shows a step's figure and state; `isStill` begins the step as if none of it had been scrolled through. */
  readonly go: (step: Step, isStill: boolean) => void
  /** Takes the carriage as far as the step has been read. */
  readonly scrub: (step: Step) => void
  /** Whether the machine follows the scroll; a hand on the machine ends that until the next step. */
  readonly follows: () => boolean
  /** Shows another state than the step's own. */
  readonly leave: (state: State) => void
}

/** Makes the travel; `followed` is called when the machine begins to follow the steps, and when it no longer does. */
export const createStepTravel = (
  { store, stage, player, ownPlace }: Machine,
  followed: (follows: boolean) => void,
): StepTravel => {
  const carriage = { at: 0 }
  let follows = false
  const change = (part: Partial<State>): void => {
    store.set(part, 'step')
  }
  /** Where the carriage is once so much of a step has been read, on the reader's own machine. */
  const positionIn = ({ state, to }: Step, share: number): number => {
    const moved = (at: number): number => movedPosition(at, state.pass, state, ownPlace.now())
    return moved(state.at) + share * (moved(to) - moved(state.at))
  }
  const follow = (isFollowing: boolean): void => {
    follows = isFollowing
    followed(follows)
  }
  store.subscribe((_, before, by) => {
    if (!before || by === 'step') return
    stopMoving(carriage)
    follow(false)
  })
  return {
    follows: () => follows,
    go: (step, isStill) => {
      player.stop()
      stopMoving(carriage)
      const before = store.now().state
      const share = prefersReducedMotion() || isStill ? 0 : shareRead(step)
      const at = positionIn(step, share)
      stage.show(step.figure, step.scene)
      const isNear = before.pass === step.state.pass && Math.abs(before.at - at) < farthest
      const travels = !prefersReducedMotion() && isNear
      const own = movedTo(step.state, ownPlace.now())
      change({ ...own, note: before.note, at: travels ? before.at : at })
      follow(true)
      if (!travels || before.at === at) return
      carriage.at = before.at
      moveTo(carriage, {
        at,
        duration,
        ease: 'power2.inOut',
        onUpdate: () => {
          change({ at: carriage.at })
        },
      })
    },
    scrub: (step) => {
      stopMoving(carriage)
      change({ at: positionIn(step, shareRead(step)) })
    },
    leave: (state) => {
      stopMoving(carriage)
      store.set(state)
    },
  }
}
