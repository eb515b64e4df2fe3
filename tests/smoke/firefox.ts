import { launch, type Page } from 'puppeteer-core'
import { asText, type Browser, size } from './browser.ts'

/**
 * Opens Firefox without a screen.
 * @param executablePath of Firefox itself
 */
export const openFirefox = async (executablePath: string): Promise<Browser> => {
  const firefox = await launch({
    browser: 'firefox',
    executablePath,
    headless: true,
    // Firefox ESR does not know all that sets a viewport; its window is given a size instead.
    defaultViewport: null,
    args: [`--width=${size.width}`, `--height=${size.height}`],
    extraPrefsFirefox: { 'ui.prefersReducedMotion': 1 },
  })
  let page: Page | undefined

  const now = (): Page => {
    if (!page) throw new Error('no address has been opened')
    return page
  }

  return {
    open: async (address) => {
      await page?.browserContext().close()
      page = await (await firefox.createBrowserContext()).newPage()
      await page.goto(address)
    },
    press: async (first, ...others) => {
      const { mouse } = now()
      await mouse.move(first.x, first.y)
      await mouse.down()
      for (const { x, y } of others) await mouse.move(x, y, { steps: 6 })
      await mouse.up()
    },
    key: async (key, held) => {
      const { keyboard } = now()
      if (held) await keyboard.down(held)
      await keyboard.press(key)
      if (held) await keyboard.up(held)
    },
    look: async <Given extends string[], Seen>(
      question: (...given: Given) => Seen,
      ...given: Given
    ): Promise<Awaited<Seen>> => (await now().evaluate(asText(question, given))) as Awaited<Seen>,
    end: () => firefox.close(),
  }
}
