import { gsap } from './tween.ts'
import { passEnds } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Store } from './store.ts'
import { slideTo } from './travel.ts'

/** Playing: the carriage runs by itself, as many times slower than life as chosen, pass after pass. */
export interface Player {
  readonly toggle: () => void
  readonly stop: () => void
  readonly start: () => void
  readonly setSlowness: (times: number) => void
}

/** Makes the player; `show` is told whether it is playing. */
export const createPlayer = (store: Store, show: (isPlaying: boolean) => void): Player => {
  let tween: ReturnType<typeof gsap.to> | null = null
  let slowness = 50

  const stop = (): void => {
    if (!tween) return
    tween.kill()
    tween = null
    show(false)
  }
  const start = (): void => {
    tween?.kill()
    const { state } = store.now()
    const { end } = passEnds(state.pass, state.bed)
    const needles = Math.abs(end - state.at)
    const place = { at: state.at }
    tween = gsap.to(place, {
      at: end,
      duration: (needles * dimensions.pitch * slowness) / state.speed,
      ease: 'none',
      onUpdate: () => {
        if (tween && place.at !== end) slideTo(store, place.at)
      },
      onComplete: () => {
        slideTo(store, end)
        tween = gsap.delayedCall(0.6, start)
      },
    })
    show(true)
  }
  return {
    start,
    stop,
    toggle: () => {
      if (tween) stop()
      else start()
    },
    setSlowness: (times) => {
      slowness = times
      if (tween) start()
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
