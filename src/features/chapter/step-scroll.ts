import { prefersReducedMotion } from '../../browser/tween.ts'
import { movesCarriage, type Step } from './step.ts'

/** On a phone the figure fills the upper half, and the text is read below it. */
const small = matchMedia('screen and (max-width: 63.99rem)')

/** On paper the text is laid out in another way, and nobody reads on: the figure stays as it is. */
const paper = matchMedia('print')

/** The line of the screen, as a share of its height, at which a step is being read. */
const readingLine = (): number => (small.matches ? 0.72 : 0.5)

/** How much of a step has been read, 0 to 1: how far it is past the reading line. */
export const shareRead = ({ element }: Step): number => {
  const { top, height } = element.getBoundingClientRect()
  return Math.min(1, Math.max(0, (innerHeight * readingLine() - top) / Math.max(1, height)))
}

/** Scrolls so that a step is read: below the figure on a phone, in the middle of the screen elsewhere. */
export const scrollToStep = ({ element }: Step, behavior: ScrollBehavior): void => {
  const { top, height } = element.getBoundingClientRect()
  const above = small.matches ? 0.56 * innerHeight : Math.max(0.12 * innerHeight, (innerHeight - height) / 2)
  scrollTo({ top: scrollY + top - above, behavior })
}

/**
 * Calls back whenever another step reaches the reading line, but not for what is there when the page opens. Where the
 * window gets wider or narrower, or a phone is turned, the step that is being read stays: at first the one on which the
 * page opens.
 */
export const watchSteps = (
  steps: readonly Step[],
  opening: Step | null,
  reached: (index: number) => void,
): void => {
  let read = opening
  const follow = ({ target, isIntersecting }: IntersectionObserverEntry): void => {
    const index = steps.findIndex(({ element }) => element === target)
    const step = steps[index] ?? null
    if (isIntersecting) {
      read = step
      reached(index)
    } else if (read === step) read = null
  }
  const observe = (): IntersectionObserver => {
    const observer = new IntersectionObserver(
      (entries) => {
        if (!paper.matches) entries.forEach(follow)
      },
      { rootMargin: `-${100 * readingLine() - 5}% 0px -${95 - 100 * readingLine()}% 0px` },
    )
    for (const { element } of steps) observer.observe(element)
    return observer
  }
  // The first sight of the page is settled by its address; from then on the scroll decides.
  requestAnimationFrame(() => {
    let observer = observe()
    small.addEventListener('change', () => {
      observer.disconnect()
      observer = observe()
    })
  })
  let width = innerWidth
  addEventListener('resize', () => {
    if (innerWidth === width) return
    width = innerWidth
    // The text flows in other lines now, with another step where this one was. The top of the page is still its top.
    if (read && scrollY > 0 && !paper.matches) scrollToStep(read, 'instant')
  })
}

/** Calls back, at most once a picture of the screen, while a step is scrolled through in which the carriage moves. */
export const watchScroll = (current: () => Step | null, scrolled: (step: Step) => void): void => {
  let isWaiting = false
  const wait = (): void => {
    const step = current()
    if (isWaiting || !step || !movesCarriage(step) || prefersReducedMotion()) return
    isWaiting = true
    requestAnimationFrame(() => {
      isWaiting = false
      if (current() === step) scrolled(step)
    })
  }
  addEventListener('scroll', wait, { passive: true })
}
