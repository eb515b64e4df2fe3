import { element } from '../../browser/dom.ts'
import './framed.css'

/** Whether a page of another site is round this one: its address is then out of reach. */
const isForeign = (): boolean => {
  try {
    return top?.location.origin !== location.origin
  } catch {
    return true
  }
}

/**
 * Where a page is in a frame of another site, on a host that sends no headers against it, a bar over it leads to the
 * page itself: only there does a reader see by its address whose page it is.
 */
if (isForeign()) {
  const link = element('a', { target: '_blank', rel: 'noopener' }, ['Open this page by itself'])
  const follow = (): void => {
    link.href = location.href
  }
  // Its state is in its address, which changes.
  for (const kind of ['pointerdown', 'focus', 'click'] as const) link.addEventListener(kind, follow)
  follow()
  document.body.prepend(
    element('aside', { class: 'framed', 'aria-label': 'This page is inside another site' }, [
      element('span', {}, ['This page is shown inside another site.']),
      ' ',
      link,
    ]),
  )
}
