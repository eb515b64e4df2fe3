import { element } from '../../browser/dom.ts'
import { registered, wish } from './register.ts'

/** Offers the version that waits, in a bar at the foot of the page. It comes when it is asked for, and not before. */
const show = (registration: ServiceWorkerRegistration): void => {
  document.querySelector('.offer')?.remove()
  const use = element('button', { type: 'button' }, ['Use the new version'])
  const later = element('button', { type: 'button' }, ['Later'])
  const bar = element('aside', { class: 'offer', 'aria-label': 'New version' }, [
    element('p', { role: 'status' }, ['A new version of this site is here.']),
    use,
    later,
  ])
  use.addEventListener('click', () => {
    use.disabled = true
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload())
    wish(registration.waiting, { kind: 'use' })
  })
  later.addEventListener('click', () => bar.remove())
  document.body.append(bar)
}

/** Watches for a new version while the page is open, and for one that was left for later. */
export const offerVersions = async (): Promise<void> => {
  const registration = await registered
  // Playwright and some guards of privacy answer with nothing.
  if (!registration) return
  const look = (): void => {
    if (registration.waiting && navigator.serviceWorker.controller) show(registration)
  }
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', look)
  })
  // Another tab may have pressed.
  navigator.serviceWorker.addEventListener('controllerchange', () =>
    document.querySelector('.offer')?.remove(),
  )
  look()
}
