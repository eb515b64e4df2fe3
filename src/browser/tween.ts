import type { gsap } from './gsap.ts'

/** Whether the reader wants as little motion as possible, or reads a figure in another's page, which must stay small. */
export const prefersReducedMotion = (): boolean =>
  matchMedia('(prefers-reduced-motion: reduce)').matches ||
  document.documentElement.classList.contains('embedded')

type Mover = typeof gsap

/** Fetched when something first moves: most pages are read before, and open the sooner. */
let mover: Mover | null = null
let isOnItsWay = false
const waiting = new Map<object, gsap.TweenVars>()

const fetchMover = async (): Promise<void> => {
  isOnItsWay = true
  mover = (await import('./gsap.ts')).gsap
  for (const [target, course] of waiting) mover.to(target, course)
  waiting.clear()
}

/** Moves numbers of a target in time, as GSAP's `to` does, from as soon as GSAP is here. */
export const moveTo = (target: object, course: gsap.TweenVars): void => {
  if (mover) mover.to(target, course)
  else waiting.set(target, course)
  if (!isOnItsWay) void fetchMover()
}

/** Stops what moves this target, also what has yet to begin. */
export const stopMoving = (target: object): void => {
  waiting.delete(target)
  mover?.killTweensOf(target)
}

/** Whether this target is moved, or is about to be. */
export const isMoving = (target: object): boolean =>
  waiting.has(target) || (mover?.isTweening(target) ?? false)
