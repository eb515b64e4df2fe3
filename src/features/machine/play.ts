import { moveTo, stopMoving } from '../../browser/tween.ts'
import { passEnds } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { slideTo } from './slide-carriage.ts'

/** Playing: the carriage runs by itself, as many times slower than life as chosen, pass after pass. */
export interface Player {
  readonly toggle: () => void
  readonly stop: () => void
  readonly start: () => void
  readonly setSlowness: (times: number) => void
}

/** How long the carriage rests at the turn, in ms. */
const turnRest = 600

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
    const needles = Math.abs(end - state.at)
    const now = { at: state.at }
    place = now
    moveTo(now, {
      at: end,
      duration: (needles * dimensions.pitch * slowness) / state.speed,
      ease: 'none',
      onUpdate: () => {
        if (place === now && now.at !== end) slideTo(store, now.at)
      },
      onComplete: () => {
        slideTo(store, end)
        rest = setTimeout(start, turnRest)
      },
    })
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
