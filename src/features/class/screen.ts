/** Fills the screen with the page, or gives it back. Says why where the browser does not. */
export const toggleFullScreen = (say: (words: string) => void): void => {
  const root = document.documentElement
  // Some browsers have no full screen for a page, whatever the types say.
  if (!('requestFullscreen' in root)) {
    say('This browser has no full screen for a page. All else works.')
    return
  }
  const change = document.fullscreenElement ? document.exitFullscreen() : root.requestFullscreen()
  change.catch(() => {
    say('The browser did not let the page fill the screen. All else works.')
  })
}

/** Keeps the screen from going dark while the page is seen, and tells whether it can. */
export const keepAwake = (tell: (isAwake: boolean) => void): void => {
  const ask = (): void => {
    // Without https there is no wake lock at all, whatever the types say.
    if (!('wakeLock' in navigator)) {
      tell(false)
      return
    }
    if (document.visibilityState !== 'visible') return
    navigator.wakeLock.request('screen').then(
      () => {
        tell(true)
      },
      () => {
        tell(false)
      },
    )
  }
  // The browser lets go of it whenever the page is hidden.
  document.addEventListener('visibilitychange', ask)
  ask()
}
