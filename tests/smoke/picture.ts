import { expect } from 'vitest'
import { type Moment, wrongNeedles } from '../browser/model.ts'
import type { Browser, Point } from './browser.ts'

interface Drawing {
  /** Pixels. */
  readonly width: number
  readonly height: number
  /** Needles in the window that came out wrong, with their marks. */
  readonly wrong: string[]
  readonly needles: string[]
}

/** What is to be seen in the drawing that is shown. */
const drawing = (browser: Browser): Promise<Drawing> =>
  browser.look(() => {
    const svg = [...document.querySelectorAll('.drawing svg')].find((svg) => svg.getClientRects().length > 0)
    const needles = [...(svg?.querySelectorAll('.needle:not([display="none"])') ?? [])].map((needle) => ({
      name: (needle.getAttribute('data-part') ?? '').replace('needle.', ''),
      mark: needle.getAttribute('data-mark') ?? '',
    }))
    const box = svg?.getBoundingClientRect()
    return {
      width: box?.width ?? 0,
      height: box?.height ?? 0,
      needles: needles.map(({ name }) => name),
      wrong: needles
        .filter(({ mark }) => /missed|extra|unmoved/.test(mark))
        .map(({ name, mark }) => `${name} ${mark}`),
    }
  })

/** All that the drawing that is shown consists of. */
export const outline = (browser: Browser): Promise<string> =>
  browser.look(
    () =>
      [...document.querySelectorAll('.drawing svg')].find((svg) => svg.getClientRects().length > 0)
        ?.outerHTML ?? '',
  )

/** Waits until the drawing marks those needles as wrong that the model gets wrong, of those that it shows. */
export const expectDrawn = async (browser: Browser, moment: Moment): Promise<void> => {
  await expect.poll(async () => (await drawing(browser)).needles.length).toBeGreaterThan(20)
  const { width, height } = await drawing(browser)
  expect(width).toBeGreaterThan(600)
  expect(height).toBeGreaterThan(250)
  const differences = async (): Promise<string[]> => {
    const { needles, wrong } = await drawing(browser)
    const expected = wrongNeedles(moment)
      .filter(([name]) => needles.includes(name))
      .map(([name, mark]) => `${name} ${mark}`)
    return [
      ...expected.filter((mark) => !wrong.includes(mark)).map((mark) => `${mark}: not drawn`),
      ...wrong.filter((mark) => !expected.includes(mark)).map((mark) => `${mark}: drawn, and not so`),
    ]
  }
  await expect.poll(differences).toEqual([])
}

/** A corner of the carriage that a hand can take hold of, and the pixels from one needle to the next. */
export const carriageHold = async (browser: Browser): Promise<Point & { readonly spacing: number }> => {
  const box = await browser.look(() => {
    const carriage = [...document.querySelectorAll('.drawing svg .carriage')].find(
      (carriage) => carriage.getClientRects().length > 0,
    )
    carriage?.closest('svg')?.scrollIntoView({ block: 'center', behavior: 'instant' })
    const { left, bottom, width } = carriage?.getBoundingClientRect() ?? new DOMRect()
    return { left, bottom, width }
  })
  return { x: box.left + box.width * 0.15, y: box.bottom - 8, spacing: box.width / 21 }
}
