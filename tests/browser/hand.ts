import { drawn, expect, type Page } from './page.ts'

const nowhere = 'nothing has the keyboard'

/** What is wrong with where the keyboard is, for who sees the page; empty where nothing is. */
const faultOfFocus = (): string => {
  const active = document.activeElement
  if (!active || active === document.body) return 'nothing has the keyboard'
  const name = active.outerHTML.slice(0, 120)
  const label = active.closest('label')
  const places = [active, active.nextElementSibling, label].filter((some) => some !== null)
  const isMarked = places.some((some) => {
    const { outlineStyle, outlineWidth } = getComputedStyle(some)
    return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2
  })
  const box = (label?.contains(active) && active.matches('input') ? label : active).getBoundingClientRect()
  const [left, right] = [Math.max(0, box.left), Math.min(innerWidth, box.right)]
  const [top, bottom] = [Math.max(0, box.top), Math.min(innerHeight, box.bottom)]
  if (right - left < 1 || bottom - top < 1) return `out of sight: ${name}`
  const shares = [0.5, 0.1, 0.9]
  const isBare = shares.some((x) =>
    shares.some((y) => {
      const hit = document.elementFromPoint(left + x * (right - left), top + y * (bottom - top))
      const frame =
        getComputedStyle(active).pointerEvents === 'none' ? active.parentElement : (label ?? active)
      return hit !== null && (frame?.contains(hit) === true || hit.contains(active))
    }),
  )
  if (!isBare) return `hidden behind something: ${name}`
  return isMarked ? '' : `nothing shows that it has the keyboard: ${name}`
}

/** How long a page may take to draw what it does about it, on a busy machine, in ms. */
const toSettle = 3000

/** The same, once what the page does about it is drawn: a question that comes to life moves what is below it. */
const settledFault = async (page: Page): Promise<string> => {
  const end = performance.now() + toSettle
  for (;;) {
    const fault = await page.evaluate(faultOfFocus)
    if (fault === '' || fault === nowhere || performance.now() > end) return fault
    await drawn(page)
  }
}

/** What has the keyboard is in sight, hidden behind nothing, and shows it. Sources: WCAG 2.2, 2.4.7 and 2.4.11. */
export const expectSeen = async (page: Page): Promise<void> => {
  expect(await settledFault(page)).toBe('')
}

/** Presses Tab, or another key, until an element of this selector has the keyboard; each stop on the way is seen. */
export const tabTo = async (page: Page, selector: string, key = 'Tab'): Promise<void> => {
  for (let n = 0; n < 150; n++) {
    await page.keyboard.press(key)
    const fault = await settledFault(page)
    // Past the last stop the browser's own bars come, and then the page again.
    if (fault !== nowhere) expect(fault).toBe('')
    const isThere = await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)
    if (isThere) return
  }
  throw new Error(`${key} never comes to ${selector}`)
}

/** Presses keys, one after the other, and looks where the keyboard is then. */
export const press = async (page: Page, ...keys: readonly string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key)
  await expectSeen(page)
}

/** Tab leads on to the last link of the page: nothing holds the keyboard. */
export const expectNoTrap = (page: Page): Promise<void> =>
  tabTo(page, '.foot li:last-child a, .foot a:last-child')
