import { middle, part, type Page } from './page.ts'

/** A phone as narrow as the site is made for. */
export const phone = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
} as const

/** Taps a part in the drawing, at its middle. */
export const tap = async (page: Page, id: string): Promise<void> => {
  const { x, y } = await middle(part(page, id))
  await page.touchscreen.tap(x, y)
}
