import { expect, type Page, lastingTest as test } from './page.ts'
import { formats, printOn } from './printed.ts'

/** A page of every kind that is printed, and what is on it once it is whole. */
const pages: readonly (readonly [address: string, whole: string])[] = [
  ['faults/strip-seized/', '.machine[data-live]'],
  ['faults/', '.sight'],
  ['chapters/on-the-bench/', '.machine[data-live]'],
  ['paper/handouts/on-the-bench/', '.paper[data-whole]'],
  ['paper/fault-chart/', '.paper[data-live]'],
  ['paper/check-list/', '.paper[data-live]'],
  ['paper/test-card/', '.paper[data-live]'],
  ['paper/worksheets/', '.paper[data-live]'],
  [
    'case/#title=Your+machine&break=strip.3.seized&break=pin.7.bent&end=1',
    '.case-machine svg[data-layout="narrow"]:not([aria-label="The machine"])',
  ],
  [
    'find/#' +
      Array.from({ length: 30 }, (_, n) => `pass=${n + 1}.${n % 2 ? 'left' : 'right'}.500.wL94-R99x8`).join(
        '&',
      ) +
      '&found=strip.3.seized',
    '.finding:not([hidden])',
  ],
  ['teach/', '.guide'],
]

/** Words without spaces: a PDF has them between the pieces of a line, too. */
const squeezed = (words: string): string => words.replace(/\s+/g, '')

/** The page's words that say what follows, and its pictures with their captions, as they are printed. */
const shown = (page: Page): Promise<{ heads: string[]; figures: { caption: string; picture: string }[] }> =>
  page.evaluate(() => {
    const isShown = (element: Element): boolean => element.checkVisibility()
    const all = (root: ParentNode, selector: string): Element[] =>
      [...root.querySelectorAll(selector)].filter(isShown)
    return {
      heads: all(document, 'main :is(h1, h2, h3, h4, legend, caption, dt, .prompt)').map(
        ({ textContent }) => textContent,
      ),
      figures: all(document, 'figure:has(figcaption)').flatMap((figure) =>
        all(figure, 'img, svg[aria-label]').map((picture) => ({
          // Some of its lines are hidden.
          caption: figure.querySelector('figcaption')?.innerText.trim().split('\n')[0] ?? '',
          picture: picture.getAttribute('aria-label') ?? picture.getAttribute('alt') ?? '',
        })),
      ),
    }
  })

for (const [address, whole] of pages)
  test(`in print nothing of ${address.split('#')[0] ?? ''} is parted from what says what it is`, async ({
    page,
  }) => {
    await page.goto(address)
    // A machine that comes to life may say more than the page has from the start.
    await expect(page.locator('.machine:not([data-live])')).toHaveCount(0)
    // Some pictures have a shape of their own in print.
    await page.emulateMedia({ media: 'print' })
    await expect(page.locator(whole).first()).toBeAttached()
    const { heads, figures } = await shown(page)
    expect(heads.length).toBeGreaterThan(0)
    for (const format of formats) {
      const printed = await printOn(page, format)
      const texts = printed.map(({ words }) =>
        squeezed(words.replace(/Every Eighth Needle(: [a-z ]+)? ?\d+ of \d+/, '')),
      )
      for (const [n, text] of texts.entries()) {
        expect(text, `${format}, page ${n + 1}`).not.toBe('')
        const foot = heads.filter((head) => text.endsWith(squeezed(head)))
        expect(foot, `${format}, at the foot of page ${n + 1} of ${texts.length}`).toEqual([])
      }
      const pictures = await Promise.all(printed.map((sheet) => sheet.labels()))
      const parted = figures.filter(
        ({ caption, picture }) =>
          !texts.some((text, n) => text.includes(squeezed(caption)) && pictures[n]?.includes(picture)),
      )
      expect(parted, format).toEqual([])
    }
  })
