/** Fills the screen with the page, or ends that. Calls `notify` with a sentence where the browser does not let it. */
export const toggleFullScreen = (notify: (words: string) => void): void => {
  const root = document.documentElement
  // Some browsers have no full screen for a page, whatever the types say.
  if (!('requestFullscreen' in root)) {
    notify('This browser has no full screen for a page. All else works.')
    return
  }
  const change = document.fullscreenElement ? document.exitFullscreen() : root.requestFullscreen()
  change.catch(() => {
    notify('The browser did not let the page fill the screen. All else works.')
  })
}

/** Keeps the screen from going dark while the page is visible, and calls `report` with whether that works. */
export const keepAwake = (report: (isAwake: boolean) => void): void => {
  const request = (): void => {
    // Without https there is no wake lock at all, whatever the types say.
    if (!('wakeLock' in navigator)) {
      report(false)
      return
    }
    if (document.visibilityState !== 'visible') return
    navigator.wakeLock.request('screen').then(
      () => {
        report(true)
      },
      () => {
        report(false)
      },
    )
  }
  // The browser ends the lock whenever the page is hidden.
  document.addEventListener('visibilitychange', request)
  request()
}
