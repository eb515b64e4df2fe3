/** Keys that browsers scroll by, and how many needles each moves the carriage where the slider has not taken it. */
const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
}
const scrolling = new Set([...Object.keys(steps), 'PageUp', 'PageDown', 'Home', 'End', ' '])

/**
 * Keeps the keys that scroll from the page round the figure, which a browser scrolls once the figure’s own page cannot: at
 * the slider’s ends, and where nothing has the keyboard. There the arrows move the slider.
 */
export const keepKeys = (slider: HTMLInputElement): void => {
  addEventListener('keydown', (event) => {
    const { key, target, defaultPrevented, altKey, ctrlKey, metaKey, shiftKey } = event
    if (defaultPrevented || altKey || ctrlKey || metaKey || shiftKey || !scrolling.has(key)) return
    if (target === slider) {
      const isLower = key === 'ArrowLeft' || key === 'ArrowDown' || key === 'Home'
      const end = isLower ? slider.min : slider.max
      // Elsewhere on its way the slider takes the key itself.
      if (key === ' ' || Number(slider.value) === Number(end)) event.preventDefault()
      return
    }
    event.preventDefault()
    slider.focus()
    const step = steps[key]
    if (step === undefined) return
    const before = slider.value
    if (step > 0) slider.stepUp()
    else slider.stepDown()
    if (slider.value !== before) slider.dispatchEvent(new Event('input', { bubbles: true }))
  })
}
