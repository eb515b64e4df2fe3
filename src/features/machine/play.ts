import { moveTo, stopMoving } from '../../browser/tween.ts'
import { leadingSpan } from '../../drawings/shared/cams.ts'
import { passEnds, wayOfPass } from '../../mechanism/bed.ts'
import { sortedAfter, type Dimensions } from '../../mechanism/dimensions.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { slideTo } from './slide-carriage.ts'

/** Playing: the carriage runs by itself, as many times slower than life as chosen, pass after pass. */
export interface Player {
  readonly toggle: () => void
  readonly stop: () => void
  readonly start: () => void
  readonly setSlowness: (times: number) => void
}

/** How long the carriage rests at the turn, in ms: the pins go down, the card steps, the pins come up. */
const turnRest = 1000

/** The most time between the last needle's last cam and the turn mark, and from there to the next, in s: nothing happens there. */
const quick = 0.4

/** How far from a needle the carriage's first and last cams still have to do with it, in needles. */
const reachOf = (dimensions: Dimensions) => ({
  ahead: -leadingSpan[0] + 0.5,
  behind: Math.min(dimensions.turnMark, sortedAfter(dimensions) + 0.5),
})

/** Makes the player; `show` gets whether it is playing. */
export const createPlayer = (store: MachineStore, show: (isPlaying: boolean) => void): Player => {
  /** The carriage's place while it plays. */
  let place: { at: number } | null = null
  let rest: ReturnType<typeof setTimeout> | undefined
  let slowness = 50

  const halt = (): void => {
    clearTimeout(rest)
    if (place) stopMoving(place)
  }
  const stop = (): void => {
    if (!place) return
    halt()
    place = null
    show(false)
  }
  const start = (): void => {
    halt()
    const { state } = store.now()
    const { end } = passEnds(state.pass, state.bed)
    const way = wayOfPass(state.pass)
    const [first, last] = way === 1 ? [state.bed.first, state.bed.last] : [state.bed.last, state.bed.first]
    const dimensions = dimensionsOf(state.own)
    const reach = reachOf(dimensions)
    const now = { at: state.at }
    place = now
    /** Goes on to `to`, and from there to the places after it. */
    const goTo = ([to, ...more]: readonly number[], isQuick: boolean): void => {
      if (to === undefined) {
        rest = setTimeout(start, turnRest)
        return
      }
      const inTime = (Math.abs(to - now.at) * dimensions.pitch * slowness) / state.speed
      moveTo(now, {
        at: to,
        duration: isQuick ? Math.min(quick, inTime) : inTime,
        ease: 'none',
        onUpdate: () => {
          if (place === now && now.at !== end) slideTo(store, now.at)
        },
        onComplete: () => {
          if (to === end) slideTo(store, end)
          goTo(more, !isQuick)
        },
      })
    }
    const [comes, leaves] = [first - way * reach.ahead, last + way * reach.behind]
    const isBefore = (to: number): boolean => way * (to - state.at) > 0
    if (isBefore(comes)) goTo([comes, leaves, end], true)
    else if (isBefore(leaves)) goTo([leaves, end], false)
    else goTo([end], true)
    show(true)
  }
  return {
    start,
    stop,
    toggle: () => {
      if (place) stop()
      else start()
    },
    setSlowness: (times) => {
      slowness = times
      if (place) start()
    },
  }
}

/** Lets the reader's hand win: any drag, key or click stops the playing, but for those on its own two controls. */
export const yieldToHand = (player: Player): void => {
  for (const kind of ['pointerdown', 'keydown', 'click', 'input'])
    addEventListener(
      kind,
      ({ target }) => {
        if (!(target instanceof Element && target.closest('.play, label:has(.slowness)'))) player.stop()
      },
      { capture: true },
    )
}
