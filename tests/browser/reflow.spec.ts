import { expect, type Page, test } from './page.ts'

/** A page of every kind, in a state that shows much. */
const kinds = [
  '#at=R20&break=strip.3.seized&break=catch.R12.broken',
  'chapters/',
  'chapters/the-hold/#at=R3&break=catch.R3.broken',
  'workbench/?beside=fabric#at=R8&break=strip.3.seized',
  'workbench/?beside=card#card=x.AAAAAAAAAAAAAAAA',
  'find/#pass=1.right.500.wR3-R99x8&found=strip.3.seized',
  'find/test-card/',
  'job/',
  'faults/',
  'faults/strip-seized/',
  'case/?make#title=Your+machine&break=strip.3.seized&note=Hello&end=1',
  'search/?q=sweep',
  'glossary/',
  'true-of-every-machine/',
  'sources/',
  'licences/',
  'offline/',
  'teach/',
  'parts/',
  'measure/',
  'embed/hold/?theme=dark#at=R3&break=catch.R3.broken',
  'paper/',
  'paper/parts/',
  'paper/measure/',
  'paper/fault-chart/',
  'paper/catch-sheet/',
  'paper/handouts/',
  'paper/handouts/on-the-bench/',
  'paper/worksheets/',
  'class/the-hold/?step=who-is-pressed',
  'class/the-hold/speaker/',
]

/** What reaches past the page's edges, or is cut off in a frame that can't be scrolled. Drawings are pictures, not text. */
const lost = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const name = (element: Element): string => `${element.localName}.${element.className}`
    const isInFrame = (element: Element): boolean => {
      for (let frame = element.parentElement; frame && frame !== document.body; frame = frame.parentElement)
        if (/auto|scroll/.test(getComputedStyle(frame).overflowX)) return true
      return false
    }
    const wrong: string[] = []
    if (document.documentElement.scrollWidth > innerWidth) wrong.push('the page scrolls sideways')
    for (const element of document.querySelectorAll('body *')) {
      const { left, right, width, height } = element.getBoundingClientRect()
      const isShown = element.checkVisibility({ visibilityProperty: true, opacityProperty: true })
      if (!isShown || width <= 1 || height <= 1) continue
      if (element.closest('svg, .unseen, .unseen-words, .step-name, .skip')) continue
      if ((right > innerWidth + 1 || left < -1) && !isInFrame(element)) wrong.push(`off: ${name(element)}`)
      const { overflowX, overflowY } = getComputedStyle(element)
      const isCut =
        (overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1) ||
        (overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1)
      if (isCut && !element.matches('.drawing, .other, :root')) wrong.push(`cut: ${name(element)}`)
    }
    return wrong
  })

/** Source: WCAG 2.2, 1.4.4 and 1.4.10. A page of 1280 by 720 pixels at 200 % is one of 640 by 360, and 320 by 640 is a small phone. */
test('nothing is cut off or scrolls sideways at 320 pixels, at 200 %, or with letters twice as large', async ({
  page,
  browserName,
}) => {
  test.setTimeout(90_000)
  test.skip(browserName !== 'chromium', 'only Chromium lets a test set the size of letters')
  const session = await page.context().newCDPSession(page)
  const letters = (standard: number): Promise<unknown> =>
    session.send('Page.setFontSizes', { fontSizes: { standard, fixed: Math.round(0.8 * standard) } })
  for (const address of kinds) {
    await page.setViewportSize({ width: 320, height: 640 })
    await page.goto('about:blank')
    await page.goto(`./${address}`)
    const live = page.locator('.machine[data-live], .find[data-live], .case[data-live]').first()
    if (/^#|chapters\/.|workbench|find\/#|case|class/.test(address)) await expect(live).toBeVisible()
    expect(await lost(page), `${address} at 320 pixels`).toEqual([])
    await page.setViewportSize({ width: 640, height: 360 })
    expect(await lost(page), `${address} at 200 %`).toEqual([])
    await page.setViewportSize({ width: 1280, height: 720 })
    await letters(32)
    expect(await lost(page), `${address} with large letters`).toEqual([])
    await letters(16)
  }
})

test.describe('on a laptop at 200 %', () => {
  test.use({ viewport: { width: 640, height: 360 } })

  test('a chapter’s picture leaves the words and the questions free', async ({ page }) => {
    await page.goto('./chapters/the-hold/')
    await expect(page.locator('.chapter[data-live]')).toBeVisible()
    await page.locator('.step h2').nth(2).click({ trial: true })
    await page.locator('#questions').scrollIntoViewIfNeeded()
    await page.getByRole('button', { name: 'Check', exact: true }).click()
    await expect(page.locator('.verdict-words').first()).toBeVisible()
  })
})
