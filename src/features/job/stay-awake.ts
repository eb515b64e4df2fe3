import { required, setText } from '../../browser/dom.ts'

/** Keeps the screen on while the box is ticked and the page is seen; says so where the browser can't. */
export const bindStayAwake = (root: HTMLElement): void => {
  const box = required(root, '.job-awake input', HTMLInputElement)
  const said = required(root, '.job-awake-said', HTMLElement)
  let lock: WakeLockSentinel | null = null
  const hold = async (): Promise<void> => {
    try {
      lock = await navigator.wakeLock.request('screen')
      setText(said, '')
    } catch {
      box.checked = false
      setText(said, 'This browser can’t keep the screen on.')
    }
  }
  box.addEventListener('change', () => {
    if (box.checked) void hold()
    else void lock?.release()
  })
  // The browser lets go of it when the page is hidden.
  addEventListener('visibilitychange', () => {
    if (box.checked && document.visibilityState === 'visible') void hold()
  })
}
